import type { DoseCoverage, ZoneWalk } from '../../cover/passTypes';

/** A walk over all zones of a dose, in figures; lengths in m, areas in plane m². */
export interface WalkSums {
  readonly passes: number;
  readonly turns: number;
  /** on the ground, ways between zones left out. */
  readonly onGroundM: number;
  /** ways between zones. */
  readonly betweenM: number;
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
export function sumWalks({ walks, lengthM }: DoseCoverage): WalkSums {
  const sum = (of: (walk: ZoneWalk) => number) => walks.reduce((all, walk) => all + of(walk), 0);
  const areaM2 = sum((walk) => walk.areaM2);
  const share = (m2: number) => (areaM2 > 0 ? m2 / areaM2 : 0);
  const onGroundM = sum((walk) => walk.lengthM);
  return {
    passes: sum((walk) => walk.passes),
    turns: sum((walk) => walk.turns),
    onGroundM,
    betweenM: Math.max(0, lengthM - onGroundM),
    leastM: sum((walk) => walk.leastM),
    missed: share(sum((walk) => walk.missedM2)),
    double: share(sum((walk) => walk.doubleM2)),
    outside: share(sum((walk) => walk.outsideM2)),
    outsideM: Math.max(0, ...walks.map((walk) => walk.outsideM)),
    mostMissed: zoneOfMost(walks, (walk) => walk.missedM2),
    mostDouble: zoneOfMost(walks, (walk) => walk.doubleM2),
    farthest: zoneOfMost(walks, (walk) => walk.outsideM),
  };
}

function zoneOfMost(walks: readonly ZoneWalk[], of: (walk: ZoneWalk) => number): ZoneShare | null {
  if (new Set(walks.map(({ zoneId }) => zoneId)).size < 2) return null;
  const most = walks.reduce((a, b) => (of(b) > of(a) ? b : a));
  if (!(of(most) > 0)) return null;
  return { zoneId: most.zoneId, share: most.areaM2 > 0 ? of(most) / most.areaM2 : 0 };
}
