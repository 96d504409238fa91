import { describe, expect, it } from 'vitest';
import { newProduct } from '../yard/defaults';
import type { Pack, Product } from '../yard/types';
import { costSummary } from './costSummary';
import { planPurchase } from './planPurchase';
import type { ProductNeed } from './types';

const kg = (id: string, value: number, price: number | null): Pack => ({
  id,
  content: { unit: 'kg', value },
  price,
});
const product = (id: string, fields: Partial<Product>) =>
  newProduct(id, { name: 'Invented', canPour: true, ...fields });
const taken = (own: Product, amount: number) => {
  const at = { visitId: 'v', doseId: 'd', useId: null, date: '2031-04-01' };
  const lines = [{ ...at, amount, areaM2: 100, areaSigmaM2: 0 }];
  const need: ProductNeed = { productId: own.id, unit: 'kg', lines, unreadDoseIds: [] };
  const purchase = { product: own, ...planPurchase(own, need) };
  return { purchase, plan: purchase.plans.cost ?? purchase.plans.packs };
};

describe('costSummary', () => {
  it('tells what is paid and what of it goes out, by product and in all', () => {
    // 12 kg from bags of 10 kg at 5: two bags at 10, of 20 kg 12 go out: 6
    const bought = taken(product('a', { packs: [kg('bag', 10, 5)] }), 12);
    // 9 kg all from the shelf: nothing is paid, and 9 kg 3 for 10 kg
    const packs = [kg('small', 4, 2), kg('large', 10, 3)];
    const shelved = taken(product('b', { packs, onHand: { large: 1 } }), 9);
    const found = costSummary([bought, shelved]);
    expect(found.products.map(({ productId, paid }) => [productId, paid])).toEqual([
      ['a', 10],
      ['b', 0],
    ]);
    expect(found.products[0]?.goesOut).toBeCloseTo(6, 9);
    expect(found.products[1]?.goesOut).toBeCloseTo(2.7, 9);
    expect(found.paid).toBe(10);
    expect(found.goesOut).toBeCloseTo(8.7, 9);
    expect(found.unknown).toBe(0);
  });

  it('leaves out of the sums what has no price, and counts it', () => {
    const priced = taken(product('a', { packs: [kg('bag', 10, 5)] }), 10);
    const free = taken(product('b', { packs: [kg('bag', 10, null)] }), 12);
    const none = taken(product('c', { packs: [kg('bag', 10, null)], onHand: { bag: 2 } }), 12);
    const found = costSummary([priced, free, none, { ...free, plan: null }]);
    expect(found.products.map(({ paid, goesOut }) => [paid, goesOut])).toEqual([
      [5, 5],
      [null, null],
      [0, null],
      [null, null],
    ]);
    expect([found.paid, found.goesOut, found.unknown]).toEqual([5, 5, 3]);
  });

  it('counts what goes out at the price of the pack it comes from', () => {
    // 10 kg from the shelf at 3 for 10 kg, then 2 of 4 kg at 2
    const packs = [kg('small', 4, 2), kg('large', 10, 3)];
    const found = costSummary([taken(product('a', { packs, onHand: { large: 1 } }), 12)]);
    expect(found.paid).toBe(2);
    expect(found.goesOut).toBeCloseTo(4, 9);
  });
});
