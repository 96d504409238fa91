import { describe, expect, it } from 'vitest';
import { elementalAmounts, elementalPct, oxidePct } from './elemental';

describe('elements and oxides', () => {
  it('leave N as it is and turn P and K both ways', () => {
    const oxide = { nPct: 8, p2o5Pct: 10, k2oPct: 2 };
    const elemental = elementalPct(oxide);
    expect(elemental.nPct).toBe(8);
    // Virginia Tech SPES-201NP, table 1: 0.4365 and 0.8301
    expect(elemental.pPct).toBeCloseTo(4.365, 2);
    expect(elemental.kPct).toBeCloseTo(1.6602, 3);
    const back = oxidePct(elemental);
    expect(back.p2o5Pct).toBeCloseTo(10, 12);
    expect(back.k2oPct).toBeCloseTo(2, 12);
    const amounts = elementalAmounts({ N: 1, P2O5: 10, K2O: 2 });
    expect(amounts.N).toBe(1);
    expect(amounts.P).toBeCloseTo(elemental.pPct, 12);
    expect(amounts.K).toBeCloseTo(elemental.kPct, 12);
  });
});
