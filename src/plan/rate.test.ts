import { describe, expect, it } from 'vitest';
import { productRate } from './rate';
import { analysis, flozPer1000, fluidOunces, makeLabel, nitrogenRate, pounds, sqft } from './testLabels';

describe('label rate', () => {
  it('area per container: content over area', () => {
    const bottle = makeLabel({
      form: 'ready-to-use',
      packs: [{ id: 'bottle', content: fluidOunces(32), price: null }],
      rate: { basis: 'area-per-container', areaM2: sqft(3200), packId: 'bottle' },
      densityKgPerL: 1.25,
    });
    const { rate } = productRate(bottle);
    expect(rate?.perM2).toEqual({ unit: 'L', value: expect.closeTo(flozPer1000(10), 12) });
    expect(rate?.lPerM2).toBeCloseTo(flozPer1000(10), 12);
    expect(rate?.kgPerM2).toBeCloseTo(flozPer1000(10) * 1.25, 12);
  });
  it('depth: 6 mm is 6 L on each m², and mulch sold by weight needs a density', () => {
    const sand = makeLabel({
      form: 'topdressing',
      rate: { basis: 'depth', depthM: 0.006 },
      packs: [{ id: 'bulk', content: { unit: 'L', value: 1000 }, price: null }],
    });
    expect(productRate(sand).rate?.perM2.value).toBeCloseTo(6, 12);
    const byWeight = { ...sand, packs: [{ id: 'bag', content: pounds(50), price: null }] };
    expect(productRate(byWeight).issues.map((issue) => issue.code)).toEqual(['rate-no-density']);
    const { rate } = productRate({ ...byWeight, densityKgPerL: 1.6 });
    expect(rate?.perM2).toEqual({ unit: 'kg', value: expect.closeTo(9.6, 12) });
  });
  it('rate factor multiplies every reading', () => {
    const full = productRate(makeLabel()).rate;
    const half = productRate(makeLabel(), 0.5).rate;
    expect(half?.kgPerM2).toBeCloseTo((full?.kgPerM2 ?? 0) / 2, 15);
  });
  it.each([
    [{ rate: nitrogenRate(1), analysis: analysis(0, 0, 50) }, 'rate-no-nutrient'],
    [{ rate: { basis: 'area-per-container', areaM2: 0, packId: 'bag' } }, 'rate-no-coverage'],
    [{ rate: { basis: 'area-per-container', areaM2: 100, packId: 'gone' } }, 'rate-pack-missing'],
    [{ rate: { basis: 'mass-per-area', rateKgPerM2: 0 } }, 'rate-not-positive'],
    [{ rate: { basis: 'mass-per-area', rateKgPerM2: Number.NaN } }, 'rate-not-positive'],
    [{ rate: { basis: 'mass-per-area', rateKgPerM2: Number.POSITIVE_INFINITY } }, 'rate-not-positive'],
    [
      { form: 'liquid-concentrate', packs: [{ id: 'jug', content: fluidOunces(128), price: null }] },
      'rate-no-density',
    ],
  ] as const)('%j has no rate: %s', (fields, code) => {
    const { rate, issues } = productRate(makeLabel(fields));
    expect(rate).toBeNull();
    expect(issues[0]).toMatchObject({ code, severity: 'error', place: { productId: 'label' } });
    expect(issues[0]?.message).toMatch(/^Plain granules: .*\.$/);
  });
});
