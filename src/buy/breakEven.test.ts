import { describe, expect, it } from 'vitest';
import { newProduct } from '../yard/defaults';
import type { Pack } from '../yard/types';
import { breakEvens } from './breakEven';
import type { NeedLine, ProductNeed } from './types';

const pack = (id: string, value: number, price: number | null): Pack => ({
  id,
  content: { unit: 'kg', value },
  price,
});
const product = (...packs: readonly Pack[]) => newProduct('p', { name: 'Invented', packs });
const need = (doses: number, amount: number): ProductNeed => ({
  productId: 'p',
  unit: 'kg',
  unreadDoseIds: [],
  lines: Array.from({ length: doses }, (_, i): NeedLine => {
    const at = { visitId: `v${i}`, doseId: `d${i}`, useId: null, date: null };
    return { ...at, amount, areaM2: 100, areaSigmaM2: 0 };
  }),
});

describe('breakEvens', () => {
  it('finds the need from which the larger pack is never dearer', () => {
    // small 1 kg at 10, large 4 kg at 32, by hand: a need to 3 costs 30 in small ones, over 3 costs 40 or 32;
    // needs in (4, 7] cost 32 + small against small: 42 to 50, 52 to 60, 62 to 70, never dearer
    const [found] = breakEvens(product(pack('s', 1, 10), pack('l', 4, 32)), need(2, 3));
    expect(found?.packId).toBe('l');
    expect(found?.above).toBeCloseTo(3, 9);
    // 3 kg go on each 100 m²: more than 3 kg from 100 m² on, all doses added up
    expect(found?.groundM2).toBeCloseTo(100, 6);
    expect(found?.isFromFirst).toBe(false);
  });

  it('looks past the first need at which it pays', () => {
    // small 2 kg at 10, large 3 kg at 14, by hand: 3 kg cost 20 or 14, but 4 kg cost 20 against 24
    // (28 for two large), 6 kg 28 against 30, 8 kg 38 against 40: over 4 never dearer, since 5 kg cost 24 or 30
    const [found] = breakEvens(product(pack('s', 2, 10), pack('l', 3, 14)), need(1, 4));
    expect(found?.above).toBeCloseTo(4, 9);
  });

  it('has none for a pack that is dearer by the unit, alone, or without a price', () => {
    expect(breakEvens(product(pack('s', 1, 10), pack('l', 4, 44)), need(1, 4))).toEqual([]);
    expect(breakEvens(product(pack('s', 1, 10), pack('l', 4, 40)), need(1, 4))).toEqual([]);
    expect(breakEvens(product(pack('l', 4, 44)), need(1, 4))).toEqual([]);
    expect(breakEvens(product(pack('s', 1, 10), pack('l', 4, null)), need(1, 4))).toEqual([]);
  });

  it('is quick and exact with five sizes that no measure divides', () => {
    const sizes = [
      [1.01, 10],
      [2.37, 22.5],
      [3.91, 36],
      [7.13, 64],
      [11.59, 100],
    ] as const;
    const packs = sizes.map(([content, price], i) => pack(`k${i}`, content, price));
    const start = performance.now();
    const found = breakEvens(product(...packs), need(3, 5));
    expect(performance.now() - start).toBeLessThan(3000);
    // the same by a table over needs in hundredths, up to a need far past the answers
    const most = 40_000;
    const costs = (own: readonly (readonly [number, number])[]) => {
      const table = new Float64Array(most + 1);
      for (let at = 1; at <= most; at++)
        table[at] = Math.min(
          ...own.map(([content, price]) => price + (table[Math.max(0, at - Math.round(100 * content))] ?? 0)),
        );
      return table;
    };
    const expected = sizes.slice(1).map(([content, price], i) => {
      const small = costs(sizes.slice(0, i + 1));
      const all = costs(sizes.slice(0, i + 2));
      let last = 0;
      for (let at = 1; at <= most; at++) {
        const withLarge = price + (all[Math.max(0, at - Math.round(100 * content))] ?? 0);
        if (withLarge > (small[at] ?? 0) + 1e-6) last = at;
      }
      return last / 100;
    });
    expect(found.map((one) => one.packId)).toEqual(['k1', 'k2', 'k3', 'k4']);
    for (const [i, one] of found.entries()) expect(one.above).toBeCloseTo(expected[i] ?? -1, 9);
  });

  it('pays from the first on where it is cheaper than one small pack', () => {
    expect(breakEvens(product(pack('s', 1, 10), pack('l', 4, 9)), need(1, 4))[0]).toMatchObject({
      above: 0,
      isFromFirst: true,
    });
    // a need over 3 kg, and every dose takes 3.5
    const packs = [pack('s', 1, 10), pack('l', 4, 32)] as const;
    expect(breakEvens(product(...packs), need(2, 3.5))[0]?.isFromFirst).toBe(true);
  });
});
