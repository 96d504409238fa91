import { K_PER_K2O, P_PER_P2O5 } from '../units/factors';
import type { Analysis, Nutrient } from '../yard/types';

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

/** The way back: what a label prints (oxide convention) for percents of the bare elements. */
export function oxidePct(elemental: ElementalPct): Pick<Analysis, 'nPct' | 'p2o5Pct' | 'k2oPct'> {
  const { nPct, pPct, kPct } = elemental;
  return { nPct, p2o5Pct: pPct / P_PER_P2O5, k2oPct: kPct / K_PER_K2O };
}

/** Amounts of N, P and K as elements, in the unit of the amounts given (kg or kg/m²). */
export function elementalAmounts(
  amounts: Readonly<Record<Nutrient, number>>,
): Readonly<Record<'N' | 'P' | 'K', number>> {
  return { N: amounts.N, P: amounts.P2O5 * P_PER_P2O5, K: amounts.K2O * K_PER_K2O };
}
