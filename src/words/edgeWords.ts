import type { NoApplyStrip, RinseEdge } from '../cover/types';
import { formatLength } from '../units/format';
import type { UnitSystem } from '../yard/types';

export const SOURCE_WORDS: Readonly<Record<NoApplyStrip['sourceKind'], string>> = {
  'storm-drain': 'storm drain',
  well: 'well',
  water: 'water',
};

/** What to do at an edge of hardscape away from drain, well and water. */
export const EDGE_WORK_WORDS: Readonly<Record<RinseEdge['treatment'], string>> = {
  'rinse-toward-turf': 'Rinse with plain water, toward the turf.',
  'sweep-then-rinse': 'Sweep or blow back onto the turf, then rinse what is left toward it.',
};

/** Where a product of the visit stains. */
export const STAIN_WORDS = 'A product of this visit stains hardscape. Rinse at once, before it dries.';

/** "E3": what a rinse edge is called on map, list and sheet. */
export function edgeKey(edge: Pick<RinseEdge, 'number'>): string {
  return `E${edge.number}`;
}

/** "Storm drain 4.2 ft away: no rinse water toward it; sweep or wipe up instead.", or null away from all of them. */
export function nearWords(edge: Pick<RinseEdge, 'near'>, units: UnitSystem): string | null {
  if (!edge.near) return null;
  const source = SOURCE_WORDS[edge.near.sourceKind].replace(/^./, (letter) => letter.toUpperCase());
  return `${source} ${formatLength(edge.near.distanceM, units)} away: no rinse water toward it; sweep or wipe up instead.`;
}

/** "edges E1–E4, E7": runs of numbers drawn together. */
export function edgeWords(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else runs.push([number, number]);
  }
  const words = runs.map(([from, to]) =>
    from === to ? `E${from}` : to === from + 1 ? `E${from}, E${to}` : `E${from}–E${to}`,
  );
  return `${numbers.length === 1 ? 'edge' : 'edges'} ${words.join(', ')}`;
}
