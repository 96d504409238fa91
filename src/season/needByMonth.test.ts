import { describe, expect, it } from 'vitest';
import type { NutrientNeed } from '../yard/types';
import { needByMonth } from './needByMonth';
import { testSeason } from './testSeason';

// NC State, Carolina Lawns: 1 lb of N per 1,000 sq ft in each of May to August for some grasses: 4 in even shares
const LB = 0.45359237 / 92.90304;
const need: NutrientNeed = {
  id: 'n-1',
  name: 'Front',
  zones: { classes: [], include: ['front'], exclude: [] },
  speciesId: '',
  season: 'warm-season',
  guideId: '',
  nKgPerM2: 4 * LB,
  split: { kind: 'even', fromMonth: 5, toMonth: 8 },
  hold: null,
};
const { yard } = testSeason([], []);
const front = { zoneId: 'front', areaM2: 300 };
const back = { zoneId: 'back', areaM2: 100 };
const inLb = (months: readonly number[] | null) => months?.map((value) => Number((value / LB).toFixed(9)));

describe('what ground wants month by month', () => {
  it('is the need of a zone, and the mean over all ground of several', () => {
    const wants = { ...yard, needs: [need] };
    expect(inLb(needByMonth(wants, [front]))).toEqual([0, 0, 0, 0, 1, 1, 1, 1, 0, 0, 0, 0]);
    expect(inLb(needByMonth(wants, [front, back]))?.[4]).toBe(0.75);
  });
  it('moves on what is held back', () => {
    const held = { ...need, hold: { from: '05-01', to: '05-31', maxNKgPerM2: 0.4 * LB } };
    const months = inLb(needByMonth({ ...yard, needs: [held] }, [front]));
    expect(months?.[4]).toBeCloseTo(0.4, 9);
    expect(months?.[6]).toBeCloseTo(1.2, 9);
  });
  it('is not known without a need, a climate it goes by, or ground', () => {
    const wants = { ...yard, needs: [need] };
    expect(needByMonth(wants, [back])).toBeNull();
    expect(needByMonth(wants, [{ ...front, areaM2: 0 }])).toBeNull();
    expect(needByMonth({ ...yard, needs: [{ ...need, split: { kind: 'growth' } }] }, [front])).toBeNull();
  });
});
