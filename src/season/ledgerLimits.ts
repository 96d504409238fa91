import { needOfZone } from '../need/needOfZone';
import { NUTRIENTS, type Nutrient, type Yard, type Zone } from '../yard/types';
import type { LedgerItem } from './ledgerSums';

/** What a year of a zone is held against, kg/m²; null: nothing is set. */
export interface LedgerLimits {
  readonly need: number | null;
  /** the least of the yard's cap and the rules that are on. */
  readonly cap: number | null;
}

const CAPS = { N: 'nPerYear', P2O5: 'p2o5PerYear', K2O: 'k2oPerYear' } as const;

/** Need (of nitrogen alone) and least cap of a calendar year for one zone. */
export function ledgerLimits(yard: Yard, zone: Zone, item: LedgerItem): LedgerLimits {
  const isNutrient = (NUTRIENTS as readonly string[]).includes(item);
  const own = isNutrient ? yard.caps[CAPS[item as Nutrient]] : null;
  const ruled = yard.rules.flatMap(({ isOn, terms }) => {
    if (!isOn || terms.kind !== 'cap' || terms.per !== 'year') return [];
    const ruledItem: LedgerItem = terms.isSolubleOnly && terms.nutrient === 'N' ? 'solubleN' : terms.nutrient;
    return ruledItem === item ? [terms.maxKgPerM2] : [];
  });
  const caps = own === null ? ruled : [own, ...ruled];
  return {
    need: item === 'N' ? (needOfZone(yard, zone)?.nKgPerM2 ?? null) : null,
    cap: caps.length === 0 ? null : Math.min(...caps),
  };
}

/** What is left to the lower of need and cap, kg/m², less than nought where it is passed; null where neither is set. */
export function leftOf(total: number, { need, cap }: LedgerLimits): number | null {
  const limits = [need, cap].flatMap((limit) => (limit === null ? [] : [limit]));
  return limits.length === 0 ? null : Math.min(...limits) - total;
}
