import { describe, expect, it } from 'vitest';
import { lbPer1000 } from '../plan/testDose';
import { ledgerSums } from '../season/ledgerSums';
import { doneDay, testDay, testFeed, testSeason } from '../season/testSeason';
import { ledgerDosesCsv, ledgerMonthsCsv } from './writeLedgerCsv';

const { entries } = testSeason(
  [testFeed('feed', [20, 5, 10])],
  [doneDay(testDay('May', '2026-05-04', ['feed'])), testDay('Some day', null, ['feed'])],
);

describe('the ledger as a table for spreadsheets', () => {
  it('has a line for each dose on each zone, with text that no spreadsheet runs', () => {
    const names = { zone: (id: string) => `${id}, 1`, visit: (id: string) => id, product: () => '=2+2' };
    const lines = ledgerDosesCsv(entries, ['N', 'solubleN'], names, 'us').split('\r\n');
    expect(lines[0]).toBe(
      '\uFEFFDay,State,Visit,Product,Zone,Ground treated (sq ft),"N (lb/1,000 sq ft)","Soluble N (lb/1,000 sq ft)"',
    );
    expect(lines[1]).toBe('2026-05-04,done,May,\'=2+2,"front, 1",1000.0,1,1');
    expect(lines[3]).toBe(',planned,Some day,\'=2+2,"front, 1",1000.0,1,1');
    expect(lines).toHaveLength(6);
  });
  it('has the months of each ground by state', () => {
    const years = ledgerSums(entries, [{ zoneId: 'front', areaM2: 1 }], 2026);
    const grounds = years.map((year) => ['Front', year] as const);
    const lines = ledgerMonthsCsv(grounds, ['N', 'P2O5'], 2026, 'metric').split('\r\n');
    // 1 lb per 1,000 sq ft is 4.88243 g/m²
    expect(lines[1]).toBe('Front,N,done,g/m²,0,0,0,0,4.88243,0,0,0,0,0,0,0,4.88243');
    expect(lines[2]).toBe('Front,N,to come,g/m²,0,0,0,0,0,0,0,0,0,0,0,0,0');
    expect(lines[6]?.startsWith('Front,P2O5,total,g/m²,0,0,0,0,1.22061,')).toBe(true);
    expect(lbPer1000(1) * 1000).toBeCloseTo(4.88243, 5);
  });
});
