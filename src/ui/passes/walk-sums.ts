import type { DoseCoverage, Leg, ZoneWalk } from '../../cover/passTypes';
import type { WalkParts } from '../../words/walkWords';

/** A walk over all zones of a dose, in figures; lengths in m, areas in plane m². */
export interface WalkSums {
  readonly passes: number;
  readonly turns: number;
  /** on the ground, ways between zones left out. */
  readonly onGroundM: number;
  readonly parts: WalkParts;
  readonly leastM: number;
  /** shares of the ground: reached by no pass, more often than planned; and beyond it, as a share of it. */
  readonly missed: number;
  readonly double: number;
  readonly outside: number;
  /** farthest beyond the ground, m. */
  readonly outsideM: number;
  /** the zones where most of that is; null: on none, or there is but one. */
  readonly mostMissed: ZoneShare | null;
  readonly mostDouble: ZoneShare | null;
  readonly farthest: ZoneShare | null;
}

/** A zone with the share of its own ground. */
export interface ZoneShare {
  readonly zoneId: string;
  readonly share: number;
}

/** @param dose with all its coats: each coat counts as ground of its own */
export function sumWalks({ walks, legs, lengthM, workingM }: DoseCoverage): WalkSums {
  const sum = (of: (walk: ZoneWalk) => number) => walks.reduce((all, walk) => all + of(walk), 0);
  const areaM2 = sum((walk) => walk.areaM2);
  const share = (m2: number) => (areaM2 > 0 ? m2 / areaM2 : 0);
  const onGroundM = sum((walk) => walk.lengthM);
  const walked = (isOf: (leg: Leg) => boolean) =>
    legs.filter(isOf).reduce((all, leg) => all + leg.lengthM, 0);
  const turnM = walked(({ kind }) => kind === 'turn');
  const withinM = walked(({ kind, zoneId }) => kind === 'carry' && zoneId !== null);
  return {
    passes: sum((walk) => walk.passes),
    turns: sum((walk) => walk.turns),
    onGroundM,
    parts: { workingM, turnM, withinM, betweenM: Math.max(0, lengthM - workingM - turnM - withinM) },
    leastM: sum((walk) => walk.leastM),
    missed: share(sum((walk) => walk.missedM2)),
    double: share(sum((walk) => walk.doubleM2)),
    outside: share(sum((walk) => walk.outsideM2)),
    outsideM: Math.max(0, ...walks.map((walk) => walk.outsideM)),
    mostMissed: zoneOfMost(walks, (walk) => walk.missedM2),
    mostDouble: zoneOfMost(walks, (walk) => walk.doubleM2),
    farthest: zoneOfMost(walks, (walk) => walk.outsideM, Math.max),
  };
}

/** The zone with the largest sum (or what `join` makes) over its coats; its share is of the ground of them all. */
function zoneOfMost(
  walks: readonly ZoneWalk[],
  of: (walk: ZoneWalk) => number,
  join: (a: number, b: number) => number = (a, b) => a + b,
): ZoneShare | null {
  const zones = [...new Set(walks.map(({ zoneId }) => zoneId))].map((zoneId) => {
    const own = walks.filter((walk) => walk.zoneId === zoneId);
    const areaM2 = own.reduce((sum, walk) => sum + walk.areaM2, 0);
    return { zoneId, amount: own.map(of).reduce(join), areaM2 };
  });
  const [first] = zones;
  if (!first || zones.length < 2) return null;
  const most = zones.reduce((a, b) => (b.amount > a.amount ? b : a), first);
  if (!(most.amount > 0)) return null;
  return { zoneId: most.zoneId, share: most.areaM2 > 0 ? most.amount / most.areaM2 : 0 };
}
