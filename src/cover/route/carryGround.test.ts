import { describe, expect, it } from 'vitest';
import type { PlaneRings, XY } from '../../measure/types';
import { distanceToSegment, sidesOf } from '../segments';
import { boxRing } from '../testGround';
import { createCarryGround } from './carryGround';
import { easyWay } from './dryWay';

const house: PlaneRings = [boxRing(0, 0, 10, 6)];

/** Distance of a way's corners from a shape. */
const clearanceOf = (line: readonly XY[], shape: PlaneRings): number =>
  Math.min(...line.slice(1, -1).flatMap((at) => sidesOf([shape]).map((side) => distanceToSegment(at, side))));

describe('ways round a house', () => {
  it('keep half a metre off its corners, and are hardly longer', () => {
    const ground = createCarryGround([house], []);
    const [from, to]: [XY, XY] = [
      [-4, 3],
      [14, 3],
    ];
    const way = easyWay(ground, ground.between(from, to), []);
    expect(way.how).toBe('open');
    // outlines are gone round by few corners, so a little less
    expect(clearanceOf(way.line, house)).toBeGreaterThan(0.42);
    // two triangles with legs 3.5 and 3.5 m and 11 m between
    expect(way.lengthM).toBeLessThan(2 * Math.hypot(3.5, 3.5) + 11 + 0.3);
  });

  it('go through a gap that is too narrow for that where there is no other near', () => {
    // 0.7 m between house and shed, in a row of them that goes on
    const shed: PlaneRings = [boxRing(10.7, 0, 60, 6)];
    const long: PlaneRings = [boxRing(-40, 0, 10, 6)];
    const ground = createCarryGround([long, shed], []);
    const way = easyWay(ground, ground.between([8, -3], [8, 9]), []);
    expect(way.how).toBe('open');
    expect(way.lengthM).toBeLessThan(15);
    expect(clearanceOf(way.line, long)).toBeGreaterThan(0.1);
  });

  it('stay as they are where nothing is in the way', () => {
    const ground = createCarryGround([house], []);
    const way = ground.between([-4, -3], [14, -3]);
    expect(easyWay(ground, way, [])).toBe(way);
  });
});
