import { describe, expect, it } from 'vitest';
import { checkNeedShape, checkRuleShape } from './schemaPlan';

const need = (from: string, to: string) => ({
  id: 'n',
  zones: { classes: [], include: [], exclude: [] },
  season: 'cool-season',
  nKgPerM2: 0.01,
  split: { kind: 'growth' },
  hold: { from, to, maxNKgPerM2: 0 },
});

describe('a day of every year', () => {
  it.each(['01-31', '02-29', '04-30', '12-31'])('%s is one', (day) =>
    expect(checkNeedShape(need(day, day)).ok).toBe(true),
  );
  // days that no month has would hold nothing back in silence
  it.each(['02-30', '02-31', '04-31', '06-31', '09-31', '11-31', '00-10', '13-01', '1-5', '05-32'])(
    '%s is none, and is told with its place',
    (day) => {
      const read = checkNeedShape(need('03-01', day));
      expect(read.ok).toBe(false);
      if (!read.ok) expect(JSON.stringify(read)).toContain('must be a day such as 05-31');
    },
  );
  it('is held so in rules as in needs', () => {
    const rule = (to: string) => ({
      id: 'r',
      name: '',
      terms: { kind: 'blackout', from: '06-01', to, nutrients: ['N'] },
    });
    expect(checkRuleShape(rule('09-30')).ok).toBe(true);
    expect(checkRuleShape(rule('09-31')).ok).toBe(false);
  });
});
