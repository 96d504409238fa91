import type { DoseHold } from '../plan/largestDose';
import type { Amount, Issue, LabelElement, Nutrient, NutrientCaps, Product } from '../yard/types';
import type { PackCount } from './types';

/** What each dose goes by: the rate of the label, or the most that the label allows at once. */
export const COMPARE_DOSES = ['label-rate', 'label-most'] as const;
/** One of the two. */
export type CompareDose = (typeof COMPARE_DOSES)[number];

/** What is compared, and for what. */
export interface CompareInput {
  /** labels; every use of each is looked at. */
  readonly products: readonly Product[];
  /** ground to feed, m²; more than 0. */
  readonly areaM2: number;
  /** nitrogen wanted over all visits, kg/m²; more than 0. */
  readonly nKgPerM2: number;
  readonly dose: CompareDose;
  readonly caps: NutrientCaps;
}

/** What holds a dose down. */
export type DoseBound = 'label-rate' | 'wanted' | Exclude<DoseHold, 'asked'>;

/** Bringing the wanted nitrogen by one use of one label. Rates by ground in kg/m², amounts in kg or L. */
export interface CompareOption {
  /** product and use in one word, for lists. */
  readonly key: string;
  readonly productId: string;
  readonly useId: string | null;
  /** as the use has it. */
  readonly product: Product;
  /** visits alike, each of `rateFactor` times the label rate. */
  readonly visits: number;
  readonly rateFactor: number;
  /** why a dose is not larger; `wanted`: one visit brings all. */
  readonly bound: DoseBound;
  /** days from first to last visit at the label's least interval; null where the label is silent. */
  readonly days: number | null;
  /** product of one visit over all ground, and of all visits. */
  readonly perVisit: Amount;
  readonly total: Amount;
  readonly solubleNPerVisit: number;
  /** salt of one visit as the sodium nitrate that would act alike; null: salt index not known. */
  readonly saltPerVisit: number | null;
  /** all visits together. */
  readonly nutrients: Readonly<Record<Nutrient, number>>;
  readonly elements: Readonly<Partial<Record<LabelElement, number>>>;
  /** packs for the whole amount: of least cost, or the fewest where no price is known; none where no pack fits. */
  readonly packs: readonly PackCount[];
  /** what those packs hold more than goes out, in the unit of `total`. */
  readonly left: number | null;
  /** of those packs; null where a price is not known. */
  readonly cost: number | null;
  /** cost of what goes out, at the price of those packs: for each kg of nitrogen, for each m². */
  readonly costPerKgN: number | null;
  readonly costPerM2: number | null;
  /** what speaks against it: yearly limits of the label, caps of the year. */
  readonly issues: readonly Issue[];
}

/** A use that cannot bring nitrogen, and why. */
export interface LeftOut {
  readonly key: string;
  readonly product: Product;
  readonly why: string;
}

export interface Comparison {
  readonly options: readonly CompareOption[];
  readonly leftOut: readonly LeftOut[];
}

/** Figures of which less is better. */
export const COMPARE_KEYS = [
  'cost',
  'costPerKgN',
  'visits',
  'days',
  'solubleNPerVisit',
  'saltPerVisit',
] as const;
/** One of them. */
export type CompareKey = (typeof COMPARE_KEYS)[number];
