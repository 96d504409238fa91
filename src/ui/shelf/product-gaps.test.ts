import { describe, expect, it } from 'vitest';
import { checkProduct } from '../../plan/check';
import type { Product } from '../../yard/types';
import { blankProduct, inForm } from './product-edits';
import { fieldKey, flagWords, quietGaps } from './product-gaps';

const fresh = blankProduct('product-1', 'pack-1', 'Product 1', 'us');
const told = (product: Product, left: readonly string[] = []) =>
  quietGaps(checkProduct(product), product, new Set(left));

describe('a new product', () => {
  it('has nothing wrong, only entries to fill in, until they were left empty', () => {
    expect(told(fresh).map((issue) => issue.severity)).toEqual(['note', 'note']);
    expect(flagWords(told(fresh))).toEqual({ words: '2 entries still to fill in', isFault: false });
    const pack = told(fresh, [fieldKey({ packId: 'pack-1' })]);
    expect(pack.filter((issue) => issue.severity === 'error').map((issue) => issue.code)).toEqual([
      'pack-empty',
    ]);
    const rate = told(fresh, [fieldKey({ useId: null })]);
    expect(rate.filter((issue) => issue.severity === 'error').map((issue) => issue.code)).toEqual([
      'rate-not-positive',
    ]);
    expect(flagWords(rate)?.isFault).toBe(true);
  });
  it('a wrong entry is wrong at once', () => {
    const wrong = { ...fresh, analysis: { ...fresh.analysis, nPct: 80, p2o5Pct: 60 } };
    expect(flagWords(told(wrong))).toEqual({ words: 'One entry cannot be right', isFault: true });
  });
});

describe('another form', () => {
  it.each([
    ['granular', 'mass-per-area', 'kg'],
    ['seed', 'mass-per-area', 'kg'],
    ['soluble-powder', 'mass-per-area', 'kg'],
    ['mulch', 'depth', 'L'],
    ['topdressing', 'depth', 'L'],
    ['ready-to-use', 'volume-per-area', 'L'],
  ] as const)('%s begins by %s', (form, basis, unit) => {
    const product = inForm(fresh, form);
    expect(product.rate.basis).toBe(basis);
    expect(product.packs[0]?.content.unit).toBe(unit);
  });
  it('what is spread dry has no carrier; a rate already typed stays as it is', () => {
    const wet: Product = { ...fresh, carrierLPerM2: 0.4 };
    expect(inForm(wet, 'granular').carrierLPerM2).toBeNull();
    const typed: Product = { ...fresh, rate: { basis: 'volume-per-area', rateLPerM2: 0.001 } };
    expect(inForm(typed, 'granular').rate).toEqual(typed.rate);
  });
});
