import { describe, expect, it } from 'vitest';
import type { Issue } from '../yard/types';
import { beyondHoseWords, dryingWords, headingWords, walkIssues } from './passWords';

it('names a heading there and back by the points of the compass (22.5° each, from memory)', () => {
  expect(headingWords(0)).toBe('0° (N–S)');
  expect(headingWords(72)).toBe('72° (ENE–WSW)');
  expect(headingWords(90)).toBe('90° (E–W)');
  expect(headingWords(135)).toBe('135° (SE–NW)');
  expect(headingWords(179.8)).toBe('0° (N–S)');
});

describe('what speaks against a walk', () => {
  const issue = (code: string, message: string): Issue => ({ code, severity: 'note', message, place: {} });
  const walk = (zoneId: string, coat: 1 | 2, missedM2: number, ...issues: Issue[]) => ({
    zoneId,
    coat,
    missedM2,
    areaM2: 100,
    issues,
  });
  const names = new Map([
    ['a', 'Back lawn'],
    ['b', ''],
  ]);
  const told = (issues: Issue[], ...walks: ReturnType<typeof walk>[]) =>
    walkIssues({ issues, walks }, names).map(({ message }) => message.replaceAll('\u00a0', ' '));

  it('names the ground, tells what both coats share once, and which coat where they differ', () => {
    const narrow = issue('c', 'A place is narrow.');
    expect(
      told(
        [issue('two-wet-coats', 'Two coats.')],
        walk('a', 1, 0, narrow),
        walk('a', 2, 0, narrow),
        walk('b', 1, 0),
        walk('b', 2, 0, narrow),
      ),
    ).toEqual([
      'Two coats.',
      'Back lawn: A place is narrow.',
      'Ground without a name, second coat: A place is narrow.',
    ]);
    const named = 'On “Back lawn” a place is narrow.';
    expect(told([], walk('a', 1, 0, issue('c', named)))).toEqual([named]);
  });

  it('tells ground left out by the whole zone over its coats, not by each of its pieces', () => {
    const pieces = [issue('passes-missed', 'about 54 %'), issue('passes-missed', 'about 3 %')];
    const lines = told([], walk('a', 1, 1.2, ...pieces), walk('a', 2, 2.4, ...pieces));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^Back lawn: the passes leave about 1\.8 % of it out: corners/);
  });

  it('says that the clock leaves the drying of a first coat out', () => {
    const issues = [issue('two-wet-coats', 'Two coats.')];
    expect(dryingWords({ issues })).toBe('without the wait until the first coat has dried');
    expect(dryingWords({ issues: [] })).toBe('');
  });
});

describe('ground beyond the hose', () => {
  const names = new Map([
    ['a', 'Back lawn'],
    ['b', 'Strip'],
    ['c', ''],
    ['d', 'Bank'],
  ]);
  const told = (...zoneIds: string[]) =>
    beyondHoseWords(
      { beyondM2: 120, beyond: zoneIds.map((zoneId, i) => ({ zoneId, areaM2: 60 - i })) },
      names,
      'metric',
    ).replaceAll('\u00a0', ' ');

  it('is told by its zones, where most lies first', () => {
    expect(told()).toBe('120 m² lie beyond it');
    expect(told('b')).toBe('120 m² lie beyond it, all in “Strip”');
    expect(told('b', 'a')).toBe('120 m² lie beyond it, most of it in “Strip”; also in “Back lawn”');
    expect(told('a', 'b', 'd', 'c')).toMatch(
      /most of it in “Back lawn”; also in “Strip”, “Bank” and 1 more$/,
    );
  });
});
