import { expect, it } from 'vitest';
import type { Issue } from '../yard/types';
import { dryingWords, headingWords, walkIssues } from './passWords';

it('names a heading there and back by the points of the compass (22.5° each, from memory)', () => {
  expect(headingWords(0)).toBe('0° (N–S)');
  expect(headingWords(72)).toBe('72° (ENE–WSW)');
  expect(headingWords(90)).toBe('90° (E–W)');
  expect(headingWords(135)).toBe('135° (SE–NW)');
  expect(headingWords(179.8)).toBe('0° (N–S)');
});

it('names the ground of each issue of a walk, and tells what both coats share once', () => {
  const missed = (share: string): Issue => ({
    code: 'passes-missed',
    severity: 'note',
    message: `The passes leave about ${share} of this ground out.`,
    place: {},
  });
  const walk = (zoneId: string, coat: 1 | 2, ...issues: Issue[]) => ({ zoneId, coat, issues });
  const names = new Map([
    ['a', 'Back lawn'],
    ['b', ''],
  ]);
  const wet: Issue = { code: 'two-wet-coats', severity: 'note', message: 'Two coats.', place: {} };
  const told = walkIssues(
    {
      issues: [wet],
      walks: [
        walk('a', 1, missed('3 %')),
        walk('a', 2, missed('3 %')),
        walk('b', 1, missed('2 %')),
        walk('b', 2, missed('4 %')),
      ],
    },
    names,
  );
  expect(told.map(({ message }) => message)).toEqual([
    'Two coats.',
    'Back lawn: The passes leave about 3 % of this ground out.',
    'Ground without a name, first coat: The passes leave about 2 % of this ground out.',
    'Ground without a name, second coat: The passes leave about 4 % of this ground out.',
  ]);
  expect(dryingWords({ issues: [wet] })).toBe('without the wait until the first coat has dried');
  expect(dryingWords({ issues: [] })).toBe('');
  // named already: left as it is
  const named = { ...missed('1 %'), message: 'The passes leave about 1 % of “Back lawn” out.' };
  expect(walkIssues({ issues: [], walks: [walk('a', 1, named)] }, names)[0]?.message).toBe(named.message);
});
