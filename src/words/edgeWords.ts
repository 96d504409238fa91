import type { NoApplyStrip, RinseEdge } from '../cover/types';
import { M_PER_FT, M_PER_IN } from '../units/factors';
import { amountLadder, formatArea, formatLength, formatNumber } from '../units/format';
import type { UnitSystem } from '../yard/types';
import { slopeWords } from './slopeWords';

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
export const STAIN_WORDS =
  'A product of this visit holds iron or stains hardscape. Rinse at once, before it dries; those edges are in bold.';

/** What holds at every edge. A city code that asks for the same: Lake Mary, Florida, Ordinance 1569. */
export const DRAIN_WORDS =
  'Nothing goes into a drain: no product, no sweepings, no rinse water. The local code decides; where it forbids to wash a product off hardscape, sweep and wipe only.';

/**
 * How the seconds of an edge come about. @param paceMPerS walked with the hose running @param depthLPerM2 of water
 * over the splash band
 */
export function rinseRuleWords(paceMPerS: number, depthLPerM2: number, units: UnitSystem): string {
  const nb = '\u00a0';
  const pace =
    units === 'us'
      ? `${formatNumber((10 * M_PER_FT) / paceMPerS, 2)}${nb}s for 10${nb}ft`
      : `${formatNumber(1 / paceMPerS, 2)}${nb}s a metre`;
  // 1 L/m² is 1 mm
  const depth =
    units === 'us'
      ? `${formatNumber(depthLPerM2 / 1000 / M_PER_IN, 1)}${nb}in`
      : `${formatNumber(depthLPerM2, 2)}${nb}mm`;
  return `Time for an edge: the walk along it with the hose running, ${pace}, or until its splash band has ${depth} of water, whichever takes longer: a wide band takes more than the walk.`;
}

/** Where no hose flow is told. */
export const NO_FLOW_WORDS =
  'Time and water are told once it is known what the hose gives (Shelf, Equipment).';

/** What ▼ after the number of an edge stands for, short enough for a legend. */
export const DOWNHILL_SIGN_WORDS = 'Downhill side';

/** The same for the lists. */
export const DOWNHILL_KEY_WORDS =
  '▼ after a number is a downhill side: the ground falls toward that edge, and what runs off goes over it.';

/** "E3", or "E3▼" on a downhill side: what a rinse edge is called on map, list and sheet. */
export function edgeKey(edge: Pick<RinseEdge, 'number'> & Partial<Pick<RinseEdge, 'downhill'>>): string {
  return `E${edge.number}${edge.downhill ? '▼' : ''}`;
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

/** "45 s" under two minutes, else "3.5 min" to two digits. @param seconds 0 or more */
export function rinseTimeWords(seconds: number): string {
  const whole = Math.max(1, Math.round(seconds));
  return whole < 120 ? `${whole}\u00a0s` : `${formatNumber(seconds / 60, 2)}\u00a0min`;
}

/**
 * Water of rinsing in gal or L, however little, so that edges can be held side by side; two digits: nobody meters a
 * hose any finer. @param litres 0 or more
 */
export function formatRinse(litres: number, units: UnitSystem): string {
  const unit = amountLadder('L', units, false, LIKE_L);
  return `${formatNumber(litres / unit.si, 2)}\u00a0${unit.label}`;
}
/** So much water is told in gal or L. */
const LIKE_L = 10;

/** "45 s, 3.2 gal", or null where no water goes or the hose's flow is not told. */
export function rinseWaterWords({ water }: Pick<RinseEdge, 'water'>, units: UnitSystem): string | null {
  return water && `${rinseTimeWords(water.seconds)}, ${formatRinse(water.litres, units)}`;
}

/** "Downhill side: 12.0 ft of it, slope 4 % (2.3°). The fall leads to a storm drain 40.0 ft on: …", or null. */
export function downhillWords(
  edge: Pick<RinseEdge, 'downhill' | 'lengthM' | 'near'>,
  units: UnitSystem,
): string | null {
  const { downhill, near } = edge;
  if (!downhill) return null;
  const isAll = downhill.lengthM > 0.95 * edge.lengthM;
  const toward = isAll ? 'it' : `${formatLength(downhill.lengthM, units)} of it`;
  const side = `Downhill side: the ground falls toward ${toward}, slope ${slopeWords(downhill.slope)}.`;
  const to = downhill.leadsTo;
  if (to && to.sourceId === near?.sourceId) return `${side} The fall leads there.`;
  if (to) {
    const source = to.sourceKind === 'water' ? 'water' : `a ${SOURCE_WORDS[to.sourceKind]}`;
    return `${side} The fall leads to ${source} ${formatLength(to.distanceM, units)} on: let nothing run that way.`;
  }
  return near ? side : `${side} Little water at a time, so that none runs off.`;
}

/** Sums over edges: metres, m² of splash band, and what rinsing takes (null: no edge is rinsed by a known flow). */
export interface RinseTotals {
  readonly lengthM: number;
  readonly bandM2: number;
  readonly water: RinseEdge['water'];
}

/** What all edges come to. */
export function sumRinse(edges: readonly RinseEdge[]): RinseTotals {
  const waters = edges.flatMap((edge) => edge.water ?? []);
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  return {
    lengthM: sum(edges.map((edge) => edge.lengthM)),
    bandM2: sum(edges.map((edge) => edge.bandM2)),
    water:
      waters.length === 0
        ? null
        : {
            seconds: sum(waters.map((water) => water.seconds)),
            litres: sum(waters.map((water) => water.litres)),
          },
  };
}

/** "126 ft in 4 stretches, splash band 92 sq ft; 6.5 min and 20 gal at the hose". */
export function rinseTotalsWords(edges: readonly RinseEdge[], units: UnitSystem): string {
  const { lengthM, bandM2, water } = sumRinse(edges);
  const count = edges.length === 1 ? 'one stretch' : `${edges.length} stretches`;
  const ground = `${formatLength(lengthM, units)} in ${count}, splash band ${formatArea(bandM2, units)}`;
  return water
    ? `${ground}; ${rinseTimeWords(water.seconds)} and ${formatRinse(water.litres, units)} of water`
    : ground;
}
