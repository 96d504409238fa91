import { describe, expect, it } from 'vitest';
import type { LedgerEntry } from '../../season/types';
import { chartYears } from './chartYears';

const on = (date: string | null, zoneId = 'a', N = 0.001): LedgerEntry => ({
  visitId: 'v',
  doseId: 'd',
  productId: 'p',
  productName: 'Feed',
  zoneId,
  zoneName: 'Lawn',
  date,
  isDone: false,
  areaM2: 1,
  nutrientKgPerM2: { N, P2O5: 0, K2O: 0 },
  solubleNKgPerM2: N,
  elementKgPerM2: {},
  isSilentOnSlow: false,
});
const of = (...entries: LedgerEntry[]) => chartYears(entries, new Set(['a']), '2026-06-01', 2026);

describe('chartYears', () => {
  it('is this year where nothing is put down', () => expect(of()).toEqual({ years: [2026], first: 2026 }));
  it('offers the year that the season is planned for, and begins with it where nothing is put down', () => {
    const late = (...entries: LedgerEntry[]) => chartYears(entries, new Set(['a']), '2026-11-25', 2027);
    expect(late()).toEqual({ years: [2026, 2027], first: 2027 });
    expect(late(on('2026-05-01'))).toEqual({ years: [2026, 2027], first: 2026 });
    expect(late(on('2025-05-01'))).toEqual({ years: [2025, 2026, 2027], first: 2025 });
  });
  it('begins with this year where it has something', () =>
    expect(of(on('2025-05-01'), on('2026-05-01'), on('2027-05-01'))).toEqual({
      years: [2025, 2026, 2027],
      first: 2026,
    }));
  it('else with the next, else with the last', () => {
    expect(of(on('2027-05-01'), on('2025-05-01')).first).toBe(2027);
    expect(of(on('2024-05-01'), on('2025-05-01')).first).toBe(2025);
  });
  it('leaves out other ground, visits without a day and doses without nitrogen', () =>
    expect(of(on('2027-05-01', 'b'), on(null), on('2025-05-01', 'a', 0))).toEqual({
      years: [2026],
      first: 2026,
    }));
});
