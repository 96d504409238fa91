import { describe, expect, it } from 'vitest';
import { lbPer1000 } from '../plan/testDose';
import { doseAmounts } from '../season/ledgerAmounts';
import { ledgerSums } from '../season/ledgerSums';
import { doneDay, testDay, testFeed, testSeason } from '../season/testSeason';
import { KG_PER_LB, L_PER_FLOZ } from '../units/factors';
import { ledgerDosesCsv, ledgerMonthsCsv } from './writeLedgerCsv';

// 20 % N at 1 lb of N is 5 lb of product per 1,000 sq ft; 8 lb on both zones of 1,000 sq ft are 4
const used = { unit: 'kg', value: 8 * KG_PER_LB } as const;
const { entries, figures } = testSeason(
  [testFeed('feed', [20, 5, 10])],
  [doneDay(testDay('May', '2026-05-04', ['feed']), used), testDay('Some day', null, ['feed'])],
);
const amounts = doseAmounts(figures);

describe('the ledger as a table for spreadsheets', () => {
  it('has a line for each dose on each zone, with text that no spreadsheet runs', () => {
    const names = {
      zone: (id: string) => `${id}, 1`,
      visit: (id: string) => id,
      product: () => '=2+2',
      amounts: (id: string) => amounts.get(id),
    };
    const lines = ledgerDosesCsv(entries, ['N', 'solubleN'], names, 'us').split('\r\n');
    expect(lines[0]).toBe(
      '\uFEFFDay,State,Visit,Product,Zone,Ground treated (sq ft),Product in,Planned,Really used,"Planned per 1,000 sq ft","Really used per 1,000 sq ft","N (lb/1,000 sq ft)","Soluble N (lb/1,000 sq ft)"',
    );
    expect(lines[1]).toBe('2026-05-04,done,May,\'=2+2,"front, 1",1000.0,lb,5,4,5,4,0.8,0.8');
    expect(lines[3]).toBe(',planned,Some day,\'=2+2,"front, 1",1000.0,lb,5,,5,,1,1');
    expect(lines).toHaveLength(6);
  });
  it('tells liquids by volume, in the unit of the yard, and leaves empty what is not known', () => {
    const [entry] = entries;
    if (!entry) throw new Error('no entry');
    const lines = (units: 'us' | 'metric', value: number) => {
      const litres = { planned: { unit: 'L', value }, used: null } as const;
      const names = { zone: () => 'z', visit: () => 'v', product: () => 'p', amounts: () => litres };
      return ledgerDosesCsv([entry], ['N'], names, units).split('\r\n')[1];
    };
    // 4 fl oz per 1,000 sq ft, the fluid ounce of 29.5735 mL (NIST SP 811); 12 mL/m² are 1.2 L per 100 m²
    expect(lines('us', (4 * L_PER_FLOZ) / entry.areaM2)).toContain(',1000.0,fl oz,4,,4,,');
    expect(lines('metric', 0.012)).toContain(',92.90,L,1.11484,,1.2,,');
    const none = { zone: () => 'z', visit: () => 'v', product: () => 'p', amounts: () => undefined };
    expect(ledgerDosesCsv([entry], ['N'], none, 'us')).toContain(',1000.0,,,,,,0.8');
  });
  it('has the months of each ground by state', () => {
    const years = ledgerSums(entries, [{ zoneId: 'front', areaM2: 1 }], 2026);
    const grounds = years.map((year) => ['Front', year] as const);
    const lines = ledgerMonthsCsv(grounds, ['N', 'P2O5'], 2026, 'metric').split('\r\n');
    // 1 lb per 1,000 sq ft is 4.88243 g/m²; 0.8 and 0.2 lb were laid down
    expect(lines[1]).toBe('Front,N,done,g/m²,0,0,0,0,3.90594,0,0,0,0,0,0,0,3.90594');
    expect(lines[2]).toBe('Front,N,to come,g/m²,0,0,0,0,0,0,0,0,0,0,0,0,0');
    expect(lines[6]?.startsWith('Front,P2O5,total,g/m²,0,0,0,0,0.97649,')).toBe(true);
    expect(lbPer1000(1) * 1000).toBeCloseTo(4.88243, 5);
  });
});
