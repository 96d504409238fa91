import { expect, it } from 'vitest';
import { printedCoverage } from './printed-coverage';

it('prints walks that are ready, and none of before while new ones are laid', () => {
  const coverage = { visitId: 'visit-1', doses: [] };
  expect(printedCoverage({ state: 'ready', coverage })).toBe(coverage);
  expect(printedCoverage({ state: 'working', before: coverage })).toBeNull();
  expect(printedCoverage({ state: 'failed', message: '' })).toBeNull();
  expect(printedCoverage({ state: 'none' })).toBeNull();
});
