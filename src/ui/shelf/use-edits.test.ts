import { describe, expect, it } from 'vitest';
import { granules, liquid, testYard, visit } from '../../../tests/fixtures/testYard';
import { applyUse } from '../../plan/applyUse';
import { productRate } from '../../plan/rate';
import { newDose } from '../../yard/defaults';
import type { LabelRate, Product, Yard } from '../../yard/types';
import { blankProduct } from './product-edits';
import {
  changeOfUse,
  copyOfUse,
  makeUseFirst,
  namesWithUse,
  removeUse,
  usualSpreadM,
  withApplicator,
} from './use-edits';

/** A 32 fl oz hose-end bottle that covers 3,200 sq ft: an invented label in the usual round figures. */
const bottle: Product = {
  ...liquid,
  id: 'p-bottle',
  form: 'ready-to-use',
  useName: 'On the hose',
  applicator: 'hose-end',
  rate: { basis: 'area-per-container', areaM2: 3200 * 0.09290304, packId: 'pack-1' },
  carrierLPerM2: null,
  packs: [{ id: 'pack-1', content: { unit: 'L', value: 0.946352946 }, price: null }],
};
const light = { ...copyOfUse(bottle, 'u-2'), name: 'Light', applicator: 'tank-sprayer' as const };
const product: Product = { ...bottle, otherUses: [light] };
const yard: Yard = {
  ...testYard(),
  products: [granules, product],
  visits: [
    {
      ...visit,
      doses: [
        newDose('d-1', 'p-bottle'),
        newDose('d-2', 'p-bottle', { useId: 'u-2' }),
        newDose('d-3', 'p-granules'),
      ],
    },
  ],
};
const usesOfDoses = (one: Yard) => one.visits[0]?.doses.map((dose) => dose.useId);
const nameOf = (one: Yard, useId: string | null) => {
  const found = one.products.find((each) => each.id === 'p-bottle');
  return found && applyUse(found, useId)?.useName;
};

describe('uses of a label', () => {
  it('another use made the first: every dose keeps the use it goes by', () => {
    const turned = makeUseFirst(yard, 'p-bottle', 'u-2');
    expect(usesOfDoses(turned)).toEqual(['u-2', null, null]);
    expect(nameOf(turned, null)).toBe('Light');
    expect(nameOf(turned, 'u-2')).toBe('On the hose');
    // and back again is where it began
    expect(makeUseFirst(turned, 'p-bottle', 'u-2')).toEqual(yard);
  });
  it('a use removed: its doses go by the first', () => {
    expect(namesWithUse(yard, 'p-bottle', 'u-2')).toEqual(['Early summer']);
    const left = removeUse(yard, 'p-bottle', 'u-2');
    expect(usesOfDoses(left)).toEqual([null, null, null]);
    expect(left.products[1]?.otherUses).toEqual([]);
    expect(removeUse(yard, 'p-bottle', 'none')).toBe(yard);
  });
  it('a further use begins as the other, its applicator with it, but for the name', () => {
    const { name, ...copy } = copyOfUse({ ...bottle, spreadDistanceM: 0.6, waterIn: true }, 'u-3');
    expect(name).toBe('');
    expect(copy).toMatchObject({ applicator: 'hose-end', spreadDistanceM: 0.6, waterIn: true });
  });
  it('a change goes to its own use alone', () => {
    expect(changeOfUse(product, null, { waterIn: true })).toEqual({ waterIn: true });
    expect(changeOfUse(product, 'u-2', { useName: 'Thin', waterIn: true })).toEqual({
      otherUses: [{ ...light, name: 'Thin', waterIn: true }],
    });
  });
});

describe('what puts it out', () => {
  it('an empty rate is said as labels for a hose-end bottle say it, and none is mixed in', () => {
    const blank: Product = { ...blankProduct('p', 'pack', 'New', 'metric'), carrierLPerM2: 0.04 };
    expect(withApplicator(blank, 'hose-end', [], 'us')).toEqual({
      applicator: 'hose-end',
      spreadDistanceM: 0.6096,
      rate: { basis: 'area-per-container', areaM2: 0, packId: 'pack' },
      carrierLPerM2: null,
    });
  });
  it('a copied rate is turned: 32 fl oz on 3,200 sq ft are 10 fl oz per 1,000 sq ft (by division)', () => {
    const change = withApplicator({ ...product, ...light }, 'tank-sprayer', [product.rate], 'us');
    expect(change.rate?.basis).toBe('volume-per-area');
    const { rate } = productRate({ ...product, ...change } as Product);
    // 10 US fl oz are 0.295735295625 L (231 cubic inches to the gallon, 128 fl oz to it), 1,000 sq ft 92.90304 m²
    expect((rate?.lPerM2 ?? 0) * 92.90304).toBeCloseTo(0.295735295625, 10);
  });
  it('distances are round in the units shown', () => {
    expect(usualSpreadM('broadcast-spreader', 'us')).toBeCloseTo(1.524, 12);
    expect(usualSpreadM('broadcast-spreader', 'metric')).toBe(1.5);
  });
  it('what somebody typed stays', () => {
    const rate: LabelRate = { basis: 'volume-per-area', rateLPerM2: 0.002 };
    const typed: Product = { ...product, rate, spreadDistanceM: 0.9, carrierLPerM2: 0.04 };
    expect(withApplicator(typed, 'hose-end', [], 'us')).toEqual({ applicator: 'hose-end' });
  });
  it('a copied rate that cannot be said otherwise stays', () => {
    const { densityKgPerL: _, ...rest } = granules;
    const weighed: Product = {
      ...rest,
      densityKgPerL: null,
      rate: { basis: 'mass-per-area', rateKgPerM2: 0.02 },
    };
    const change = withApplicator({ ...weighed, packs: [] }, 'hose-end', [weighed.rate], 'us');
    expect(change.rate).toEqual(weighed.rate);
  });
});
