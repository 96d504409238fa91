import { decodeFeature } from '../yard/decodeFeature';
import { newZone } from '../yard/defaults';
import {
  MARK_KINDS,
  type Mark,
  type MarkKind,
  type Parcel,
  type Survey,
  ZONE_KINDS,
  type Zone,
  type ZoneKind,
} from '../yard/types';
import type { BuildOptions, BuiltBatch } from './deskTypes';
import { guessKind } from './guessKind';
import type { Judged, SourceFeature, TargetKind } from './importTypes';
import { parseFeature } from './judgeFeature';

/** One ticked feature with what the person made of it. */
export interface BuildItem {
  readonly index: number;
  readonly source: SourceFeature;
  readonly judged: Judged;
  readonly name: string;
  readonly kind: TargetKind;
}

/**
 * Zones, marks and the lot of ticked features. Fields that this program wrote itself (mowing, slope,
 * survey and so on) are taken as they stand; all other properties are kept in `extra`. Ids are those of
 * the file, to be made new by whoever adds them to a yard.
 */
export function buildBatch(
  items: readonly BuildItem[],
  options: BuildOptions,
): Pick<BuiltBatch, 'zones' | 'marks' | 'parcel'> {
  const zones: Zone[] = [];
  const marks: Mark[] = [];
  let parcel: Parcel | null = null;
  for (const item of items) {
    if (item.judged.position !== null) marks.push(buildMark(item));
    else if (item.kind === 'parcel') parcel = buildParcel(item, options);
    else if (item.judged.parts.length > 0) zones.push(buildZone(item, options));
  }
  return { zones, marks, parcel };
}

function buildZone(item: BuildItem, options: BuildOptions): Zone {
  const { judged, name, source } = item;
  const kind = ZONE_KINDS.includes(item.kind as ZoneKind) ? (item.kind as ZoneKind) : 'other';
  const properties = parseFeature(source.text)?.properties ?? {};
  const decoded = decode(item, judged.isPlaced);
  const guess = guessKind(name, properties, source.layer, false);
  const isOwn = ZONE_KINDS.includes(properties.kind as ZoneKind);
  if (decoded.type !== 'zone') {
    return newZone(`file-${item.index}`, kind, judged.parts, { name, survey: surveyOf(item, options) });
  }
  const { zone } = decoded;
  const isSame = zone.kind === kind;
  return {
    ...zone,
    name,
    kind,
    mowing: kind === 'turf' ? ((isOwn && isSame ? zone.mowing : guess.mowing) ?? 'regular') : null,
    material:
      kind === 'hardscape' ? ((isOwn && isSame ? zone.material : guess.material) ?? 'concrete') : null,
    survey: isOwn && properties.surveyMethod !== undefined ? zone.survey : surveyOf(item, options),
    isLocked: isOwn && zone.isLocked,
    extra: withoutOwnNotes(zone.extra),
  };
}

function buildParcel(item: BuildItem, options: BuildOptions): Parcel {
  const decoded = decode(item, true);
  const extra =
    decoded.type === 'parcel' ? decoded.parcel.extra : decoded.type === 'zone' ? decoded.zone.extra : {};
  const curves = decoded.type === 'parcel' ? decoded.parcel.curves : [];
  const survey = decoded.type === 'parcel' ? decoded.parcel.survey : surveyOf(item, options);
  return { name: item.name, parts: item.judged.parts, curves, survey, extra: withoutOwnNotes(extra) };
}

function buildMark({ index, judged, kind, name, source }: BuildItem): Mark {
  const feature = parseFeature(source.text);
  const { name: _name, kind: _kind, ...more } = feature?.properties ?? {};
  const id = typeof feature?.id === 'string' && feature.id !== '' ? feature.id : `file-${index}`;
  const isKnown = MARK_KINDS.includes(kind as MarkKind);
  return {
    id,
    name,
    kind: isKnown ? (kind as MarkKind) : 'gate',
    position: judged.position ?? [0, 0],
    extra: withoutOwnNotes(Object.keys(more).length > 0 ? { properties: more } : {}),
  };
}

/** The feature with its sound outline, through the reader of this program's own files. */
function decode({ index, judged, source }: BuildItem, isPlaced: boolean) {
  const {
    geometry: _old,
    properties,
    ...members
  } = parseFeature(source.text) ?? { properties: {}, geometry: null };
  const geometry = { type: 'MultiPolygon', coordinates: judged.parts };
  const feature = isPlaced
    ? { ...members, type: 'Feature', properties, geometry }
    : { ...members, type: 'Feature', properties: { ...properties, sketch: geometry }, geometry: null };
  return decodeFeature(feature, {
    path: source.place,
    fallbackId: `file-${index}`,
    needsKind: false,
    surveyMethod: 'imported',
  });
}

function surveyOf({ judged }: BuildItem, options: BuildOptions): Survey {
  return {
    method: judged.method,
    vertexSigmaM: judged.sigmaM ?? options.vertexSigmaM,
    scaleSigma: 0,
    source: options.source,
  };
}

/** Marks that the readers left for the judge are no properties of the file. */
function withoutOwnNotes(extra: Zone['extra']): Zone['extra'] {
  if (!extra.properties) return extra;
  const entries = Object.entries(extra.properties).filter(([key]) => key !== '@fixes' && key !== '@source');
  const { properties: _all, ...rest } = extra;
  return entries.length === 0 ? rest : { ...rest, properties: Object.fromEntries(entries) };
}
