/*
 * What a label states. Amounts are SI (kg, L, m, m², s, °C); percentages are by weight.
 */

/** A quantity of product: litres or kilograms. */
export type Amount =
  | { readonly unit: 'L'; readonly value: number }
  | { readonly unit: 'kg'; readonly value: number };

/** In what form a product is sold. */
export const PRODUCT_FORMS = [
  'ready-to-use',
  'liquid-concentrate',
  'soluble-powder',
  'granular',
  'seed',
  'mulch',
  'topdressing',
  'soil-amendment',
] as const;
/** One form of product. */
export type ProductForm = (typeof PRODUCT_FORMS)[number];

/** The nutrients of a label, in its order; P and K by the oxide convention. */
export const NUTRIENTS = ['N', 'P2O5', 'K2O'] as const;
/** One nutrient of a label. */
export type Nutrient = (typeof NUTRIENTS)[number];

/** Secondary nutrients and micronutrients a label may guarantee, as elements; lime and gypsum state Ca and Mg so too. */
export const ELEMENTS = ['Ca', 'Mg', 'S', 'Fe', 'Mn', 'Zn', 'Cu', 'B', 'Mo', 'Cl', 'Na', 'Co', 'Ni'] as const;
/** One element of a label. */
export type LabelElement = (typeof ELEMENTS)[number];

/** The label rate, by the one basis the label uses. */
export type LabelRate =
  /** one pack (`packId`) covers `areaM2`. */
  | { readonly basis: 'area-per-container'; readonly areaM2: number; readonly packId: string }
  | { readonly basis: 'volume-per-area'; readonly rateLPerM2: number }
  | { readonly basis: 'mass-per-area'; readonly rateKgPerM2: number }
  | { readonly basis: 'nutrient-per-area'; readonly nutrient: Nutrient; readonly rateKgPerM2: number }
  /** seed by its pure live seed: rate / (purity · germination) is the seed as it lies in the bag. */
  | { readonly basis: 'pure-live-seed'; readonly rateKgPerM2: number }
  /** lime by its effective neutralising value: rate / (effective percent / 100) is the lime as it is sold. */
  | { readonly basis: 'effective-lime'; readonly rateKgPerM2: number }
  | { readonly basis: 'depth'; readonly depthM: number };
/** One basis of a label rate. */
export type RateBasis = LabelRate['basis'];

/** One size in which a product is sold. */
export interface Pack {
  readonly id: string;
  /** what one full pack holds. */
  readonly content: Amount;
  /** price of one pack in the yard's currency; null when not known. */
  readonly price: number | null;
}

/** Percent by weight, as on the label: N, then P2O5 and K2O (oxide convention). */
export interface Analysis {
  readonly nPct: number;
  readonly p2o5Pct: number;
  readonly k2oPct: number;
  /** share of the nitrogen that is slow-release, 0 to 100 % of N; null when the label is silent. */
  readonly slowNPctOfN: number | null;
  /** other guaranteed elements, percent by weight as elements; what is not named is not guaranteed. */
  readonly elementsPct: Readonly<Partial<Record<LabelElement, number>>>;
}

/** What a label names beside plant food: humic or fulvic acid, kelp, a wetting agent. Percent by weight. */
export interface Ingredient {
  readonly name: string;
  readonly pct: number;
}

/** What puts a product out. */
export const APPLICATORS = [
  'hose-end',
  'tank-sprayer',
  'broadcast-spreader',
  'drop-spreader',
  'by-hand',
] as const;
/** One way of putting a product out. */
export type Applicator = (typeof APPLICATORS)[number];

/** How one label lets its product be used: what differs from use to use. The first stands in `Product` itself. */
export interface ProductUse {
  readonly id: string;
  /** such as "Light rate"; empty: named by its applicator. */
  readonly name: string;
  /** null: not told. */
  readonly applicator: Applicator | null;
  readonly rate: LabelRate;
  /** water mixed in for each square metre, L/m²; null when none is mixed in (granules, ready-to-use). */
  readonly carrierLPerM2: number | null;
  /** true: the carrier figure is the whole spray liquid, product included; false: water added to the product. */
  readonly carrierIsTotal: boolean;
  /** how far beyond the aimed-at edge product lands, metres; 0 or more. */
  readonly spreadDistanceM: number;
  readonly waterIn: boolean;
  /** pack sizes this use can draw from; null: all. A hose-end bottle serves its own use alone unless the label lets it be poured. */
  readonly packIds: readonly string[] | null;
}

/** Purity and germination of seed, as its tag prints them, 0 to 100 %. */
export interface SeedTag {
  readonly purityPct: number;
  readonly germinationPct: number;
}

/** Limits printed on the label; null when the label is silent. Amounts are of product per m². */
export interface LabelLimits {
  readonly maxPerDose: Amount | null;
  readonly maxPerYear: Amount | null;
  readonly minIntervalDays: number | null;
  readonly maxDosesPerYear: number | null;
  readonly maxAirTempC: number | null;
}

/** A product by its label, and what of it is on the shelf. Its first use is told by its own members, more in `otherUses`. */
export interface Product extends Omit<ProductUse, 'id' | 'name'> {
  readonly id: string;
  readonly name: string;
  readonly form: ProductForm;
  readonly analysis: Analysis;
  readonly ingredients: readonly Ingredient[];
  /** kg per litre; needed where mass and volume must be turned into each other; null when not known. */
  readonly densityKgPerL: number | null;
  /** seed only; null when the tag is not at hand. */
  readonly seed: SeedTag | null;
  /** effective neutralising value of lime, percent of pure calcium carbonate (fineness counted in); null: no lime, or not told. */
  readonly limePct: number | null;
  /** salt index by weight, sodium nitrate being 100; null when not known. */
  readonly saltIndex: number | null;
  /** name of the first use; empty: named by its applicator. */
  readonly useName: string;
  /** further uses of the label, each with a rate of its own. */
  readonly otherUses: readonly ProductUse[];
  readonly packs: readonly Pack[];
  /** true: what is left in containers may be poured together and drawn on by any use. */
  readonly canPour: boolean;
  /** time without rain after it is down, s; null when the label is silent. */
  readonly rainfastS: number | null;
  /** how deep to water it in, m of water; null when the label is silent. */
  readonly waterInDepthM: number | null;
  /** how long a closed container keeps, days; null when not told. */
  readonly shelfLifeDays: number | null;
  /** how long an opened container keeps, days; null when not told. */
  readonly openedLifeDays: number | null;
  readonly stainsHardscape: boolean;
  readonly limits: LabelLimits;
  /** packs on hand (may be a fraction for an opened one), by pack id. */
  readonly onHand: Readonly<Record<string, number>>;
  readonly note: string;
}
