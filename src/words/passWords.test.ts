import { expect, it } from 'vitest';
import { headingWords } from './passWords';

it('names a heading there and back by the points of the compass (22.5° each, from memory)', () => {
  expect(headingWords(0)).toBe('0° (N–S)');
  expect(headingWords(72)).toBe('72° (ENE–WSW)');
  expect(headingWords(90)).toBe('90° (E–W)');
  expect(headingWords(135)).toBe('135° (SE–NW)');
  expect(headingWords(179.8)).toBe('0° (N–S)');
});
