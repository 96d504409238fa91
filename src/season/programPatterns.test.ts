import { describe, expect, it } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import { PATTERN_WORDS, paceWords } from '../words/seasonWords';
import type { Yard } from '../yard/types';
import { applyPrograms } from './applyPrograms';
import { programPatterns } from './programPatterns';

const ids = () => {
  let count = 0;
  return (prefix: string) => `${prefix}-${++count}`;
};
const bare: Yard = { ...testYard(), visits: [] };
const quick: Yard = {
  ...bare,
  products: bare.products.map((one) => ({ ...one, limits: { ...one.limits, minIntervalDays: null } })),
};

describe('patterns', () => {
  it('are made of the shelf: liquid on low-cut every two weeks, granules on regular every eight', () => {
    const patterns = programPatterns(quick, 2031, ids());
    expect(patterns.map((one) => one.id)).toEqual([
      'liquid-and-granular',
      'liquid-joined',
      'liquid',
      'granular',
    ]);
    const [liquid, granular] = patterns[0]?.programs ?? [];
    expect(liquid).toMatchObject({
      pace: { kind: 'every', days: 14 },
      zones: { classes: ['turf-low-cut'] },
      doses: [{ productId: 'p-liquid' }],
    });
    expect(granular).toMatchObject({
      pace: { kind: 'every', days: 56 },
      zones: { classes: ['turf-regular'] },
      doses: [{ productId: 'p-granules' }],
    });
    expect(patterns[1]?.programs[1]?.pace).toMatchObject({ kind: 'with', nth: 4, offsetDays: 0 });
    for (const { id } of patterns) expect(PATTERN_WORDS[id]).toBeDefined();
  });

  it('keep the least interval of the label, in whole weeks', () => {
    // the labels of the fixture ask for 28 days
    const [, joined] = programPatterns(bare, 2031, ids());
    expect(joined?.programs.map((one) => paceWords(one, joined.programs))).toEqual([
      'every 4 weeks',
      'with every 2nd visit of “Light liquid”',
    ]);
  });

  it('make visits as they are', () => {
    for (const { programs } of programPatterns(quick, 2031, ids())) {
      const made = applyPrograms({ ...quick, programs }, ids());
      expect(made.issues).toEqual([]);
      expect(made.added).toBeGreaterThan(2);
    }
  });

  it('are none without turf, and only what the shelf has', () => {
    expect(programPatterns({ ...bare, zones: [] }, 2031, ids())).toEqual([]);
    const dry = { ...bare, products: bare.products.filter((one) => one.form === 'granular') };
    expect(programPatterns(dry, 2031, ids()).map((one) => one.id)).toEqual(['granular']);
    expect(programPatterns({ ...bare, products: [] }, 2031, ids())).toEqual([]);
  });
});
