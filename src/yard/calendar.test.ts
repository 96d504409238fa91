import { describe, expect, it } from 'vitest';
import { addDays, dayNumber, dayOfNumber, daysBetween, sameDayOfYear, yearsLater } from './calendar';

describe('dayNumber', () => {
  it('counts days from 1970-01-01 and refuses what is no day', () => {
    expect(dayNumber('1970-01-02')).toBe(1);
    expect((dayNumber('2032-03-01') ?? 0) - (dayNumber('2032-02-28') ?? 0)).toBe(2);
    for (const text of ['2031-02-29', '2031-13-01', '1 June', '', null]) expect(dayNumber(text)).toBeNull();
  });
  // Gregorian rule: 400 years are 146,097 days
  it('takes the first hundred years as they are written', () => {
    expect(daysBetween('0050-05-01', '0450-05-01')).toBe(146_097);
    expect(dayOfNumber(dayNumber('0050-05-01') ?? 0)).toBe('0050-05-01');
    expect(dayNumber('0096-02-29')).not.toBeNull();
    expect(dayNumber('0097-02-29')).toBeNull();
  });
});

it('a day of no date stays none', () => {
  expect(addDays('2031-02-30', 1)).toBeNull();
  expect(() => dayOfNumber(4_000_000)).toThrow(RangeError);
});

it('the same day of another year, and so many years later', () => {
  expect(sameDayOfYear('2028-02-29', 2029)).toBe('2029-02-28');
  expect(yearsLater('2024-02-29', 1)).toBe('2025-03-01');
  expect(yearsLater('0050-05-01', 3)).toBe('0053-05-01');
  expect(yearsLater('2023-05-20', 3)).toBe('2026-05-20');
  expect(yearsLater('2025-09-01', -30 / 365.25)).toBe('2025-08-02');
  // half of 365.25 days, rounded
  expect(yearsLater('2026-01-01', 0.5)).toBe('2026-07-03');
});
