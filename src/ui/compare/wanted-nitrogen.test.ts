import { describe, expect, it } from 'vitest';
import { testNeed } from '../../need/testNeed';
import { turfYard } from '../../plan/testDose';
import type { NutrientNeed } from '../../yard/types';
import { wantedNitrogen } from './wanted-nitrogen';

const lb = (value: number) => (value * 0.45359237) / 92.90304;
const turf = { classes: ['turf-regular'], include: [], exclude: [] } as const;
const need = (id: string, zoneId: string, nLb: number): NutrientNeed =>
  testNeed({ id, zones: { classes: [], include: [zoneId], exclude: [] }, nKgPerM2: lb(nLb) });
const wanted = (needs: readonly NutrientNeed[]) => {
  const found = wantedNitrogen({ ...turfYard([], []), needs }, turf);
  return { nLb: found.nKgPerM2 / lb(1), words: found.words.replaceAll('\u00a0', ' ') };
};

describe('the nitrogen that is wanted of a comparison', () => {
  it('is the need of the ground where all of it goes by one', () => {
    const both = testNeed({ zones: turf, nKgPerM2: lb(2.75) });
    const { nLb, words } = wanted([both]);
    expect(nLb).toBeCloseTo(2.75, 9);
    expect(words).toBe('The need of a year of this ground.');
  });
  it('is the least of several needs, and tells each', () => {
    const { nLb, words } = wanted([need('a', 'front', 2.75), need('b', 'back', 2)]);
    expect(nLb).toBeCloseTo(2, 9);
    expect(words).toBe(
      'The least of the needs of a year of this ground, so that none gets too much: 2.75 lb per 1,000 sq ft on Front; 2 lb per 1,000 sq ft on Back.',
    );
  });
  it('tells the ground that has no need, and where none has', () => {
    const some = wanted([need('a', 'front', 2.75)]);
    expect(some.nLb).toBeCloseTo(2.75, 9);
    expect(some.words).toBe('The need of a year of Front; Back has none.');
    const none = wanted([]);
    expect(none.nLb).toBeCloseTo(1, 9);
    expect(none.words).toBe(
      'No need is set for this ground: 1 lb per 1,000 sq ft stands in for it. Set needs under Need, or type what is wanted.',
    );
  });
});
