import { describe, expect, it } from 'vitest';
import type { Zone } from '../yard/types';
import { measureYard } from './measureYard';
import { boxAt, yardOf, zoneAt } from './testYards';
import { sigmaOfZones } from './uncertainty';

const sigma = (zones: readonly Zone[], ...ids: string[]) => sigmaOfZones(measureYard(yardOf(...zones)), ids);

describe('sum of zones', () => {
  it('a border whose corners match cancels: two halves err as the whole with the corners on its sides', () => {
    const halves = [
      zoneAt('a', 'turf', [[boxAt(0, 0, 10, 10)]]),
      zoneAt('b', 'turf', [[boxAt(10, 0, 10, 10)]]),
    ];
    // by hand, s²/4·Σd² over six corners of 20 by 10: four with d² = 10² + 10², two with d = 20
    expect(sigma(halves, 'a', 'b')).toBeCloseTo(Math.sqrt((4 * 200 + 2 * 400) / 4), 2);
  });

  it('zones apart add as independent', () => {
    const apart = [
      zoneAt('a', 'turf', [[boxAt(0, 0, 10, 10)]]),
      zoneAt('b', 'turf', [[boxAt(30, 0, 10, 10)]]),
    ];
    expect(sigma(apart, 'a', 'b')).toBeCloseTo(Math.sqrt(2) * sigma(apart, 'a'), 3);
  });

  it('an id given twice was counted twice', () => {
    const zones = [zoneAt('a', 'turf', [[boxAt(0, 0, 10, 10)]])];
    expect(sigma(zones, 'a', 'a')).toBe(sigma(zones, 'a'));
    expect(sigma(zones, 'gone')).toBe(0);
  });
});

describe('a shared border whose corners did not match stayed in the sum', () => {
  it('short neighbour on a long side of the same kind', () => {
    // a: 10 by 20; b: 10 by 6 against the middle of a's east side. No corner is shared.
    const zones = [
      zoneAt('a', 'turf', [[boxAt(0, 0, 10, 20)]]),
      zoneAt('b', 'turf', [[boxAt(10, 7, 10, 6)]]),
    ];
    const measured = measureYard(yardOf(...zones));
    let [gx, gy] = [0, 0];
    const sum = new Map<string, [number, number]>();
    for (const zone of measured.zones.values()) {
      for (const [key, g] of zone.gradient) {
        const [x, y] = sum.get(key) ?? [0, 0];
        sum.set(key, [x + g.gx, y + g.gy]);
        gx += g.gx;
        gy += g.gy;
      }
    }
    // A shift of all corners leaves the area, and a's east side outside b pulls 7 m + 7 m on its two ends.
    expect(Math.hypot(gx, gy)).toBeLessThan(1e-6);
    const a = measured.zones.get('a');
    const b = measured.zones.get('b');
    const border = [...(a?.gradient.keys() ?? [])].filter((key) => b?.gradient.has(key));
    expect(border).toHaveLength(2);
    // by hand: east pull on a's south-east corner = ∫ of its share over 0..7 of 20 and 13..20 of 20
    const southEast = sum.get(border.sort()[0] ?? '');
    expect(southEast?.[0]).toBeCloseTo(7 * (1 - 3.5 / 20) + 7 * (1 - 16.5 / 20), 3);
  });

  it('lawn cut by a bed that shares part of its border', () => {
    // The bed lies over the lawn's edge for x 4..7 and touches it along y = 10 for x 7..9.
    const lawn = zoneAt('lawn', 'turf', [[boxAt(0, 0, 10, 10)]], 1);
    const bed = zoneAt('bed', 'bed', [[boxAt(2, 10, 6, 5)]], 1);
    const measured = measureYard(yardOf(lawn, bed));
    const both = sigmaOfZones(measured, ['lawn', 'bed']);
    // by hand: outline of the union. North side of the lawn (length 10 from (10,10) to (0,10)) is open over
    // x 8..10 and 0..2: pull on its east end 2·0.9 + 2·0.1, on its west end the same by symmetry.
    const corner = (gx: number, gy: number) => gx * gx + gy * gy;
    const north = 2 * 0.9 + 2 * 0.1;
    const south = corner(5, 5) * 2;
    const variance = south + corner(5, north) * 2 + corner(2.5, 0) * 2 + corner(2.5, 3) * 2;
    expect(both).toBeCloseTo(Math.sqrt(variance), 2);
  });
});
