import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heldNeed, suggestHold } from '../../src/need/flushHold';
import { growthPotential } from '../../src/need/growthPotential';
import { monthlyNeed } from '../../src/need/monthlyNeed';
import { readMonthlyMeans } from '../../src/need/readMonthlyMeans';
import type { NitrogenSplit, NutrientNeed } from '../../src/yard/types';
import { DAYS_IN_MONTH, dayOfYear, sharesWithin, yearDayOf } from '../../src/yard/yearDay';

const month = fc.integer({ min: 1, max: 12 });
const amount = fc.double({ min: 0, max: 0.05, noNaN: true });
const means = fc.array(fc.double({ min: -30, max: 40, noNaN: true }), { minLength: 12, maxLength: 12 });
const split: fc.Arbitrary<NitrogenSplit> = fc.oneof(
  fc.record({ kind: fc.constant('even' as const), fromMonth: month, toMonth: month }),
  fc.record({ kind: fc.constant('growth' as const) }),
  fc.record({
    kind: fc.constant('typed' as const),
    shares: fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 12, maxLength: 12 }),
  }),
);
const season = fc.constantFrom('cool-season' as const, 'warm-season' as const);
const day = fc.integer({ min: 0, max: 364 }).map(yearDayOf);
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

function need(fields: Partial<NutrientNeed>): NutrientNeed {
  const zones = { classes: [], include: [], exclude: [] };
  const split = { kind: 'growth' } as const;
  return {
    id: 'n',
    name: '',
    zones,
    speciesId: '',
    season: 'cool-season',
    guideId: '',
    nKgPerM2: 0,
    split,
    hold: null,
    ...fields,
  };
}

describe('the year by month', () => {
  it('sums to the year and has no month under nothing, or is no split at all', () => {
    fc.assert(
      fc.property(split, season, means, amount, (one, grass, monthlyMeanC, nKgPerM2) => {
        const months = monthlyNeed(need({ split: one, season: grass, nKgPerM2 }), {
          monthlyMeanC,
          source: '',
        });
        if (months === null) {
          expect(one.kind).not.toBe('even');
          return;
        }
        expect(Math.abs(sum(months) - nKgPerM2)).toBeLessThanOrEqual(1e-14);
        expect(Math.min(...months)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  it('gives a month that grows better no less', () => {
    fc.assert(
      fc.property(season, means, (grass, monthlyMeanC) => {
        const months = monthlyNeed(need({ season: grass, nKgPerM2: 1 }), { monthlyMeanC, source: '' }) ?? [];
        const byGrowth = [...months.keys()].sort(
          (a, b) =>
            growthPotential(monthlyMeanC[a] ?? 0, grass) - growthPotential(monthlyMeanC[b] ?? 0, grass),
        );
        for (let i = 1; i < byGrowth.length; i++)
          expect(months[byGrowth[i] ?? 0]).toBeGreaterThanOrEqual(months[byGrowth[i - 1] ?? 0] ?? 0);
      }),
    );
  });
});

describe('growth potential', () => {
  it('rises up to the best temperature and lies between 0 and 1', () => {
    const t = fc.double({ min: -40, max: 31, noNaN: true });
    fc.assert(
      fc.property(t, t, season, (a, b, grass) => {
        const [cold, warm] = [Math.min(a, b), Math.max(a, b)];
        if (grass === 'cool-season' && warm > 20) return;
        expect(growthPotential(cold, grass)).toBeLessThanOrEqual(growthPotential(warm, grass));
        expect(growthPotential(warm, grass)).toBeLessThanOrEqual(1);
        expect(growthPotential(cold, grass)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('the hold', () => {
  const months = fc.array(amount, { minLength: 12, maxLength: 12 });
  it('is never passed, loses nothing and takes from no month outside it', () => {
    fc.assert(
      fc.property(months, day, day, amount, (year, from, to, maxNKgPerM2) => {
        const held = heldNeed(year, { from, to, maxNKgPerM2 });
        expect(sum(held.withinKgPerM2)).toBeLessThanOrEqual(maxNKgPerM2 + 1e-12);
        expect(sum(held.months) + held.leftOverKgPerM2).toBeCloseTo(sum(year), 12);
        const within = sharesWithin(dayOfYear(from) ?? 0, dayOfYear(to) ?? 0);
        for (const [index, value] of held.months.entries()) {
          expect(value).toBeGreaterThanOrEqual((held.withinKgPerM2[index] ?? 0) - 1e-15);
          if (within[index] === 0) expect(value).toBeGreaterThanOrEqual((year[index] ?? 0) - 1e-15);
        }
      }),
    );
  });
  it('of whole months, held once is held: a second time changes nothing', () => {
    const two = (value: number) => String(value).padStart(2, '0');
    fc.assert(
      fc.property(months, month, month, amount, (year, first, last, maxNKgPerM2) => {
        const hold = { from: `${two(first)}-01`, to: `${two(last)}-${DAYS_IN_MONTH[last - 1]}`, maxNKgPerM2 };
        const once = heldNeed(year, hold);
        const twice = heldNeed(once.months, hold);
        for (const [index, value] of twice.months.entries())
          expect(value).toBeCloseTo(once.months[index] ?? 0, 12);
      }),
    );
  });
  it('is always offered with days that exist', () => {
    fc.assert(
      fc.property(means, season, (monthlyMeanC, grass) => {
        const { hold } = suggestHold(grass, { monthlyMeanC, source: '' });
        expect(dayOfYear(hold.from)).not.toBeNull();
        expect(dayOfYear(hold.to)).not.toBeNull();
      }),
    );
  });
});

describe('reading monthly means', () => {
  const readable = fc.array(fc.integer({ min: -300, max: 400 }), { minLength: 12, maxLength: 12 });
  it('gives back what was written, whatever parts it', () => {
    fc.assert(
      fc.property(readable, fc.constantFrom(' ', ', ', ';', '\t', '\n', ' | '), (tenths, mark) => {
        const read = readMonthlyMeans(tenths.map((value) => (value / 10).toFixed(1)).join(mark), 'metric');
        expect(read.ok && read.monthlyMeanC).toEqual(tenths.map((value) => value / 10));
      }),
    );
  });
  it('never throws, and either gives twelve numbers or says what is wrong', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 400 }), (text) => {
        const read = readMonthlyMeans(text, 'us');
        if (read.ok) expect(read.monthlyMeanC.filter(Number.isFinite).length).toBe(12);
        else expect(read.issues[0]?.message.length).toBeGreaterThan(5);
      }),
    );
  });
});
