import { describe, expect, it } from 'vitest';
import { NO_CLIMATE } from '../yard/defaults';
import { monthlyNeed, monthlyShares, monthsOfRange } from './monthlyNeed';
import { CONTINENTAL, testNeed } from './testNeed';

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe('monthsOfRange', () => {
  it('runs on', () => expect(monthsOfRange(4, 6)).toEqual([3, 4, 5]));
  it('runs over the new year', () => expect(monthsOfRange(11, 2)).toEqual([10, 11, 0, 1]));
  it('is one month where both are the same', () => expect(monthsOfRange(7, 7)).toEqual([6]));
});

describe('monthlyNeed', () => {
  it('gives every month of an even split alike, whatever its days', () => {
    const months = monthlyNeed(testNeed({ split: { kind: 'even', fromMonth: 2, toMonth: 3 } }), NO_CLIMATE);
    expect(months?.[1]).toBeCloseTo(0.006, 12);
    expect(months?.[2]).toBeCloseTo(0.006, 12);
    expect(sum(months ?? [])).toBeCloseTo(0.012, 15);
  });
  it('scales what was typed', () => {
    const shares = [0, 0, 0, 0, 5, 0, 0, 0, 9, 9, 9, 0];
    const months = monthlyNeed(testNeed({ nKgPerM2: 32, split: { kind: 'typed', shares } }), NO_CLIMATE);
    expect(months).toEqual([0, 0, 0, 0, 5, 0, 0, 0, 9, 9, 9, 0]);
  });
  it('gives nothing where all shares are zero', () => {
    const shares = Array<number>(12).fill(0);
    expect(monthlyNeed(testNeed({ split: { kind: 'typed', shares } }), CONTINENTAL)).toBeNull();
  });
  it('gives nothing by growth without a climate', () => {
    expect(monthlyNeed(testNeed({ split: { kind: 'growth' } }), NO_CLIMATE)).toBeNull();
  });
  it('by growth, a cool-season year has two tops and a warm-season year one', () => {
    const cool = monthlyShares({ kind: 'growth' }, 'cool-season', CONTINENTAL) ?? [];
    const warm = monthlyShares({ kind: 'growth' }, 'warm-season', CONTINENTAL) ?? [];
    expect(cool[6]).toBeLessThan(cool[5] ?? 0);
    expect(cool[6]).toBeLessThan(cool[8] ?? 0);
    expect(Math.max(...warm)).toBe(warm[6]);
    expect(sum(cool)).toBeCloseTo(1, 14);
  });
});
