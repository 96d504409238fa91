import { K_PER_K2O, P_PER_P2O5 } from '../units/factors';
import type { Analysis } from '../yard/types';

/** Percent by weight of the bare elements. */
export interface ElementalPct {
  readonly nPct: number;
  readonly pPct: number;
  readonly kPct: number;
}

/**
 * An analysis by bare elements instead of oxides: P is 0.4364 of P2O5, K is 0.8301 of K2O (from atomic
 * weights; Virginia Tech SPES-201NP, table 1). N is the same in both.
 */
export function elementalPct(analysis: Pick<Analysis, 'nPct' | 'p2o5Pct' | 'k2oPct'>): ElementalPct {
  const { nPct, p2o5Pct, k2oPct } = analysis;
  return { nPct, pPct: p2o5Pct * P_PER_P2O5, kPct: k2oPct * K_PER_K2O };
}
