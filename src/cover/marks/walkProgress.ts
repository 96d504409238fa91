import type { Leg, LegKnot } from '../passTypes';
import { firstIndex } from './firstIndex';

/** A zone by the ground its dose goes by. */
export interface DoseGround {
  readonly zoneId: string;
  /** m², as the dose counts it. */
  readonly areaM2: number;
}

/** A place on the walk. */
export interface WalkPlace {
  readonly legIndex: number;
  /** m along that leg. */
  readonly alongM: number;
}

/** How far walk and ground are at the start of each leg; one entry more, for the end of the last. */
export interface WalkProgress {
  readonly legs: readonly Leg[];
  /** m walked, legs of every kind. */
  readonly startM: readonly number[];
  /** m² of the dose done. */
  readonly startM2: readonly number[];
  /** m² of the dose for a plane m² of each leg's knots. */
  readonly scale: readonly number[];
}

/**
 * How the ground of a dose grows along its walk. The plane m² that a zone's legs take on in one coat stand for
 * the zone's share of the dose: its area, of two coats at half the rate half of it. What no swath reaches
 * is so spread over the rest of its zone, and the zones sum to the dose.
 * @param legs of the whole dose, in walking order
 * @param zones ground that the dose counts; a zone that is not among them counts by its plane m²
 * @param coats of the dose; as many as the legs have, where it is not told
 */
export function walkProgress(
  legs: readonly Leg[],
  zones: readonly DoseGround[],
  coats: 1 | 2 = legs.some(({ coat }) => coat === 2) ? 2 : 1,
): WalkProgress {
  const areas = new Map(zones.map(({ zoneId, areaM2 }) => [zoneId, areaM2]));
  const keyOf = ({ zoneId, coat }: Leg) => `${coat}:${zoneId}`;
  const reached = new Map<string, number>();
  for (const leg of legs) reached.set(keyOf(leg), (reached.get(keyOf(leg)) ?? 0) + areaOfLeg(leg));
  const scale = legs.map((leg) => {
    const area = leg.zoneId === null ? undefined : areas.get(leg.zoneId);
    const own = reached.get(keyOf(leg)) ?? 0;
    return (area === undefined || !(own > 0) ? 1 : area / own) / coats;
  });
  const [startM, startM2] = [[0], [0]];
  legs.forEach((leg, i) => {
    startM.push((startM[i] ?? 0) + leg.lengthM);
    startM2.push((startM2[i] ?? 0) + areaOfLeg(leg) * (scale[i] ?? 0));
  });
  return { legs, startM, startM2, scale };
}

/** Plane m² that a leg takes on. */
export function areaOfLeg({ knots }: Leg): number {
  return knots.at(-1)?.areaM2 ?? 0;
}

/** m² of the dose done at a place of the walk. */
export function doneAt({ legs, startM2, scale }: WalkProgress, { legIndex, alongM }: WalkPlace): number {
  const knots = legs[legIndex]?.knots ?? [];
  const at = firstIndex(knots.length, (i) => (knots[i] as LegKnot).atM >= alongM);
  const after = knots[at] ?? knots.at(-1);
  const before = at < knots.length ? knots[at - 1] : undefined;
  const planeM2 = after === undefined ? 0 : between(alongM, before ?? after, after, 'atM', 'areaM2');
  return (startM2[legIndex] ?? startM2.at(-1) ?? 0) + planeM2 * (scale[legIndex] ?? 0);
}

/**
 * Where so much of the dose is done first.
 * @param doneM2 m² of the dose; what is within a billionth of the whole counts as the whole
 * @returns null where the walk does less
 */
export function placeWhereDone(progress: WalkProgress, doneM2: number): WalkPlace | null {
  const { legs, startM2, scale } = progress;
  const slack = 1e-9 * (startM2.at(-1) ?? 0);
  // the first leg at whose end so much is done
  let legIndex = firstIndex(legs.length, (i) => (startM2[i + 1] ?? 0) >= doneM2 - slack);
  // only at the very start: ways before the first ground
  while (legIndex < legs.length && !(areaOfLeg(legs[legIndex] as Leg) > 0)) legIndex++;
  const leg = legs[legIndex];
  if (!leg) return null;
  const planeM2 = (doneM2 - (startM2[legIndex] ?? 0)) / (scale[legIndex] ?? 1);
  const { knots } = leg;
  const at = firstIndex(knots.length, (i) => (knots[i] as LegKnot).areaM2 >= planeM2);
  const after = knots[at];
  if (after === undefined) return { legIndex, alongM: leg.lengthM };
  const before = knots[at - 1] ?? after;
  return { legIndex, alongM: between(Math.max(0, planeM2), before, after, 'areaM2', 'atM') };
}

/** The second figure of two knots where the first has a value between theirs. */
function between<K extends string, V extends string>(
  value: number,
  before: Readonly<Record<K | V, number>>,
  after: Readonly<Record<K | V, number>>,
  by: K,
  of: V,
): number {
  const span = after[by] - before[by];
  const share = span > 0 ? Math.min(1, Math.max(0, (value - before[by]) / span)) : 1;
  return before[of] + share * (after[of] - before[of]);
}
