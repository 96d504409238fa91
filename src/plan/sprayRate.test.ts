import { describe, expect, it } from 'vitest';
import type { Product } from '../yard/types';
import { checkProduct } from './check';
import { isSprayed, sprayRate } from './sprayRate';
import { planOne, testPack, testProduct } from './testDose';

const litres = { perM2: { unit: 'L', value: 0.01 }, kgPerM2: null, lPerM2: 0.01 } as const;
const kilos = { perM2: { unit: 'kg', value: 0.01 }, kgPerM2: 0.01, lPerM2: null } as const;
const mixed = (carrierLPerM2: number | null, carrierIsTotal: boolean) =>
  testProduct({ carrierLPerM2, carrierIsTotal });

describe('spray', () => {
  it('holds the product, or has it on top of the water', () => {
    expect(sprayRate(mixed(0.05, true), litres)).toEqual({ totalLPerM2: 0.05, waterLPerM2: 0.04 });
    const added = sprayRate(mixed(0.05, false), litres);
    expect(added?.totalLPerM2).toBeCloseTo(0.06, 15);
    expect(added?.waterLPerM2).toBe(0.05);
  });
  it('a powder adds no volume either way', () => {
    for (const isTotal of [true, false])
      expect(sprayRate(mixed(0.05, isTotal), kilos)).toEqual({ totalLPerM2: 0.05, waterLPerM2: 0.05 });
  });
  it('none without a carrier; no water below zero', () => {
    expect(sprayRate(mixed(null, true), litres)).toBeNull();
    expect(sprayRate(mixed(0, true), litres)).toBeNull();
    expect(sprayRate(mixed(0.005, true), litres)).toEqual({ totalLPerM2: 0.01, waterLPerM2: 0 });
  });
});

describe('a liquid packed by mass', () => {
  // 1.25 kg/L and 0.02 L/m² in 0.04 L/m² of whole spray, on 100 m²: 4 L of spray, 2 L of it product
  const weighed = (fields: Partial<Product> = {}) =>
    testProduct({
      form: 'liquid-concentrate',
      densityKgPerL: 1.25,
      rate: { basis: 'volume-per-area', rateLPerM2: 0.02 },
      packs: [testPack({ unit: 'kg', value: 5 })],
      carrierLPerM2: 0.04,
      carrierIsTotal: true,
      ...fields,
    });
  const codes = (product: Product) => planOne(product, 100).issues.map((issue) => issue.code);

  it('takes up its volume in the spray', () => {
    const dose = planOne(weighed(), 100, { tankL: 10 });
    expect(dose.amount).toEqual({ unit: 'kg', value: 2.5 });
    expect(dose.carrierL).toBeCloseTo(2, 12);
    expect(dose.tank?.totalL).toBeCloseTo(4, 12);
    expect(dose.tank?.last?.waterL).toBeCloseTo(2, 12);
    expect(codes(weighed())).not.toContain('powder-volume');
    expect(planOne(weighed({ carrierIsTotal: false }), 100, { tankL: 10 }).tank?.totalL).toBeCloseTo(6, 12);
  });
  it('cannot be more than the whole spray', () => {
    const faults = (carrierLPerM2: number) =>
      checkProduct(weighed({ carrierLPerM2 })).map((issue) => issue.code);
    expect(faults(0.019)).toEqual(['carrier-below-rate']);
    expect(faults(0.021)).toEqual([]);
  });
  it('says that its volume is not counted while its density is not known', () => {
    const unknown = weighed({ densityKgPerL: null, rate: { basis: 'mass-per-area', rateKgPerM2: 0.025 } });
    expect(planOne(unknown, 100).carrierL).toBeCloseTo(4, 12);
    expect(codes(unknown)).toContain('powder-volume');
  });
  it('a powder of known density adds none', () => {
    const powder = weighed({ form: 'soluble-powder', rate: { basis: 'mass-per-area', rateKgPerM2: 0.025 } });
    expect(planOne(powder, 100).carrierL).toBeCloseTo(4, 12);
    expect(codes(powder)).toContain('powder-volume');
  });
});

describe('what puts it out', () => {
  it('mixes water in a tank alone; a hose-end bottle and a spreader take none', () => {
    const by = (applicator: Product['applicator']) =>
      sprayRate(testProduct({ applicator, carrierLPerM2: 0.05 }), kilos) !== null;
    expect([by(null), by('tank-sprayer'), by('by-hand')]).toEqual([true, true, true]);
    expect([by('hose-end'), by('broadcast-spreader'), by('drop-spreader')]).toEqual([false, false, false]);
  });
  it('decides with the form whether it goes out wet', () => {
    const wet = (fields: Partial<Product>) => isSprayed(testProduct(fields));
    expect(wet({ form: 'ready-to-use' })).toBe(true);
    expect(wet({ form: 'granular' })).toBe(false);
    expect(wet({ form: 'granular', carrierLPerM2: 0.05 })).toBe(true);
    expect(wet({ form: 'granular', applicator: 'tank-sprayer' })).toBe(true);
    expect(wet({ form: 'soluble-powder', carrierLPerM2: 0.05, applicator: 'broadcast-spreader' })).toBe(
      false,
    );
    expect(wet({ form: 'mulch', carrierLPerM2: 0.05, rate: { basis: 'depth', depthM: 0.05 } })).toBe(false);
  });
});
