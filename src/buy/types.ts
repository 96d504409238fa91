import type { Amount, Issue, Nutrient } from '../yard/types';

/** Which visits are bought for. Days are YYYY-MM-DD, both ends included. */
export interface BuySpan {
  /** null: from the first visit. */
  readonly from: string | null;
  /** null: to the last visit. */
  readonly to: string | null;
  /** true: visits without a day count too, as the last. */
  readonly withUndated: boolean;
  /** one visit alone, whatever its day; null: all of the span. */
  readonly visitId: string | null;
}

/** What one dose takes of a product. */
export interface NeedLine {
  readonly visitId: string;
  readonly doseId: string;
  readonly useId: string | null;
  readonly date: string | null;
  /** in the unit of the need, L or kg; more than 0. */
  readonly amount: number;
  readonly areaM2: number;
  /** one standard deviation of the area, m². */
  readonly areaSigmaM2: number;
}

/** All that a span takes of one product, in the order of the visits. */
export interface ProductNeed {
  readonly productId: string;
  readonly unit: Amount['unit'];
  readonly lines: readonly NeedLine[];
  /** doses measured in the other unit, which without a density cannot be added: nothing is bought for them. */
  readonly unreadDoseIds: readonly string[];
}

/** What a purchase is the best in. */
export const BUY_GOALS = ['cost', 'packs', 'left'] as const;
/** Least cost, fewest packs or least left over. */
export type BuyGoal = (typeof BUY_GOALS)[number];

/** Packs of one size. */
export interface PackCount {
  readonly packId: string;
  readonly count: number;
}

/** Packs to have at hand by the day on which the first of them is opened: what does not keep is bought later. */
export interface PurchaseOrder {
  /** day of the first visit at which one of them is opened; null where visits have no days. */
  readonly by: string | null;
  readonly packs: readonly PackCount[];
}

/** A container drawn on at a visit. */
export interface Draw {
  readonly packId: string;
  readonly from: 'bought' | 'shelf';
  /** true: opened at this visit; false: it was open before. */
  readonly isOpened: boolean;
  /** product taken, L or kg. */
  readonly taken: number;
  /** share of a full pack left in it after the visit, 0 to 1. */
  readonly levelAfter: number;
}

/** What is drawn on for the uses that share packs, at one visit. */
export interface VisitOpening {
  readonly visitId: string;
  readonly date: string | null;
  readonly draws: readonly Draw[];
}

/** A container with product in it after the last visit. */
export interface CarriedPack {
  readonly packId: string;
  readonly from: 'bought' | 'shelf';
  readonly isOpen: boolean;
  /** share of a full pack, more than 0 to 1. */
  readonly level: number;
  /** last day on which it is good; null where the label is silent on that of opened or closed ones, or visits have no days. */
  readonly goodUntil: string | null;
}

/** One way to buy what a span needs of a product. Amounts in the need's unit, L or kg. */
export interface PurchasePlan {
  readonly goal: BuyGoal;
  /** in the label's order, those with a count alone. */
  readonly packs: readonly PackCount[];
  /** null when a pack in it has no price. */
  readonly cost: number | null;
  readonly packCount: number;
  readonly bought: number;
  /** bought and on the shelf, less what goes out. */
  readonly left: number;
  /** part of `left` that spoils in opened containers before the last visit. */
  readonly spoiled: number;
  readonly orders: readonly PurchaseOrder[];
  readonly openings: readonly VisitOpening[];
  readonly carried: readonly CarriedPack[];
  /** false: the search was cut short; better may exist. */
  readonly isProven: boolean;
  /** visits looked at, once for each way of sharing the shelf that was tried on them. */
  readonly effort: number;
}

/** What visits still to do before a span take of a product, in the need's unit, L or kg. */
export interface SpokenFor {
  /** from packs on the shelf that the span could draw on too. */
  readonly amount: number;
  /** what the shelf lacks for them. */
  readonly short: number;
  /** the day they come before, YYYY-MM-DD; null: they come before visits without a day. */
  readonly before: string | null;
}

/** The purchase of one product. */
export interface ProductPurchase {
  readonly need: ProductNeed;
  /** sum of the need, L or kg. */
  readonly needed: number;
  /** on the shelf, in packs that a use of the span can draw on, L or kg. */
  readonly onShelf: number;
  /** null: no such plan (no price, no pack that fits). */
  readonly plans: Readonly<Record<BuyGoal, PurchasePlan | null>>;
  readonly issues: readonly Issue[];
}

/** What product costs by its pack, in the yard's currency; null where a figure is not known. */
export interface UnitCosts {
  /** for each L or kg of product. */
  readonly perUnit: number;
  /** for each kg of a nutrient in it; null when it has none or the density is not known. */
  readonly perKg: Readonly<Record<Nutrient, number | null>>;
}
