import { expect, it } from 'vitest';
import { rangeFault } from './range-fault';

const GAL = 3.785411784;
const FT = 0.3048;

it('a least of next to nothing is told as more than nothing', () => {
  expect(rangeFault(0, 1e-6 / GAL, null, 'gal')).toBe('Must be more than 0.');
  expect(rangeFault(-2, 0, null, '°')).toBe('Must be 0 ° or more.');
});

it.each([
  [0.1, 0.5 / GAL, null, 'Must be 0.133 gal or more.'],
  [4000, null, 1000 / FT, 'Must be 3,280 gal or less.'],
  [50_000, null, 10_000 / FT, 'Must be 32,800 gal or less.'],
  [0.1, 0.3 / 0.3, null, 'Must be 1 gal or more.'],
  [9, null, 0.7 * 10, 'Must be 7 gal or less.'],
  [0.5, 0.5, 0.5, ''],
  [Number.NaN, 0, 1, 'Type a number.'],
])('%s between %s and %s', (value, min, max, words) => {
  expect(rangeFault(value, min, max, 'gal')).toBe(words);
});

it.each([0.13209, 1.2345, 3280.84, 96.4, 0.0254])('the figure told of %s is itself allowed', (limit) => {
  const told = (words: string) => Number(/[\d.,]+/.exec(words)?.[0].replaceAll(',', ''));
  const [least, most] = [told(rangeFault(0, limit, null, 'ft')), told(rangeFault(1e9, null, limit, 'ft'))];
  expect(rangeFault(least, limit, null, 'ft')).toBe('');
  expect(rangeFault(most, null, limit, 'ft')).toBe('');
  expect(Math.abs(least - limit) / limit).toBeLessThan(0.01);
  expect(Math.abs(most - limit) / limit).toBeLessThan(0.01);
});
