import { describe, expect, it } from 'vitest';
import type { Yard } from '../yard/types';
import { measureYard } from './measureYard';
import { boxAt, ringAt, testPlane, yardOf, zoneAt } from './testYards';

const zoneOf = (yard: Yard, id: string) => measureYard(yard).zones.get(id);

describe('what each zone keeps', () => {
  const yard = yardOf(
    zoneAt('lawn', 'turf', [[boxAt(0, 0, 20, 10)]]),
    zoneAt('bed', 'bed', [[boxAt(15, 2, 10, 4)]]),
    zoneAt('house', 'structure', [[boxAt(17, 0, 3, 10)]]),
  );
  it('kinds cut in their order, and ground taken once is not taken twice', () => {
    // by hand: the house takes 3·10, the bed 2·4 of what is left
    expect(zoneOf(yard, 'lawn')?.grossM2).toBeCloseTo(200, 2);
    expect(zoneOf(yard, 'lawn')?.netM2).toBeCloseTo(162, 2);
    const cuts = zoneOf(yard, 'lawn')?.cutBy ?? [];
    expect(cuts.map((cut) => cut.zoneId)).toEqual(['house', 'bed']);
    expect(cuts[0]?.areaM2).toBeCloseTo(30, 2);
    expect(cuts[1]?.areaM2).toBeCloseTo(8, 2);
    expect(zoneOf(yard, 'bed')?.netM2).toBeCloseTo(40 - 12, 2);
  });

  it('a zone cuts its own kind only when it says so', () => {
    const over = zoneAt('square', 'turf', [[boxAt(2, 2, 3, 3)]]);
    const plain = yardOf(zoneAt('lawn', 'turf', [[boxAt(0, 0, 20, 10)]]), over);
    expect(zoneOf(plain, 'lawn')?.netM2).toBeCloseTo(200, 2);
    expect(measureYard(plain).totals[0]?.netM2).toBeCloseTo(200, 2);
    const cutting = { ...plain, zones: plain.zones.with(1, { ...over, cutsSameKind: true }) };
    expect(zoneOf(cutting, 'lawn')?.netM2).toBeCloseTo(191, 2);
    expect(measureYard(cutting).totals).toMatchObject([{ kind: 'turf', count: 2 }]);
    expect(measureYard(cutting).totals[0]?.netM2).toBeCloseTo(200, 2);
  });

  it('elevation raises areas by (1 + h/R)²', () => {
    const high = { ...yard, settings: { ...yard.settings, elevationM: 1600 } };
    const ratio = (zoneOf(high, 'lawn')?.netM2 ?? 0) / (zoneOf(yard, 'lawn')?.netM2 ?? 1);
    expect(ratio).toBeCloseTo((1 + 1600 / 6371008.8) ** 2, 9);
    const sigmas = [high, yard].map((one) => measureYard(one).totals.at(-1)?.netSigmaM2 ?? 0);
    expect((sigmas[0] ?? 0) / (sigmas[1] ?? 1)).toBeCloseTo(1 + 1600 / 6371008.8, 9);
  });
});

describe('ground, faulty rings and the plane', () => {
  it('a hole reaching outside its outline takes only the ground inside, with a warning', () => {
    // by hand: the hole 4..12 x 2..5 covers 6·3 of the 10 by 10
    const yard = yardOf(zoneAt('lawn', 'turf', [[boxAt(0, 0, 10, 10), boxAt(4, 2, 8, 3)]]));
    const measured = measureYard(yard);
    expect(measured.zones.get('lawn')?.grossM2).toBeCloseTo(82, 2);
    expect(measured.zones.get('lawn')?.netM2).toBeCloseTo(82, 2);
    expect(measured.issues).toMatchObject([
      { code: 'zone-parts-overlap', severity: 'warning', place: { zoneId: 'lawn' } },
    ]);
  });

  it('a hole wholly outside takes nothing, neither of its zone nor of the zones it lies over', () => {
    const yard = yardOf(
      zoneAt('bed', 'bed', [[boxAt(0, 0, 10, 10), boxAt(20, 0, 5, 5)]]),
      zoneAt('lawn', 'turf', [[boxAt(15, 0, 20, 10)]]),
    );
    expect(zoneOf(yard, 'bed')?.netM2).toBeCloseTo(100, 2);
    expect(zoneOf(yard, 'lawn')?.netM2).toBeCloseTo(200, 2);
  });

  it('two holes over each other take their common ground once', () => {
    const yard = yardOf(
      zoneAt('lawn', 'turf', [[boxAt(0, 0, 10, 10), boxAt(1, 1, 4, 4), boxAt(3, 1, 4, 4)]]),
    );
    expect(zoneOf(yard, 'lawn')?.netM2).toBeCloseTo(100 - 24, 2);
  });

  it('parts overlapping each other count their common ground once, with a warning', () => {
    const yard = yardOf(zoneAt('lawn', 'turf', [[boxAt(0, 0, 10, 10)], [boxAt(8, 0, 10, 10)]]));
    const measured = measureYard(yard);
    expect(measured.zones.get('lawn')?.netM2).toBeCloseTo(180, 2);
    expect(measured.totals[0]?.netM2).toBeCloseTo(180, 2);
    expect(measured.issues.map((issue) => issue.code)).toEqual(['zone-parts-overlap']);
  });

  it('sound parts and holes are measured as drawn, without a warning', () => {
    const yard = yardOf(
      zoneAt('lawn', 'turf', [[boxAt(0, 0, 10, 10), boxAt(1, 1, 2, 2)], [boxAt(20, 0, 5, 5)]]),
    );
    expect(measureYard(yard).issues).toEqual([]);
    expect(zoneOf(yard, 'lawn')?.netParts).toBe(yard.zones[0]?.parts);
  });

  it('the plane stands in the middle of the yard', () => {
    const yard = yardOf(
      zoneAt('a', 'turf', [[boxAt(-500, -500, 5, 5)]]),
      zoneAt('b', 'turf', [[boxAt(495, 495, 5, 5)]]),
    );
    const [x, y] = testPlane.toPlane(measureYard(yard).plane.origin);
    expect(Math.hypot(x, y)).toBeLessThan(1e-3);
  });

  it('the plane follows when the middle of the yard moves away', () => {
    const near = yardOf(zoneAt('a', 'turf', [[boxAt(0, 0, 5, 5)]]));
    const far = yardOf(...near.zones, zoneAt('b', 'turf', [[boxAt(2000, 0, 5, 5)]]));
    const first = measureYard(near);
    const [x] = testPlane.toPlane(measureYard(far, first).plane.origin);
    expect(x).toBeCloseTo(1002.5, 1);
  });

  it('a yard across 180° is measured as one piece of ground', () => {
    const ring = boxAt(0, 0, 40, 10).map(([lon, lat]): [number, number] => {
      const moved = lon + 83 + 179.9998;
      return [moved > 180 ? moved - 360 : moved, lat];
    });
    const measured = measureYard(yardOf(zoneAt('lawn', 'turf', [[ring]])));
    expect(Math.abs(measured.plane.origin[0])).toBeGreaterThan(179.9);
    expect(measured.zones.get('lawn')?.netM2).toBeCloseTo(400, 1);
  });
});

describe('zones that cannot be measured', () => {
  it('are left out, named, and cut nothing', () => {
    const yard = yardOf(
      zoneAt('bow', 'structure', [[ringAt([0, 0], [10, 10], [10, 0], [0, 10])]]),
      zoneAt('none', 'bed', []),
      zoneAt('lawn', 'turf', [[boxAt(0, 0, 10, 10)]]),
    );
    const measured = measureYard(yard);
    expect([...measured.zones.keys()]).toEqual(['lawn']);
    expect(measured.zones.get('lawn')?.netM2).toBeCloseTo(100, 2);
    expect(measured.issues.map((one) => [one.code, one.severity, one.place.zoneId])).toEqual([
      ['ring-self-crossing', 'error', 'bow'],
      ['zone-without-outline', 'error', 'none'],
    ]);
    expect(measured.issues[0]?.message).toMatch(
      /^“bow” is not measured: the outline crosses itself near 40\.\d+, -8/,
    );
  });

  it('an empty yard gives empty figures', () => {
    expect(measureYard(yardOf())).toMatchObject({ totals: [], issues: [] });
  });
});

describe('what is taken over', () => {
  const yard = yardOf(
    zoneAt('lawn', 'turf', [[boxAt(0, 0, 10, 10)]]),
    zoneAt('bed', 'bed', [[boxAt(2, 2, 2, 2)]]),
    zoneAt('far', 'turf', [[boxAt(50, 0, 10, 10)]]),
  );
  const first = measureYard(yard);
  it('zones out of reach of an edit stay the same objects; those cut anew do not', () => {
    const bed = zoneAt('bed', 'bed', [[boxAt(3, 2, 2, 2)]]);
    const next = measureYard({ ...yard, zones: yard.zones.with(1, bed) }, first);
    expect(next.zones.get('far')).toBe(first.zones.get('far'));
    expect(next.zones.get('lawn')).not.toBe(first.zones.get('lawn'));
    expect(next.plane).toBe(first.plane);
  });
  it('nothing changed: every zone and total is the same object', () => {
    const { totals } = first;
    const next = measureYard({ ...yard, name: 'Other' }, first);
    for (const [id, zone] of next.zones) expect(zone).toBe(first.zones.get(id));
    for (const [i, total] of next.totals.entries()) expect(total).toBe(totals[i]);
  });
  it('another elevation redoes all', () => {
    const next = measureYard({ ...yard, settings: { ...yard.settings, elevationM: 100 } }, first);
    expect(next.zones.get('far')).not.toBe(first.zones.get('far'));
  });
});
