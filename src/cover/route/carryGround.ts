import simplify from 'simplify-js';
import { bufferOf, differenceOf, planeAreaOf, unionOf } from '../../measure/clip';
import { isInsideParts } from '../../measure/isInsideParts';
import { boxesNear, boxOf } from '../../measure/planeBox';
import type { PlaneRings, XY } from '../../measure/types';
import type { CoverZone } from '../passTypes';
import { sidesOf } from '../segments';
import { createWays, type Toll, type Way, type Ways } from './ways';

/** Walls, banks and beds are passed at this distance, m; gaps of less than twice that are no way through. Common practice, no source. */
const CLEARANCE_M = 0.15;
/** and where the ground leaves room for it, without a longer detour than this, at this one, m: shoulders and a spreader's wheel. Common practice, no source. */
const EASY_CLEARANCE_M = 0.5;
const EASY_DETOUR_M = 1.5;
/** Strips are passed at this distance, m. */
const STRIP_CLEARANCE_M = 0.06;
/** Round outlines are gone round by fewer corners, this far off: less than either distance, m. */
const COARSE_M = 0.05;
/** Ways may leave the property by this, m: drawn outlines do not quite meet. */
const MARGIN_M = 0.3;
/** Width of the belt round the property that keeps ways in, m. */
const BELT_M = 5;
/** How far inside a side ground is looked at, m. */
const INSIDE_M = 2e-3;
/** What is left of an obstacle on treated ground counts from here, m². */
const LEAST_M2 = 0.01;

/**
 * How a way with the applicator shut had to be taken: on open ground; over a no-apply strip, as there is none
 * round it; off the property; or straight, as there is none at all.
 */
export type CarryHow = 'open' | 'over-strip' | 'off-property' | 'straight';

/** A way between zones. */
export interface Carry extends Way {
  readonly how: CarryHow;
}

/** Ground that is walked with the applicator shut. */
export interface CarryGround {
  between(from: XY, to: XY, toll?: Toll): Carry;
  /** the same way, farther from houses, water and beds where there is room; for ways that are walked. */
  atEase(way: Carry): Carry;
  /** the shortest round obstacles, over strips too; null: walls stand all round one of the places. */
  roundWalls(from: XY, to: XY): Way | null;
}

/** Obstacles without what a dose treats of them: a bed that is treated is walked. */
export function standingObstacles(
  obstacles: readonly PlaneRings[],
  zones: readonly CoverZone[],
): PlaneRings[] {
  const grounds = zones.map(({ parts }) => ({ parts, box: boxOf(parts), inside: placesInside(parts) }));
  return obstacles.flatMap((obstacle) => {
    const box = boxOf([obstacle]);
    const treated = grounds.filter(
      (each) => boxesNear(box, each.box, 0) && each.inside.some((place) => isInsideParts(place, [obstacle])),
    );
    if (treated.length === 0) return [obstacle];
    const left = differenceOf(
      [obstacle],
      treated.flatMap(({ parts }) => parts),
    );
    return left.filter((part) => planeAreaOf([part]) > LEAST_M2);
  });
}

/** Places just inside the middle of each side: ground that shares some with a shape has one in it, as net shapes cut each other along sides. */
function placesInside(parts: readonly PlaneRings[]): XY[] {
  return sidesOf(parts).flatMap(([a, b]): XY[] => {
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const step = INSIDE_M / Math.hypot(dx, dy);
    const middle: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const beside = [-step, step].map((by): XY => [middle[0] - by * dy, middle[1] + by * dx]);
    return beside.filter((place) => isInsideParts(place, parts));
  });
}

/**
 * Open ground for ways with the applicator shut: round obstacles; where that can be, round no-apply strips and
 * on the property. A strip is crossed rather than the property left: the one harms nothing with the applicator
 * shut, at the other may stand a fence.
 * @param obstacles houses, water, beds that are not treated
 * @param strips no-apply strips
 * @param property null: ways may go anywhere
 */
export function createCarryGround(
  obstacles: readonly PlaneRings[],
  strips: readonly PlaneRings[],
  property: readonly PlaneRings[] | null = null,
): CarryGround {
  const walls = passedAt(obstacles, CLEARANCE_M);
  const spared = passedAt(strips, STRIP_CLEARANCE_M);
  const outside = property === null ? [] : outsideOf(property);
  const roundWalls = createWays(walls);
  const along = (...more: (readonly PlaneRings[])[]): Ways => createWays(unionOf([...walls, ...more.flat()]));
  const onGround = outside.length === 0 ? roundWalls : along(outside);
  const layers: (readonly [CarryHow, Ways])[] = [];
  if (spared.length > 0) layers.push(['open', along(spared, outside)]);
  layers.push([spared.length > 0 ? 'over-strip' : 'open', onGround]);
  if (outside.length > 0) {
    if (spared.length > 0) layers.push(['off-property', along(spared)]);
    layers.push(['off-property', roundWalls]);
  }
  /** whether a place can be joined to open ground without going through a wall. */
  const canLeave = (ways: Ways, place: XY): boolean =>
    ways === roundWalls || roundWalls.isClear(roundWalls.standOutside(place), ways.standOutside(place));
  const wayBy = (ways: Ways, from: XY, to: XY, toll?: Toll): Way | null =>
    canLeave(ways, from) && canLeave(ways, to) ? ways.between(from, to, toll) : null;
  let easy: Ways | null = null;
  const easyWays = (): Ways => {
    easy ??= createWays(unionOf([...passedAt(obstacles, EASY_CLEARANCE_M), ...spared, ...outside]));
    return easy;
  };
  return {
    atEase(way) {
      const [from, to] = [way.line[0] as XY, way.line.at(-1) as XY];
      // a straight way on open ground bends round nothing
      if (way.how !== 'open' || way.line.length < 3 || walls.length === 0) return way;
      const wide = wayBy(easyWays(), from, to);
      return wide && wide.lengthM <= way.lengthM + EASY_DETOUR_M ? { ...wide, how: way.how } : way;
    },
    roundWalls: (from, to) => wayBy(onGround, from, to) ?? roundWalls.between(from, to),
    between(from, to, toll) {
      for (const [how, ways] of layers) {
        const way = wayBy(ways, from, to, toll);
        if (way) return { ...way, how };
      }
      const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1]);
      return { line: [from, to], lengthM, how: 'straight' };
    },
  };
}

/** A belt round the property that nothing on it leads through. */
function outsideOf(property: readonly PlaneRings[]): PlaneRings[] {
  if (property.length === 0) return [];
  const ground = bufferOf({ parts: property }, MARGIN_M).map((rings) => rings.map(withFewCorners));
  const { minX, minY, maxX, maxY } = boxOf(ground);
  const [x0, y0, x1, y1] = [minX - BELT_M, minY - BELT_M, maxX + BELT_M, maxY + BELT_M];
  const belt: XY[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
    [x0, y0],
  ];
  return differenceOf([[belt]], ground);
}

/** Ground that is kept off by a distance, with few corners. */
function passedAt(parts: readonly PlaneRings[], distanceM: number): PlaneRings[] {
  if (parts.length === 0) return [];
  const grown = bufferOf({ parts }, distanceM);
  return unionOf(grown.map((rings) => rings.map(withFewCorners)));
}

function withFewCorners(ring: readonly XY[]): readonly XY[] {
  const corners = simplify(
    ring.map(([x, y]) => ({ x, y })),
    COARSE_M,
    true,
  );
  return corners.length < 4 ? ring : corners.map(({ x, y }): XY => [x, y]);
}
