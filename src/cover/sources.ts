import type { LocalPlane, PlaneRings, XY } from '../measure/types';
import type { Settings, Yard } from '../yard/types';
import type { NoApplyStrip } from './types';

/** What must be spared, with the width of its no-apply strip. */
export interface StripSource {
  readonly sourceId: string;
  readonly sourceKind: NoApplyStrip['sourceKind'];
  /** its name, or its kind in words when it has none. */
  readonly label: string;
  /** metres, more than 0. */
  readonly widthM: number;
  /** a point (drain, well) or a shape (water), in the yard's plane. */
  readonly shape: { readonly point: XY } | { readonly parts: readonly PlaneRings[] };
}

const WIDTHS: Readonly<Record<NoApplyStrip['sourceKind'], (s: Settings['strips']) => number>> = {
  'storm-drain': (s) => s.stormDrainM,
  well: (s) => s.wellM,
  water: (s) => s.waterM,
};

const WORDS: Readonly<Record<NoApplyStrip['sourceKind'], string>> = {
  'storm-drain': 'the storm drain',
  well: 'the well',
  water: 'the water',
};

/**
 * Drains, wells and water zones of a yard whose strip width is more than 0, in document order.
 * Water counts as it was drawn (gross), so that a bridge drawn over it spares no bank less.
 * The widths are the user's: local code decides.
 */
export function stripSources(yard: Yard, plane: LocalPlane): StripSource[] {
  const sources: StripSource[] = [];
  const add = (
    sourceId: string,
    name: string,
    kind: StripSource['sourceKind'],
    shape: StripSource['shape'],
  ): void => {
    const widthM = WIDTHS[kind](yard.settings.strips);
    if (!(widthM > 0)) return;
    const label = name.trim() === '' ? WORDS[kind] : `“${name.trim()}”`;
    sources.push({ sourceId, sourceKind: kind, label, widthM, shape });
  };
  for (const mark of yard.marks) {
    if (mark.kind !== 'storm-drain' && mark.kind !== 'well') continue;
    add(mark.id, mark.name, mark.kind, { point: plane.toPlane(mark.position) });
  }
  for (const zone of yard.zones) {
    if (zone.kind !== 'water') continue;
    const parts = zone.parts.map((rings) => rings.map((ring) => ring.map((p) => plane.toPlane(p))));
    add(zone.id, zone.name, 'water', { parts });
  }
  return sources;
}
