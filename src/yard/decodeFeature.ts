import { decodePoint, decodeRings, formatPlacePath } from './decodeGeometry';
import { newZone, suggestedSurvey } from './defaults';
import { PARCEL_KIND } from './encode';
import { zonePropertySchemas } from './schema';
import { checkShape, type Fault } from './shapes';
import {
  type Curve,
  type Issue,
  MARK_KINDS,
  type Mark,
  type MarkKind,
  type Parcel,
  type Rings,
  type SurveyMethod,
  ZONE_KINDS,
  type Zone,
  type ZoneKind,
} from './types';

type Members = Readonly<Record<string, unknown>>;

/** What became of one feature of a file. */
export type DecodedFeature =
  | { readonly type: 'zone'; readonly zone: Zone; readonly issues: readonly Issue[] }
  | { readonly type: 'mark'; readonly mark: Mark; readonly issues: readonly Issue[] }
  /** the outline of the property. */
  | { readonly type: 'parcel'; readonly parcel: Parcel; readonly issues: readonly Issue[] }
  /** neither zone nor mark: to be kept as it came. */
  | { readonly type: 'other'; readonly issues: readonly Issue[] }
  | { readonly type: 'refused'; readonly issues: readonly Issue[] };

/** Where a feature stands in its file, and what stands in for what it lacks. */
export interface FeatureContext {
  /** path of the feature in the file, such as `features[3]`. */
  readonly path: string;
  /** id used when the feature has none. */
  readonly fallbackId: string;
  /** true: a polygon of no known kind is refused; false: it becomes kind `other`. */
  readonly needsKind: boolean;
  readonly surveyMethod: SurveyMethod;
}

const SURVEY_KEYS = ['surveyMethod', 'vertexSigmaM', 'scaleSigma', 'surveySource', 'curves'];
const ZONE_KEYS = [
  'name',
  'kind',
  'mowing',
  'material',
  'note',
  ...SURVEY_KEYS,
  'cutsSameKind',
  'sketch',
  'isLocked',
  'slope',
  'downhillDeg',
  'plantedOn',
];

/**
 * Reads one feature. A fault of geometry or kind refuses it; a fault of any other property is told
 * and the property's default used. Self-crossing is not checked here.
 * @param value anything; not changed
 */
export function decodeFeature(value: unknown, context: FeatureContext): DecodedFeature {
  if (!isMembers(value) || value.type !== 'Feature') {
    const message = `${formatPlacePath(context.path)} is not a GeoJSON Feature and was not read.`;
    return { type: 'refused', issues: [issue('not-a-feature', 'error', message, context.path)] };
  }
  const properties = isMembers(value.properties) ? value.properties : {};
  const isSketch = value.geometry === null && isMembers(properties.sketch);
  const geometry = isSketch ? properties.sketch : value.geometry;
  switch (isMembers(geometry) ? geometry.type : null) {
    case 'Polygon':
    case 'MultiPolygon':
      return decodeArea(value, properties, geometry as Members, !isSketch, context);
    case 'Point':
      if (MARK_KINDS.includes(properties.kind as MarkKind)) {
        return decodeMark(value, properties, (geometry as Members).coordinates, context);
      }
      return { type: 'other', issues: [] };
    default:
      return { type: 'other', issues: [] };
  }
}

/** A zone, or the parcel. */
function decodeArea(
  feature: Members,
  properties: Members,
  geometry: Members,
  isPlaced: boolean,
  context: FeatureContext,
): DecodedFeature {
  const id = featureId(feature, context);
  const who = label(properties, context.path);
  const issues: Issue[] = [];
  const tell: Tell = (code, severity, message, path) =>
    issues.push({ code, severity, message: `${who}: ${message}`, place: { zoneId: id, path } });
  const isParcel = properties.kind === PARCEL_KIND;

  let kind: ZoneKind = 'other';
  if (ZONE_KINDS.includes(properties.kind as ZoneKind)) kind = properties.kind as ZoneKind;
  else if (context.needsKind && !isParcel) {
    tell(
      'unknown-kind',
      'error',
      `the kind ${quote(properties.kind)} is not known; it must be one of ${ZONE_KINDS.join(', ')}.`,
      `${context.path}.properties.kind`,
    );
  }
  const parts = decodeParts(geometry, isPlaced, context, tell);
  if (issues.some((found) => found.severity === 'error')) return { type: 'refused', issues };

  const read: Read = (key, needed = true) => {
    const given = properties[key];
    if (given === undefined || given === null || !needed) return undefined;
    const result = checkShape<unknown>(zonePropertySchemas[key], given);
    if (result.ok) return result.value;
    const fault = result.faults[0] as Fault;
    tell(
      'bad-property',
      'warning',
      `its ${key} ${fault.message} (it is ${quote(given)}); the usual value is used.`,
      `${context.path}.properties.${key}`,
    );
    return undefined;
  };
  const shared = {
    name: read('name') as string | undefined,
    survey: readSurvey(read, context.surveyMethod),
    curves: (read('curves') as readonly Curve[] | undefined) ?? [],
  };
  if (isParcel) {
    const extra = extraOf(feature, properties, ['name', 'kind', ...SURVEY_KEYS]);
    return { type: 'parcel', parcel: { ...shared, name: shared.name ?? '', parts, extra }, issues };
  }
  const zone = newZone(id, kind, parts, {
    ...shared,
    mowing: read('mowing', kind === 'turf') as Zone['mowing'] | undefined,
    material: read('material', kind === 'hardscape') as Zone['material'] | undefined,
    note: read('note') as string | undefined,
    cutsSameKind: read('cutsSameKind') as boolean | undefined,
    isPlaced,
    isLocked: read('isLocked') as boolean | undefined,
    slope: read('slope') as number | undefined,
    downhillDeg: read('downhillDeg') as number | undefined,
    plantedOn: read('plantedOn', kind === 'turf') as string | undefined,
    extra: extraOf(feature, properties, ZONE_KEYS),
  });
  return { type: 'zone', zone, issues };
}

type Tell = (code: string, severity: Issue['severity'], message: string, path: string) => void;
type Read = (key: keyof typeof zonePropertySchemas, needed?: boolean) => unknown;

function decodeParts(geometry: Members, isPlaced: boolean, context: FeatureContext, tell: Tell): Rings[] {
  const { coordinates } = geometry;
  const isMulti = geometry.type === 'MultiPolygon';
  const at = `${context.path}.${isPlaced ? 'geometry' : 'properties.sketch'}.coordinates`;
  const list = isMulti ? coordinates : [coordinates];
  if (!Array.isArray(list) || list.length === 0) {
    tell('no-coordinates', 'error', 'it has no coordinates.', at);
    return [];
  }
  return list.map((part, i) => {
    const decoded = decodeRings(part, isMulti ? `${at}[${i}]` : at);
    for (const fault of decoded.faults) tell(fault.code, fault.severity, fault.message, fault.path);
    return decoded.rings;
  });
}

function readSurvey(read: Read, standIn: SurveyMethod): Zone['survey'] {
  const survey = suggestedSurvey((read('surveyMethod') as SurveyMethod | undefined) ?? standIn);
  return {
    method: survey.method,
    vertexSigmaM: (read('vertexSigmaM') as number | undefined) ?? survey.vertexSigmaM,
    scaleSigma: (read('scaleSigma') as number | undefined) ?? 0,
    source: (read('surveySource') as string | undefined) ?? '',
  };
}

function decodeMark(
  feature: Members,
  properties: Members,
  coordinates: unknown,
  context: FeatureContext,
): DecodedFeature {
  const id = featureId(feature, context);
  const decoded = decodePoint(coordinates, `${context.path}.geometry.coordinates`);
  const who = label(properties, context.path);
  const issues = decoded.faults.map(
    (fault): Issue => ({
      code: fault.code,
      severity: fault.severity,
      message: `${who}: ${fault.message}`,
      place: { markId: id, path: fault.path },
    }),
  );
  if (decoded.position === null) return { type: 'refused', issues };
  const name = typeof properties.name === 'string' ? properties.name : '';
  const extra = extraOf(feature, properties, ['name', 'kind']);
  return {
    type: 'mark',
    mark: { id, name, kind: properties.kind as MarkKind, position: decoded.position, extra },
    issues,
  };
}

/** Members nobody here knows. `bbox` is left out: it can be worked out, and would go stale at the first edit. */
function extraOf(feature: Members, properties: Members, known: readonly string[]): Zone['extra'] {
  const own = without(feature, ['type', 'id', 'geometry', 'properties', 'bbox']);
  const more = without(properties, known);
  return { ...(own && { feature: own }), ...(more && { properties: more }) };
}

/** The members less the named ones; null when none is left. Keeps a member called `__proto__` plain. */
export function without(members: Members, names: readonly string[]): Members | null {
  const left = Object.entries(members).filter(([key]) => !names.includes(key));
  return left.length === 0 ? null : Object.fromEntries(left);
}

/** True for a JSON object: neither null nor a list. */
export function isMembers(value: unknown): value is Members {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function featureId(feature: Members, context: FeatureContext): string {
  if (typeof feature.id === 'string' && feature.id !== '') return feature.id;
  return typeof feature.id === 'number' ? String(feature.id) : context.fallbackId;
}

function label(properties: Members, path: string): string {
  const name = properties.name;
  const where = formatPlacePath(path);
  return typeof name === 'string' && name !== '' ? `${where} (“${name}”)` : where;
}

function quote(value: unknown): string {
  if (value === undefined) return '(none)';
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}

function issue(code: string, severity: Issue['severity'], message: string, path: string): Issue {
  return { code, severity, message, place: { path } };
}
