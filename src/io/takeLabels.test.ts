import { describe, expect, it } from 'vitest';
import { granules, liquid, testYard, visit } from '../../tests/fixtures/testYard';
import { newDose } from '../yard/defaults';
import type { Product, ProductUse, Yard } from '../yard/types';
import { matchLabels, takeLabels } from './takeLabels';

const tank: ProductUse = {
  id: 'use-tank',
  name: 'Tank',
  applicator: 'tank-sprayer',
  rate: { basis: 'volume-per-area', rateLPerM2: 0.003 },
  carrierLPerM2: 0.04,
  carrierIsTotal: true,
  spreadDistanceM: 0.3,
  waterIn: false,
  packIds: ['pack-1'],
};
const bottle: Product = {
  ...liquid,
  id: 'p-bottle',
  name: 'Bottle',
  rate: { basis: 'area-per-container', areaM2: 300, packId: 'pack-1' },
  otherUses: [tank],
  packs: [{ id: 'pack-1', content: { unit: 'L', value: 1 }, price: 9 }],
  onHand: { 'pack-1': 2 },
};
const yard: Yard = {
  ...testYard(),
  products: [granules, bottle],
  visits: [{ ...visit, doses: [newDose('d-1', 'p-bottle', { useId: 'use-tank' })] }],
};

describe('labels against the shelf', () => {
  it('new, the same, of the same name', () => {
    const matches = matchLabels(yard.products, [
      liquid,
      {
        ...granules,
        id: 'other',
        onHand: {},
        packs: [{ id: 'x', content: { unit: 'kg', value: 10 }, price: null }],
      },
      { ...bottle, name: ' BOTTLE', densityKgPerL: 1.3 },
    ]);
    expect(matches.map((match) => [match.present?.id ?? null, match.differs])).toEqual([
      [null, []],
      ['p-granules', []],
      ['p-bottle', ['densityKgPerL']],
    ]);
  });
  it('a pack or a use in another order is another label', () => {
    const two = { ...bottle, otherUses: [tank, { ...tank, id: 'b', name: 'Light' }] };
    const turned = { ...two, otherUses: two.otherUses.toReversed() };
    expect(matchLabels([two], [turned])[0]?.differs).toEqual(['otherUses']);
  });
});

describe('labels taken', () => {
  it('added under a name and an id of their own', () => {
    const next = takeLabels(yard, [{ label: bottle, how: 'add', id: 'p-new', name: 'Bottle, copy 1' }]);
    expect(next.products.map((one) => [one.id, one.name])).toEqual([
      ['p-granules', 'Granular 20-0-10'],
      ['p-bottle', 'Bottle'],
      ['p-new', 'Bottle, copy 1'],
    ]);
  });
  it('replaced: ids of packs and uses stay, and so do stock and prices that the file does not tell', () => {
    const label: Product = {
      ...bottle,
      id: 'file',
      analysis: { ...bottle.analysis, nPct: 8 },
      packs: [
        { id: 'a', content: { unit: 'L', value: 4 }, price: null },
        { id: 'b', content: { unit: 'L', value: 1 }, price: null },
      ],
      rate: { basis: 'area-per-container', areaM2: 280, packId: 'b' },
      otherUses: [{ ...tank, id: 'u', packIds: ['b', 'a'] }],
      onHand: {},
    };
    const next = takeLabels(yard, [{ label, how: 'replace', productId: 'p-bottle' }]).products[1];
    expect(next).toMatchObject({
      id: 'p-bottle',
      analysis: { nPct: 8 },
      packs: [
        { id: 'a', price: null },
        { id: 'pack-1', price: 9 },
      ],
      rate: { areaM2: 280, packId: 'pack-1' },
      otherUses: [{ id: 'use-tank', packIds: ['pack-1', 'a'] }],
      onHand: { 'pack-1': 2 },
    });
  });
  it('replaced: a use that a visit goes by and a pack on hand stay even where the file lacks them', () => {
    const label: Product = {
      ...bottle,
      id: 'file',
      packs: [{ id: 'pack-1', content: { unit: 'L', value: 4 }, price: 20 }],
      otherUses: [],
      onHand: {},
    };
    const next = takeLabels(yard, [{ label, how: 'replace', productId: 'p-bottle' }]).products[1];
    expect(next?.packs.map((pack) => [pack.id, pack.content.value])).toEqual([
      ['pack-1-2', 4],
      ['pack-1', 1],
    ]);
    expect(next?.rate).toMatchObject({ packId: 'pack-1-2' });
    expect(next?.otherUses).toEqual([tank]);
    expect(next?.onHand).toEqual({ 'pack-1': 2 });
  });
});
