import { describe, expect, it } from 'vitest';
import type { Zone } from '../yard/types';
import { differenceOf } from './clip';
import { measureYard } from './measureYard';
import { ringsToPlane } from './plane';
import { boxAt, yardOf, zoneAt } from './testYards';
import { clashesOf } from './totals';
import { gradientOfParts, sigmaOfGradients, sigmaOfZones, sourcesOf } from './uncertainty';

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

  it('an id given twice counts once, an unknown one not at all', () => {
    const zones = [zoneAt('a', 'turf', [[boxAt(0, 0, 10, 10)]])];
    expect(sigma(zones, 'a', 'a')).toBe(sigma(zones, 'a'));
    expect(sigma(zones, 'gone')).toBe(0);
  });
});

describe('zones whose source is not told', () => {
  const taped = (
    id: string,
    ring: Zone['parts'][number][number],
    method: 'tape' | 'typed' = 'tape',
  ): Zone => ({
    ...zoneAt(id, 'turf', [[ring]]),
    survey: { method, vertexSigmaM: 0, scaleSigma: 0.01, source: '' },
  });
  const whole = taped('whole', boxAt(0, 0, 20, 10));
  // by hand: lengths wrong by e make areas wrong by 2 e, so 2 · 0.01 · 200 m²

  it('split in two they err as the whole did, and a copy adds its error in full', () => {
    const halves = [taped('a', boxAt(0, 0, 10, 10)), taped('b', boxAt(10, 0, 10, 10))];
    expect(sigma([whole], 'whole')).toBeCloseTo(4, 3);
    expect(sigma(halves, 'a', 'b')).toBeCloseTo(4, 3);
    expect(sigma([whole, taped('copy', boxAt(0, 30, 20, 10))], 'whole', 'copy')).toBeCloseTo(8, 3);
  });

  it('of another method they are measured by something else', () => {
    const typed = taped('typed', boxAt(0, 30, 20, 10), 'typed');
    expect(sigma([whole, typed], 'whole', 'typed')).toBeCloseTo(Math.sqrt(32), 3);
  });
});

describe('a shared border cancels in the sum though its corners do not match', () => {
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

describe('corners that two zones know with different errors', () => {
  const lawn = zoneAt('lawn', 'turf', [[boxAt(0, 0, 20, 20)]], 0.5);
  // by hand, each of four corners pulls (10, 10): s·√800
  const own = 0.5 * Math.sqrt(800);

  it('a zone’s own figure takes its own error, whatever a neighbour with the same corners has', () => {
    const bed = zoneAt('bed', 'bed', [[boxAt(20, 0, 5, 20)]], 3);
    const { zones, totals } = measureYard(yardOf(lawn, bed));
    expect(zones.get('lawn')?.netSigmaM2).toBeCloseTo(own, 2);
    expect(totals.find((total) => total.kind === 'turf')?.netSigmaM2).toBeCloseTo(own, 2);
  });

  it('also where the neighbour’s side runs past its corners', () => {
    const bed = zoneAt('bed', 'bed', [[boxAt(20, -10, 5, 40)]], 3);
    const { zones, totals } = measureYard(yardOf(lawn, bed));
    expect(zones.get('lawn')?.netSigmaM2).toBeCloseTo(own, 2);
    expect(totals.find((total) => total.kind === 'turf')?.netSigmaM2).toBeCloseTo(own, 2);
  });

  it('a sum of both takes the smaller of the two: the corner is one point, known as well as the better one knows it', () => {
    const rough = zoneAt('rough', 'turf', [[boxAt(20, 0, 20, 20)]], 3);
    // by hand, two corners (10, 10) with 0.5, two with 3, and at the shared ones x cancels, y 10 + 10, with 0.5
    const variance = 0.25 * 2 * 200 + 9 * 2 * 200 + 0.25 * 2 * 400;
    expect(sigma([lawn, rough], 'lawn', 'rough')).toBeCloseTo(Math.sqrt(variance), 1);
    expect(sigma([rough, lawn], 'lawn', 'rough')).toBeCloseTo(Math.sqrt(variance), 1);
    expect(sigma([lawn, rough], 'lawn')).toBeCloseTo(own, 2);
  });

  it('ground that a rougher neighbour cuts off errs by the neighbour’s corners along the cut', () => {
    const bed = zoneAt('bed', 'bed', [[boxAt(10, -1, 15, 22)]], 3);
    const cut = measureYard(yardOf(lawn, bed)).zones.get('lawn');
    // by hand: west corners (10, 7.5), east corners (0, 2.5) with 0.5; the cut of 20 m pulls on the bed's
    // corners 22 m apart, each 10
    const variance = 0.25 * 2 * (100 + 7.5 ** 2 + 2.5 ** 2) + 9 * 2 * 100;
    expect(cut?.netSigmaM2).toBeCloseTo(Math.sqrt(variance), 1);
  });
});

describe('zones of one kind on the same ground', () => {
  const totalSigma = (...zones: readonly Zone[]) => measureYard(yardOf(...zones)).totals[0]?.netSigmaM2;
  const square = [[boxAt(0, 0, 20, 20)]];

  it('two identical lawns err as one: √2·l·s', () => {
    // by hand: 400 m² of 20 m sides, s = 1 m
    const total = measureYard(yardOf(zoneAt('a', 'turf', square), zoneAt('b', 'turf', square))).totals[0];
    expect(total?.netM2).toBeCloseTo(400, 2);
    expect(total?.netSigmaM2).toBeCloseTo(Math.SQRT2 * 20, 2);
  });

  it('a lawn inside another adds no error, whichever comes first', () => {
    const inside = zoneAt('b', 'turf', [[boxAt(5, 5, 4, 4)]], 3);
    expect(totalSigma(zoneAt('a', 'turf', square), inside)).toBeCloseTo(Math.SQRT2 * 20, 2);
    expect(totalSigma(inside, zoneAt('a', 'turf', square))).toBeCloseTo(Math.SQRT2 * 20, 2);
  });

  it('lawns across each other err by the outline of their union, the same for either order', () => {
    // A plus of two bars 30 by 10. By hand: of each side of 30 m the middle 10 m is covered, so the pull on
    // either end is 10·(1 - 5/30) + 10·(1 - 25/30) = 10; of each side of 10 m it is 5. So 8 corners of (5, 10).
    const bars = [
      zoneAt('a', 'turf', [[boxAt(0, 10, 30, 10)]]),
      zoneAt('b', 'turf', [[boxAt(10, 0, 10, 30)]]),
    ] as const;
    const byHand = Math.sqrt(8 * (5 ** 2 + 10 ** 2));
    expect(totalSigma(bars[0], bars[1])).toBeCloseTo(byHand, 2);
    expect(totalSigma(bars[1], bars[0])).toBeCloseTo(byHand, 2);
  });

  it('goes back to the plain sum once they are drawn apart', () => {
    const [a, b] = [zoneAt('a', 'turf', square), zoneAt('b', 'turf', square)];
    const far = zoneAt('b', 'turf', [[boxAt(50, 0, 20, 20)]]);
    const apart = measureYard(yardOf(a, far), measureYard(yardOf(a, b)));
    expect(apart.totals[0]?.netSigmaM2).toBeCloseTo(40, 2);
    expect(measureYard(yardOf(a, b), apart).totals[0]?.netSigmaM2).toBeCloseTo(Math.SQRT2 * 20, 2);
  });

  it('are listed as clashes, those that only touch are not', () => {
    const zones = [
      zoneAt('a', 'turf', square),
      zoneAt('b', 'turf', [[boxAt(19, 0, 20, 20)]]),
      zoneAt('c', 'turf', [[boxAt(-20, 0, 20, 20)]]),
      zoneAt('bed', 'bed', [[boxAt(18, 18, 5, 5)]]),
    ];
    const clashes = clashesOf(zones, measureYard(yardOf(...zones)));
    expect(clashes.map(({ a, b }) => [a.zoneId, b.zoneId])).toEqual([['a', 'b']]);
    expect(clashes[0]?.overlap.planeAreaM2).toBeCloseTo(18, 3);
  });
});

describe('ground left of a zone to treat', () => {
  it('keeps the pull of the sides it has, and the edge that was cut off adds none', () => {
    const zone = zoneAt('lawn', 'turf', [[boxAt(0, 0, 20, 10)]]);
    const { zones, plane } = measureYard(yardOf(zone));
    const lawn = zones.get('lawn');
    if (!lawn) throw new Error('The lawn was not measured.');
    const strip = [ringsToPlane([boxAt(10, -1, 11, 12)], plane)];
    const left = differenceOf(lawn.netPlaneParts, strip);
    const half = gradientOfParts(left, sourcesOf(lawn), plane);
    // by hand: west side 10 m pulls 5 on each of its corners; 10 m of the 20 m sides pull 7.5 and 2.5
    const byHand = Math.sqrt(2 * (5 ** 2 + 7.5 ** 2) + 2 * 2.5 ** 2);
    expect(sigmaOfGradients([half])).toBeCloseTo(byHand, 3);
    const rest = gradientOfParts(differenceOf(lawn.netPlaneParts, left), sourcesOf(lawn), plane);
    expect(sigmaOfGradients([half, rest], 2)).toBeCloseTo(2 * lawn.netSigmaM2, 3);
  });
});
