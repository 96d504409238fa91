import { expect, it } from 'vitest';
import { elementalPct } from './elemental';

it('an analysis by elements leaves N as it is and turns P and K', () => {
  const elemental = elementalPct({ nPct: 8, p2o5Pct: 10, k2oPct: 2 });
  expect(elemental.nPct).toBe(8);
  // Virginia Tech SPES-201NP, table 1: 0.4365 and 0.8301
  expect(elemental.pPct).toBeCloseTo(4.365, 2);
  expect(elemental.kPct).toBeCloseTo(1.6602, 3);
});
