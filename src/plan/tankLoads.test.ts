import { describe, expect, it } from 'vitest';
import { L_PER_FLOZ, L_PER_GAL, M2_PER_1000_SQFT } from '../units/factors';
import { productRate } from './rate';
import { sprayRate } from './sprayRate';
import { tankLoads } from './tankLoads';
import { flozPer1000, fluidOunces, lbPer1000, sqft, testAnalysis, testLabel } from './testDose';

const carrier = L_PER_GAL / M2_PER_1000_SQFT;
const liquid = testLabel({
  form: 'liquid-concentrate',
  analysis: testAnalysis(0),
  rate: { basis: 'volume-per-area', rateLPerM2: flozPer1000(5) },
  packs: [{ id: 'jug', content: fluidOunces(128), price: null }],
  carrierLPerM2: carrier,
});

function loads(label: typeof liquid, areaSqft: number, tankGal: number) {
  const { rate } = productRate(label);
  const spray = rate && sprayRate(label, rate);
  if (!rate || !spray) throw new Error('The test label must give a spray.');
  return tankLoads(rate, spray, tankGal * L_PER_GAL, sqft(areaSqft));
}

describe('tank loads', () => {
  it('whole spray of 1 gal per 1,000 sq ft: 4 gal holds 20 fl oz and covers 4,000 sq ft (common practice)', () => {
    const whole = loads({ ...liquid, carrierIsTotal: true }, 9000, 4);
    expect(whole.fullLoads).toBe(2);
    expect((whole.full?.product.value ?? 0) / L_PER_FLOZ).toBeCloseTo(20, 9);
    expect(whole.full?.areaM2).toBeCloseTo(sqft(4000), 9);
    expect((whole.full?.waterL ?? 0) / L_PER_FLOZ).toBeCloseTo(4 * 128 - 20, 9);
    expect((whole.last?.product.value ?? 0) / L_PER_FLOZ).toBeCloseTo(5, 9);
    expect((whole.last?.totalL ?? 0) / L_PER_GAL).toBeCloseTo(1, 9);
  });
  it('a full gallon of water plus 5 fl oz is 133 fl oz of spray', () => {
    const added = loads(liquid, 1000, 4);
    expect(added.totalL / L_PER_FLOZ).toBeCloseTo(133, 9);
    expect(added.fullLoads).toBe(0);
    expect(added.full).toBeNull();
    expect((added.last?.waterL ?? 0) / L_PER_GAL).toBeCloseTo(1, 9);
  });
  it('an exact number of loads leaves no last one', () => {
    const exact = loads({ ...liquid, carrierIsTotal: true }, 12_000, 4);
    expect(exact.fullLoads).toBe(3);
    expect(exact.last).toBeNull();
  });
  it('powder by weight adds no volume', () => {
    const powder = testLabel({
      form: 'soluble-powder',
      rate: { basis: 'mass-per-area', rateKgPerM2: lbPer1000(1) },
      carrierLPerM2: carrier,
    });
    expect(loads(powder, 4000, 4)).toMatchObject({ fullLoads: 1, last: null });
  });
  it('no carrier, no spray', () => {
    const { rate } = productRate(testLabel());
    expect(rate && sprayRate(testLabel(), rate)).toBeNull();
  });
});

const litres = { perM2: { unit: 'L', value: 0.01 }, kgPerM2: null, lPerM2: 0.01 } as const;

describe('mix of each load', () => {
  const spray = { totalLPerM2: 0.05, waterLPerM2: 0.04 };
  it('full ones and an exact last one', () => {
    const loads = tankLoads(litres, spray, 10, 500);
    expect(loads).toMatchObject({ tankL: 10, totalL: 25, fullLoads: 2 });
    expect(loads.full?.areaM2).toBeCloseTo(200, 10);
    expect(loads.full?.product.value).toBeCloseTo(2, 12);
    expect(loads.full?.waterL).toBeCloseTo(8, 12);
    expect(loads.last?.areaM2).toBeCloseTo(100, 10);
    expect(loads.last?.totalL).toBeCloseTo(5, 10);
  });
  it('a whole number of loads leaves no last one, a small job no full one', () => {
    expect(tankLoads(litres, spray, 10, 600)).toMatchObject({ fullLoads: 3, last: null });
    expect(tankLoads(litres, spray, 10, 20)).toMatchObject({ fullLoads: 0, full: null });
    expect(tankLoads(litres, spray, 10, 0)).toMatchObject({ fullLoads: 0, full: null, last: null });
  });
});
