import { differenceOf, planeAreaOf } from '../../measure/clip';
import type { PassGround, PassOptions } from '../passTypes';
import { type Effort, effortFor } from './effort';
import { orientedRings } from './frame';
import type { LaidOutline, Layout } from './layouts';
import type { Reached } from './measurePasses';
import { mendLayouts } from './mendLayouts';
import { countCorners, plainGround } from './plainGround';
import { type RankedLayout, rankLayouts } from './rankLayouts';
import { unreachableOf } from './unreachable';
import { makeWalkable } from './wayWithin';
import type { LayOptions, ZoneGround } from './zoneGround';

/** Ground smaller than this is none, m². */
const LEAST_M2 = 1e-4;

/** A zone made ready for walks from anywhere to anywhere: its layouts and what they cover are worked out once. */
export interface PreparedZone {
  readonly zone: ZoneGround;
  readonly effort: Effort;
  /** the most promising; null: not found yet. */
  outlines: readonly LaidOutline[] | null;
  readonly measured: Map<Layout, Reached>;
  /** layouts measured, the best first. */
  ranked(lapsFirst: boolean): readonly RankedLayout[];
}

/** @returns null: there is no ground to walk */
export function prepareZone(ground: PassGround, options: PassOptions | LayOptions): PreparedZone | null {
  const parts = differenceOf(ground.parts, ground.keepOff).filter((part) => planeAreaOf([part]) > LEAST_M2);
  if (parts.length === 0) return null;
  // planned and measured on few corners, its ground shared out by the true area
  const plain = plainGround(parts, ground.keepOff, options.spacingM);
  const zone: ZoneGround = {
    parts: plain,
    rings: orientedRings(plain),
    keepOff: ground.keepOff,
    shy: ground.keepOff.length > 0 ? makeWalkable(null, ground.keepOff) : null,
    walkable: makeWalkable(plain, []),
    areaM2: planeAreaOf(parts),
    unreachableM2: unreachableOf(plain, ground.keepOff, options.swathM),
    options,
  };
  const kept = new Map<boolean, readonly RankedLayout[]>();
  const prepared: PreparedZone = {
    zone,
    effort: effortFor(countCorners(plain)),
    outlines: null,
    measured: new Map(),
    ranked(lapsFirst) {
      const known = kept.get(lapsFirst);
      if (known) return known;
      const found = mendLayouts(zone, rankLayouts(prepared, lapsFirst), lapsFirst);
      const walked = found.filter(({ legs }) => legs.length > 0);
      // at the chosen heading no pass has room: any other goes before none
      const isNone = walked.length === 0 && options.headingDeg !== null;
      const ranked = isNone
        ? (prepareZone(ground, { ...options, headingDeg: null })?.ranked(lapsFirst) ?? [])
        : walked.length > 0
          ? walked
          : found;
      kept.set(lapsFirst, ranked);
      return ranked;
    },
  };
  return prepared;
}
