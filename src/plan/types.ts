import type {
  Amount,
  DoneRecord,
  Issue,
  LabelElement,
  Nutrient,
  Product,
  Visit,
  VisitDose,
} from '../yard/types';

/** What the planner needs to know of a zone: plain numbers, no geometry. */
export interface TreatableZone {
  readonly zoneId: string;
  readonly name: string;
  /** net area less no-apply strips, m². */
  readonly areaM2: number;
  /** taken off as no-apply strip, m². */
  readonly stripM2: number;
  /** false: known by its size alone, nowhere on the map. */
  readonly isPlaced?: boolean;
}

/** Product rate in both readings; null where the density is needed and not known. */
export interface ProductRate {
  /** the rate in the unit the product is poured or weighed in, per m². */
  readonly perM2: Amount;
  readonly kgPerM2: number | null;
  readonly lPerM2: number | null;
}

/** Packs of one size for one dose. */
export interface ContainerCount {
  readonly packId: string;
  readonly packContent: Amount;
  /** packs opened, whole number. */
  readonly open: number;
  /** share of the last opened pack that stays in it, 0 to <1. */
  readonly lastLeft: number;
  /** exact packs used, e.g. 1.5625. */
  readonly exact: number;
  /** the count at area - 2 sigma and at area + 2 sigma. */
  readonly openLow: number;
  readonly openHigh: number;
  /** relative change of area (signed, e.g. 0.02 for 2 % larger) at which the count next changes, inside ±2 sigma; null when it does not, or only where no ground is left. */
  readonly changesAt: number | null;
}

/** How a dose is split into tank loads. */
export interface TankLoads {
  readonly tankL: number;
  /** litres of finished spray in all. */
  readonly totalL: number;
  readonly fullLoads: number;
  /** mix of a full load and of the last partial one (null when none is left over); product, water L, and area each covers m². */
  readonly full: TankMix | null;
  readonly last: TankMix | null;
}
/** What goes into one load and the ground it covers: product in kg or L, water and finished spray in L, ground in m². */
export interface TankMix {
  readonly product: Amount;
  readonly waterL: number;
  readonly totalL: number;
  readonly areaM2: number;
}

/** One zone of a dose: ground treated and ground spared, m², and the product it takes, kg or L. */
export interface DoseZone {
  readonly zoneId: string;
  readonly name: string;
  readonly areaM2: number;
  readonly stripM2: number;
  readonly amount: Amount;
  /** false: known by its size alone, nowhere on the map. */
  readonly isPlaced?: boolean;
}

/** An ingredient beside plant food, as one dose lays it down. */
export interface IngredientRate {
  readonly name: string;
  readonly kgPerM2: number;
}

/** All figures of one dose; areas in m², one standard deviation where `Sigma` is in the name, amounts in kg or L. */
export interface DoseFigures {
  readonly dose: VisitDose;
  /** as the dose's use of the label has it (see `applyUse`). */
  readonly product: Product;
  readonly rate: ProductRate;
  readonly zones: readonly DoseZone[];
  readonly areaM2: number;
  readonly areaSigmaM2: number;
  readonly stripM2: number;
  readonly amount: Amount;
  /** one row for each pack size that the dose's use can open. */
  readonly containers: readonly ContainerCount[];
  /** water to mix in, L; null when no carrier. */
  readonly carrierL: number | null;
  readonly tank: TankLoads | null;
  /** kg of nutrient per m² laid down by this dose; null when the density needed is missing. */
  readonly nutrientKgPerM2: Readonly<Record<Nutrient, number>> | null;
  /** of the N, what is not slow-release; all of it where the label is silent; null as above. */
  readonly solubleNKgPerM2: number | null;
  /** other guaranteed elements laid down, kg per m²; null as above. */
  readonly elementKgPerM2: Readonly<Partial<Record<LabelElement, number>>> | null;
  /** humic acid and the like laid down, in the label's order; null as above. */
  readonly ingredients: readonly IngredientRate[] | null;
  /** salt of the dose as the sodium nitrate that would act alike, kg per m²; null when not known (see `saltLoad`). */
  readonly saltKgPerM2: number | null;
  readonly issues: readonly Issue[];
}

/** Nutrients that a dose lays down, kg per m² of its ground. */
export interface LaidRates {
  readonly nutrientKgPerM2: Readonly<Record<Nutrient, number>>;
  /** of the N, what is not slow-release. */
  readonly solubleNKgPerM2: number;
  readonly elementKgPerM2: Readonly<Partial<Record<LabelElement, number>>>;
}

/** A dose as it counts: by its record and what was really used once it is done, else by the plan (see `laidDose`). */
export interface LaidDose {
  readonly doseId: string;
  readonly productId: string;
  readonly productName: string;
  /** ground that it lies on, m²; zones without any are left out. */
  readonly zones: DoneRecord['zones'];
  /** product per m² in both measures; null where the density is needed and not known. */
  readonly kgPerM2: number | null;
  readonly lPerM2: number | null;
  /** null as above. */
  readonly rates: LaidRates | null;
  /** true where the label does not say how much of its nitrogen is slow-release. */
  readonly isSilentOnSlow: boolean;
  /** true for a real amount in the other measure that no density turns round: there it counts as planned. */
  readonly isUseUnread: boolean;
}

/** What is laid down on one zone, kg per m²; `isSilentOnSlow`: some label with nitrogen does not tell its slow share. */
export interface ZoneNutrients extends Readonly<Record<Nutrient, number>> {
  readonly solubleN: number;
  readonly isSilentOnSlow: boolean;
}

/** All figures of a visit; doses that cannot be planned are left out and told in `issues`. */
export interface VisitFigures {
  readonly visit: Visit;
  /** as planned from today's labels and ground. */
  readonly doses: readonly DoseFigures[];
  /** as they count, in the order of the visit; what is done counts by its record. */
  readonly laid: readonly LaidDose[];
  /** sum of `laid` by zone. */
  readonly nutrientByZone: ReadonlyMap<string, ZoneNutrients>;
  readonly issues: readonly Issue[];
}
