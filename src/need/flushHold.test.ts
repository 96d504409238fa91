import { describe, expect, it } from 'vitest';
import { NO_CLIMATE } from '../yard/defaults';
import { dayOfYear } from '../yard/yearDay';
import { heldNeed, suggestHold } from './flushHold';
import { CONTINENTAL } from './testNeed';

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const EVEN = [0, 0, 0, 2, 2, 2, 2, 2, 2, 2, 0, 0];

describe('suggestHold', () => {
  it('falls back on the usual days', () => {
    const { hold, basis } = suggestHold('cool-season', NO_CLIMATE);
    expect(basis).toBe('usual');
    expect(hold.from).toBe('03-01');
  });
  it('is later for warm-season grass', () => {
    const cool = suggestHold('cool-season', CONTINENTAL).hold;
    const warm = suggestHold('warm-season', CONTINENTAL).hold;
    expect(warm.to > cool.to).toBe(true);
    expect(warm.maxNKgPerM2).toBe(0);
  });
  it('lies in the second half of the year south of the equator', () => {
    const { monthlyMeanC } = CONTINENTAL;
    const south = [...(monthlyMeanC ?? []).slice(6), ...(monthlyMeanC ?? []).slice(0, 6)];
    const north = suggestHold('cool-season', CONTINENTAL).hold;
    const { hold } = suggestHold('cool-season', { monthlyMeanC: south, source: '' });
    const apart = (dayOfYear(hold.to) ?? 0) - (dayOfYear(north.to) ?? 0);
    expect(Math.abs(apart - 184)).toBeLessThan(4);
  });
  it('has no spring where every month is alike', () => {
    const climate = { monthlyMeanC: Array<number>(12).fill(26), source: '' };
    expect(suggestHold('cool-season', climate).basis).toBe('usual');
  });
});

describe('heldNeed', () => {
  it('leaves a need alone that keeps to the hold', () => {
    const held = heldNeed(EVEN, { from: '03-01', to: '04-30', maxNKgPerM2: 2 });
    expect(held.months).toBe(EVEN);
    expect(held.movedKgPerM2).toBe(0);
  });
  it('moves the rest to later months by their share', () => {
    const held = heldNeed(EVEN, { from: '03-01', to: '04-30', maxNKgPerM2: 0.8 });
    expect(held.months[3]).toBeCloseTo(0.8, 12);
    for (const month of [4, 5, 6, 7, 8, 9]) expect(held.months[month]).toBeCloseTo(2 + 1.2 / 6, 12);
    expect(held.movedKgPerM2).toBeCloseTo(1.2, 12);
    expect(sum(held.months)).toBeCloseTo(14, 12);
  });
  it('cuts a month of which a part is held by that part alone', () => {
    const held = heldNeed(EVEN, { from: '04-16', to: '04-30', maxNKgPerM2: 0 });
    expect(held.months[3]).toBeCloseTo(1, 12);
    expect(held.withinKgPerM2[3]).toBe(0);
  });
  it('leaves over what has no later month', () => {
    const spring = [0, 0, 0, 3, 0, 0, 0, 0, 0, 0, 0, 0];
    const held = heldNeed(spring, { from: '04-01', to: '04-30', maxNKgPerM2: 1 });
    expect(sum(held.months)).toBeCloseTo(1, 12);
    expect(held.leftOverKgPerM2).toBeCloseTo(2, 12);
  });
  it('moves what a stretch over the new year holds to before the stretch begins', () => {
    const held = heldNeed([1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 1, 1], {
      from: '12-01',
      to: '01-31',
      maxNKgPerM2: 0,
    });
    expect(held.months[11]).toBe(0);
    expect(held.months[1]).toBeCloseTo(1.5, 12);
    expect(held.months[10]).toBeCloseTo(1.5, 12);
  });
});
