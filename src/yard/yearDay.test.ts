import { describe, expect, it } from 'vitest';
import { dayOfYear, isInStretch, sharesWithin, spanYearOf, yearDayOf } from './yearDay';

describe('days of every year', () => {
  it.each(['01-01', '02-28', '03-01', '12-31'])('%s goes there and back', (day) =>
    expect(yearDayOf(dayOfYear(day) ?? -1)).toBe(day),
  );
  it('takes a 29 February as the 28th and refuses what is no day', () => {
    expect(dayOfYear('02-29')).toBe(dayOfYear('02-28'));
    for (const bad of ['13-01', '04-31', '02-30', '00-10', '4-1', '']) expect(dayOfYear(bad)).toBeNull();
  });
});

describe('a stretch of every year', () => {
  const winter = { from: '11-15', to: '03-01' };
  it('begins in the year before where it runs over the new year; both ends are in it', () => {
    expect(spanYearOf('2026-11-15', winter)).toBe(2026);
    expect(spanYearOf('2027-03-01', winter)).toBe(2026);
    expect(spanYearOf('2027-03-02', winter)).toBeNull();
    expect(spanYearOf('2026-04-01', { from: '03-15', to: '05-01' })).toBe(2026);
    expect(spanYearOf('2026-03-14', { from: '03-15', to: '05-01' })).toBeNull();
  });
  it('holds the same days whether asked by day or by share of the month', () => {
    const shares = sharesWithin(dayOfYear('12-17') ?? 0, dayOfYear('01-15') ?? 0);
    expect(shares[11]).toBeCloseTo(15 / 31, 12);
    expect(shares[0]).toBeCloseTo(15 / 31, 12);
    expect(shares.slice(1, 11).every((share) => share === 0)).toBe(true);
    const days = Array.from({ length: 31 }, (_, i) => `2027-12-${String(i + 1).padStart(2, '0')}`);
    expect(days.filter((day) => isInStretch(day, '12-17', '01-15'))).toHaveLength(15);
  });
});
