import { describe, expect, it } from 'vitest';
import { L_PER_FLOZ, L_PER_GAL, M2_PER_1000_SQFT } from '../units/factors';
import { productRate } from './rate';
import { sprayRate, tankLoads } from './tank';
import { analysis, flozPer1000, fluidOunces, lbPer1000, makeLabel, sqft } from './testLabels';

const carrier = L_PER_GAL / M2_PER_1000_SQFT;
const liquid = makeLabel({
  form: 'liquid-concentrate',
  analysis: analysis(0),
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
    const powder = makeLabel({
      form: 'soluble-powder',
      rate: { basis: 'mass-per-area', rateKgPerM2: lbPer1000(1) },
      carrierLPerM2: carrier,
    });
    expect(loads(powder, 4000, 4)).toMatchObject({ fullLoads: 1, last: null });
  });
  it('no carrier, no spray', () => {
    const { rate } = productRate(makeLabel());
    expect(rate && sprayRate(makeLabel(), rate)).toBeNull();
  });
});
