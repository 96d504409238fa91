import { describe, expect, it } from 'vitest';
import type { ProductPurchase, PurchasePlan, SpokenFor } from '../buy/types';
import { KG_PER_LB, L_PER_FLOZ, L_PER_GAL, M2_PER_1000_SQFT } from '../units/factors';
import { newProduct } from '../yard/defaults';
import {
  areaStepWords,
  breakEvenWords,
  carriedLines,
  costWords,
  drawWords,
  haveByWords,
  leftWords,
  neededWords,
  packsToBuyWords,
  usedCostWords,
} from './buyWords';

const plain = (text: string | null) => (text ?? '').replaceAll('\u00a0', ' ');
const product = newProduct('p', {
  name: 'Invented feed',
  form: 'liquid-concentrate',
  packs: [
    { id: 'bottle', content: { unit: 'L', value: 32 * L_PER_FLOZ }, price: 20 },
    { id: 'jug', content: { unit: 'L', value: 2.5 * L_PER_GAL }, price: 120 },
  ],
});
const plan: PurchasePlan = {
  goal: 'cost',
  packs: [{ packId: 'bottle', count: 4 }],
  cost: 80,
  packCount: 4,
  bought: 128 * L_PER_FLOZ,
  left: 16 * L_PER_FLOZ,
  spoiled: 0,
  orders: [],
  openings: [],
  carried: [],
  isProven: true,
  effort: 2,
};
const purchase: ProductPurchase = {
  need: {
    productId: 'p',
    unit: 'L',
    unreadDoseIds: [],
    lines: ['a', 'b'].map((id) => ({
      visitId: id,
      doseId: id,
      useId: null,
      date: null,
      amount: L_PER_GAL,
      areaM2: M2_PER_1000_SQFT,
      areaSigmaM2: 0,
    })),
  },
  needed: 2 * L_PER_GAL,
  onShelf: 0,
  plans: { cost: plan, packs: plan, left: plan },
  issues: [],
};

describe('words of the purchase', () => {
  it('tells need, packs and what is left', () => {
    expect(plain(neededWords(product, purchase, 'us'))).toBe('Needs 2 gal for 2 doses; none on the shelf.');
    expect(plain(packsToBuyWords(product, plan.packs, 'us'))).toBe('4 × 32 fl oz');
    expect(packsToBuyWords(product, [], 'us')).toBe('nothing');
    expect(plain(leftWords(product, purchase, plan, 'us'))).toBe('16 fl oz');
    const spoils = { ...plan, spoiled: 8 * L_PER_FLOZ };
    expect(plain(leftWords(product, purchase, spoils, 'us'))).toBe('16 fl oz, of which 8 fl oz spoils');
    expect(leftWords(product, purchase, { ...plan, left: 0 }, 'us')).toBe('nothing');
  });

  it('tells what of the shelf earlier visits take first', () => {
    const own = { ...purchase, onShelf: 13 * L_PER_FLOZ };
    const spokenFor = { amount: 12 * L_PER_FLOZ, short: 0, before: '2027-05-01' };
    const words = (it: typeof own, by: SpokenFor | null) => plain(neededWords(product, it, 'us', by));
    expect(words(own, spokenFor)).toBe(
      'Needs 2 gal for 2 doses; 25 fl oz on the shelf, 12 fl oz of it for visits before Sat, May 1, 2027.',
    );
    expect(words({ ...own, onShelf: 0 }, { ...spokenFor, short: 6 * L_PER_FLOZ })).toBe(
      'Needs 2 gal for 2 doses; 12 fl oz on the shelf, all of it for visits before Sat, May 1, 2027. They take 6 fl oz more, which is not bought here.',
    );
    expect(words({ ...own, onShelf: 0 }, { amount: 0, short: 6 * L_PER_FLOZ, before: null })).toBe(
      'Needs 2 gal for 2 doses; none on the shelf. Earlier visits take 6 fl oz, which is not bought here.',
    );
    expect(words(own, null)).toBe('Needs 2 gal for 2 doses; on the shelf 13 fl oz.');
  });

  it('leaves out what is left over by rounding alone', () => {
    expect(leftWords(product, purchase, { ...plan, left: 1e-4 * purchase.needed }, 'us')).toBe('nothing');
  });

  it('tells the day a pack is opened and has to be there by', () => {
    expect(plain(haveByWords('2027-05-31', false))).toBe('opened on Mon, May 31, 2027; have it by then');
    expect(plain(haveByWords('2027-05-31', true))).toBe(
      'opened on Mon, May 31, 2027; have it by then, not long before',
    );
  });

  it('says that a cost counts only what is used', () => {
    const costs = { perUnit: 2, perKg: { N: 10, P2O5: null, K2O: null } };
    expect(plain(usedCostWords(costs, 0.01, '€', 'metric'))).toBe(
      'Only what is used, at the price of the packs: €2.00 per 100 m² a dose; €10.00 per kg of N.',
    );
  });

  it('tells at what change of the ground the purchase moves', () => {
    const more = { ...plan, packs: [{ packId: 'bottle', count: 5 }] };
    const words = areaStepWords(product, plan, [{ change: 0.02, plan: more }], 'us');
    expect(plain(words)).toBe(
      'Buy 4 × 32 fl oz; 5 × 32 fl oz if the ground is 2 % larger (within the ± of the measured ground).',
    );
    expect(areaStepWords(product, plan, [], 'us')).toBeNull();
    expect(areaStepWords(product, plan, null, 'us')).toMatch(/^Not looked at/);
  });

  it('tells from what ground a larger pack pays', () => {
    // two doses on 1,000 sq ft; rounded up, so that it holds from there on
    const found = { packId: 'jug', above: 18, groundM2: 9.3101 * M2_PER_1000_SQFT, isFromFirst: false };
    const words = (own: ProductPurchase, one = found) => plain(breakEvenWords(product, one, own, 'us'));
    expect(words(purchase)).toBe(
      'The 2.5 gal pack pays from 9,400 sq ft, all doses added up; these 2 doses treat 2,000 sq ft.',
    );
    expect(words({ ...purchase, onShelf: L_PER_GAL / 2 })).toBe(
      'The 2.5 gal pack pays from 9,400 sq ft, all doses added up; these 2 doses treat 2,000 sq ft, of which the shelf does 500 sq ft.',
    );
    const { need } = purchase;
    expect(words({ ...purchase, need: { ...need, lines: need.lines.slice(0, 1) } })).toBe(
      'The 2.5 gal pack pays from 9,400 sq ft; this dose treats 1,000 sq ft.',
    );
    expect(words(purchase, { ...found, groundM2: 9.4 * M2_PER_1000_SQFT })).toContain('from 9,400 sq ft,');
    expect(words(purchase, { ...found, isFromFirst: true })).toBe(
      'The 2.5 gal pack pays from the first dose on.',
    );
    expect(plain(breakEvenWords(product, { ...found, groundM2: 123.4 }, purchase, 'metric'))).toContain(
      'from 130 m²,',
    );
  });

  it('tells cost by ground and nutrient, in either system', () => {
    const costs = { perUnit: 2, perKg: { N: 10, P2O5: null, K2O: null } };
    const perM2 = 0.5 / M2_PER_1000_SQFT;
    expect(costWords(costs, perM2, '$', 'us').map(plain)).toEqual([
      '$1.00 per 1,000 sq ft a dose',
      `$${(10 * KG_PER_LB).toFixed(2)} per lb of N`,
    ]);
    expect(costWords(costs, 0.01, '€', 'metric').map(plain)).toEqual([
      '€2.00 per 100 m² a dose',
      '€10.00 per kg of N',
    ]);
  });

  it('tells what is opened, and what is carried over', () => {
    const draw = { packId: 'bottle', from: 'bought', isOpened: true, taken: 1, levelAfter: 0.4 } as const;
    expect(plain(drawWords(product, draw, 'us'))).toBe('opens 32 fl oz: stays 40 % full');
    expect(plain(drawWords(product, { ...draw, isOpened: false, from: 'shelf', levelAfter: 0 }, 'us'))).toBe(
      'goes on with 32 fl oz from the shelf: used up',
    );
    const closed = { packId: 'jug', from: 'shelf', isOpen: false, level: 1, goodUntil: null } as const;
    const open = {
      packId: 'bottle',
      from: 'bought',
      isOpen: true,
      level: 0.4,
      goodUntil: '2031-06-04',
    } as const;
    // the label tells neither how long a closed one keeps, nor an opened one
    expect(carriedLines(product, [{ ...open, goodUntil: null }], 'us').map(plain)).toEqual([
      '32 fl oz, opened, 40 % full; how long it keeps opened: the label is silent',
    ]);
    expect(carriedLines(product, [closed, closed, open], 'us').map(plain)).toEqual([
      '2 × 2.5 gal, closed',
      '32 fl oz, opened, 40 % full, good until Wed, Jun 4, 2031',
    ]);
  });
});
