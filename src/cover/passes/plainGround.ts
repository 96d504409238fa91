import simplify from 'simplify-js';
import { differenceOf, planeAreaOf, unionOf } from '../../measure/clip';
import { signedArea } from '../../measure/signedArea';
import type { PlaneRings, XY } from '../../measure/types';

/** Ground of more corners than this is planned on an outline of fewer. */
const MOST_CORNERS = 500;
/** Its first tolerance, and the most as a share of the spacing, m. */
const FIRST_M = 0.01;
const MOST_SHARE = 1;

/**
 * Ground to plan on: the same, or for outlines of very many corners one of fewer that strays little
 * (Douglas & Peucker 1973, doi 10.3138/FM57-6770-U75U-7727, from memory), so that the work stays bounded.
 */
export function plainGround(
  parts: readonly PlaneRings[],
  keepOff: readonly PlaneRings[],
  spacingM: number,
): readonly PlaneRings[] {
  let made = parts;
  for (let toleranceM = FIRST_M; countCorners(made) > MOST_CORNERS; toleranceM *= 2) {
    if (toleranceM > MOST_SHARE * spacingM) break;
    const thin = parts.flatMap((rings): PlaneRings[] => {
      const kept = rings
        .map((ring) => thinRing(ring, toleranceM))
        .filter((ring, i) => i === 0 || Math.abs(signedArea(ring)) > 1e-4);
      return kept[0] && kept[0].length > 3 ? [kept] : [];
    });
    const [outer, holes] = [
      thin.map((rings) => rings.slice(0, 1)),
      thin.flatMap((rings) => rings.slice(1).map((ring) => [ring])),
    ];
    const next = differenceOf(differenceOf(unionOf(outer), holes), keepOff);
    if (planeAreaOf(next) > 0) made = next;
  }
  return made;
}

/** Corners of all rings. */
export function countCorners(parts: readonly PlaneRings[]): number {
  return parts.reduce((sum, rings) => sum + rings.reduce((s, ring) => s + ring.length - 1, 0), 0);
}

function thinRing(ring: readonly XY[], toleranceM: number): XY[] {
  return simplify(
    ring.map(([x, y]) => ({ x, y })),
    toleranceM,
    true,
  ).map(({ x, y }): XY => [x, y]);
}
