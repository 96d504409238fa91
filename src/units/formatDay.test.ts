import { expect, it } from 'vitest';
import { formatDay } from './formatDay';

// weekdays as printed calendars have them: 4 July 1776 a Thursday, 20 July 1969 a Sunday
it.each([
  ['1776-07-04', 'Thu, Jul 4'],
  ['1969-07-20', 'Sun, Jul 20'],
  ['2031-05-14', 'Wed, May 14'],
  ['2028-02-29', 'Tue, Feb 29'],
])('%s is %s', (date, words) => {
  expect(formatDay(date).replace('\u00a0', ' ')).toBe(words);
  expect(formatDay(date, true).replace('\u00a0', ' ')).toBe(`${words}, ${date.slice(0, 4)}`);
});

it.each(['', 'soon', '2031-02-30', '2031-13-01', '05-14'])('“%s” is no day and stays', (text) => {
  expect(formatDay(text, true)).toBe(text);
});
