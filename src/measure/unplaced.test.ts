import { describe, expect, it } from 'vitest';
import { emptyYard, newZone } from '../yard/defaults';
import type { Position, Ring, Yard, Zone, ZoneKind } from '../yard/types';
import { insertCorners } from './corners';
import { measureYard } from './measureYard';
import { createPlane } from './plane';
import { findSlips } from './slips';
import { clashesOf } from './totals';
import { sigmaOfZones } from './uncertainty';

const nowhere = createPlane([0, 0]);
function boxNowhere(width: number, height: number): Ring {
  const ring = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ].map(([x = 0, y = 0]): Position => nowhere.toLonLat([x, y]));
  return [...ring, ring[0] as Position];
}
const sketch = (id: string, kind: ZoneKind, width: number, height: number): Zone =>
  newZone(id, kind, [[boxNowhere(width, height)]], {
    name: id,
    isPlaced: false,
    survey: { method: 'tape', vertexSigmaM: 0.5, scaleSigma: 0, source: '' },
  });
const yardOf = (...zones: readonly Zone[]): Yard => ({ ...emptyYard('y', 'Yard'), zones });

/** A yard drawn round [0, 0], on the very degrees of the sketches. */
const local = newZone('local', 'turf', [[boxNowhere(30, 20)]], { name: 'local' });

describe('zones without a place', () => {
  it('have the area of their size, and neither cut nor are cut', () => {
    const { zones, totals, issues } = measureYard(
      yardOf(local, sketch('lawn', 'turf', 20, 10), sketch('bed', 'bed', 5, 4)),
    );
    expect(issues).toEqual([]);
    expect(zones.get('lawn')?.netM2).toBeCloseTo(200, 2);
    expect(zones.get('bed')?.netM2).toBeCloseTo(20, 2);
    expect(zones.get('local')?.netM2).toBeCloseTo(600, 2);
    expect(totals.map(({ kind, count, netM2 }) => [kind, count, Math.round(netM2)])).toEqual([
      ['bed', 1, 20],
      ['turf', 2, 800],
    ]);
  });

  it('err by themselves: their corners at [0, 0] are no shared corners', () => {
    // by hand: a rectangle errs by s·sqrt(a² + b²)
    const each = 0.5 * Math.hypot(20, 10);
    const measured = measureYard(yardOf(sketch('a', 'turf', 20, 10), sketch('b', 'turf', 20, 10)));
    expect(measured.zones.get('a')?.netSigmaM2).toBeCloseTo(each, 3);
    expect(sigmaOfZones(measured, ['a', 'b'])).toBeCloseTo(Math.SQRT2 * each, 3);
    expect(measured.totals[0]?.netSigmaM2).toBeCloseTo(Math.SQRT2 * each, 3);
  });

  it('make no slips or clashes, and leave the plane and the corners of others alone', () => {
    const yard = yardOf(local, sketch('a', 'turf', 20, 10));
    const measured = measureYard(yard);
    expect(findSlips(yard, measured)).toEqual([]);
    expect(clashesOf(yard.zones, measured)).toEqual([]);
    const far = newZone('far', 'turf', [
      [boxNowhere(10, 10).map(([lon, lat]): Position => [lon + 14, lat + 50])],
    ]);
    expect(measureYard(yardOf(sketch('a', 'turf', 20, 10), far)).plane.origin[1]).toBeCloseTo(50, 3);
    const onEdge = nowhere.toLonLat([10, 0]);
    expect(
      insertCorners(yardOf(sketch('a', 'turf', 20, 10)), [onEdge], nowhere).zones[0]?.parts[0]?.[0],
    ).toHaveLength(5);
  });
});
