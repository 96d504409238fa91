import type { PassChoice } from './equipmentTypes';
import type { Amount, Analysis, Nutrient } from './productTypes';
import type { ZoneChoice } from './types';

/*
 * What a season is planned from: visits, soil tests, need, climate, programs, caps and rules.
 * SI: nutrients in kg per m² of ground (P2O5 and K2O by the oxide convention), days are YYYY-MM-DD,
 * days of any year MM-DD.
 */

/**
 * What a dose was laid down by, kept as it stood when its visit was marked done: later changes of the label, the
 * zones or the plan do not touch it. What was really used stands beside it, in `actual`.
 */
export interface DoneRecord {
  readonly productName: string;
  /** name of the use, of a label with several; else empty. */
  readonly useName: string;
  /** product in all, by the plan of that day. */
  readonly planned: Amount;
  readonly densityKgPerL: number | null;
  readonly analysis: Analysis;
  /** ground treated, m²; the amount is spread over it by area. */
  readonly zones: readonly { readonly zoneId: string; readonly name: string; readonly areaM2: number }[];
}

/** One product put out at a visit. */
export interface VisitDose {
  readonly id: string;
  readonly productId: string;
  /** which use of the label, an id in `otherUses`; null: the first. */
  readonly useId: string | null;
  /** multiplies the label rate; 1 is the label rate; more than 0. */
  readonly rateFactor: number;
  /** null: the visit's zones; else a choice of its own. */
  readonly zones: ZoneChoice | null;
  /** how its passes are laid on the ground. */
  readonly passes: PassChoice;
  /** product really used, once it is done; null: as planned. */
  readonly actual: Amount | null;
  /** packs taken off the shelf when it was marked done (fractions of opened ones too), by pack id; null: none were. */
  readonly taken: Readonly<Record<string, number>> | null;
  /** kept since the visit was marked done; null: still planned, or done without a record (it counts by today's plan). */
  readonly laid: DoneRecord | null;
}

/** One working day: what goes out, and where. */
export interface Visit {
  readonly id: string;
  readonly name: string;
  /** YYYY-MM-DD, or null when not yet set. */
  readonly date: string | null;
  readonly zones: ZoneChoice;
  /** in the order they go out. */
  readonly doses: readonly VisitDose[];
  /** what the sprayer's tank holds, litres; null: no tank. */
  readonly tankL: number | null;
  /** marks (a gate, a hose bib) where the walk begins and where it ends; null: wherever it is shortest. */
  readonly startMarkId: string | null;
  readonly endMarkId: string | null;
  readonly note: string;
  /** YYYY-MM-DD on which it was done; null: still planned. */
  readonly doneOn: string | null;
  /**
   * the program it came from, and the day that program set for it; null: made by hand. `asMade` is the mark
   * of what the program put in it: where the visit no longer has that mark, it was edited by hand.
   */
  readonly program: { readonly id: string; readonly date: string; readonly asMade?: string } | null;
}

/** How the laboratory drew plant food out of the soil: figures of one do not carry over to another. */
export const EXTRACTANTS = ['mehlich-3', 'mehlich-1', 'bray-1', 'olsen', 'morgan', 'other'] as const;
/** One extractant. */
export type Extractant = (typeof EXTRACTANTS)[number];

/** What a soil test may state, as elements. */
export const SOIL_NUTRIENTS = ['P', 'K', 'Ca', 'Mg', 'S', 'Fe', 'Mn', 'Zn', 'Cu', 'B', 'Na'] as const;
/** One nutrient of a soil test. */
export type SoilNutrient = (typeof SOIL_NUTRIENTS)[number];

/** How much of a nutrient a soil holds, from least to most; `high` is enough, `very-high` more than enough. */
export const SOIL_LEVELS = ['very-low', 'low', 'medium', 'high', 'very-high'] as const;
/** One level. */
export type SoilLevel = (typeof SOIL_LEVELS)[number];

/** A soil test of a group of zones, as the laboratory reports it. */
export interface SoilTest {
  readonly id: string;
  readonly name: string;
  readonly zones: ZoneChoice;
  /** day of sampling. */
  readonly date: string | null;
  readonly lab: string;
  readonly extractant: Extractant;
  /** the unit figures were typed in and are shown in. */
  readonly labUnit: 'ppm' | 'lb-per-acre';
  /** mg of the element per kg of soil (ppm); what is not named was not measured. */
  readonly mgPerKg: Readonly<Partial<Record<SoilNutrient, number>>>;
  readonly ph: number | null;
  readonly bufferPh: number | null;
  readonly organicMatterPct: number | null;
  /** cation exchange capacity, cmol of charge per kg (the same as meq/100 g). */
  readonly cecCmolPerKg: number | null;
  /** depth of the sample, m. */
  readonly depthM: number;
  /** id of the table the figures are read by; empty: the usual one for the extractant. */
  readonly tableId: string;
  /** the lab's own rating, which goes before the table's. */
  readonly labLevels: Readonly<Partial<Record<SoilNutrient, SoilLevel>>>;
  /** lime the lab recommends, kg/m² of pure effective calcium carbonate; null: none stated. Never worked out here. */
  readonly limeKgPerM2: number | null;
  /** elemental sulfur the lab recommends, kg/m²; null: none stated. */
  readonly sulfurKgPerM2: number | null;
  /** the lab's advice in its own words. */
  readonly labAdvice: string;
  readonly note: string;
}

/** Two ways of life of turf grasses: they grow at different temperatures. */
export const GRASS_SEASONS = ['cool-season', 'warm-season'] as const;
/** One of the two. */
export type GrassSeason = (typeof GRASS_SEASONS)[number];

/** How a year's nitrogen is shared out over its months. */
export type NitrogenSplit =
  /** alike over the months from `fromMonth` to `toMonth` (1 to 12; may run over the new year). */
  | { readonly kind: 'even'; readonly fromMonth: number; readonly toMonth: number }
  /** by the growth potential of the yard's monthly mean temperatures. */
  | { readonly kind: 'growth' }
  /** twelve shares as typed, January first; they are scaled to sum to one. */
  | { readonly kind: 'typed'; readonly shares: readonly number[] };

/** Holds nitrogen back before the spring flush of growth. */
export interface FlushHold {
  /** MM-DD, first and last day of the stretch. */
  readonly from: string;
  readonly to: string;
  /** most N over the whole stretch, kg/m². */
  readonly maxNKgPerM2: number;
}

/** What a group of zones wants over a year. */
export interface NutrientNeed {
  readonly id: string;
  readonly name: string;
  readonly zones: ZoneChoice;
  /** id of a species of `need/species.ts`; empty: not told. */
  readonly speciesId: string;
  readonly season: GrassSeason;
  /** id of the published range it was taken from; empty: typed by the person. */
  readonly guideId: string;
  readonly nKgPerM2: number;
  readonly split: NitrogenSplit;
  readonly hold: FlushHold | null;
}

/** Monthly mean air temperatures, January first, °C; null: not known. */
export interface Climate {
  readonly monthlyMeanC: readonly number[] | null;
  /** where they are from, in words. */
  readonly source: string;
}

/** A product of a program. */
export interface ProgramDose {
  readonly id: string;
  readonly productId: string;
  readonly useId: string | null;
  /** by the label times a factor, or as much as the need of the month asks of each visit, up to `maxFactor` of the label. */
  readonly amount:
    | { readonly kind: 'label'; readonly rateFactor: number }
    | { readonly kind: 'need'; readonly share: number; readonly maxFactor: number };
  /** null: the program's zones. */
  readonly zones: ZoneChoice | null;
}

/** When the visits of a program fall. */
export type ProgramPace =
  | { readonly kind: 'every'; readonly days: number }
  /** paired: `offsetDays` after every `nth` visit of another program (0: on the same day, as one visit). */
  | { readonly kind: 'with'; readonly programId: string; readonly nth: number; readonly offsetDays: number };

/** A rule that makes visits between two days. */
export interface Program {
  readonly id: string;
  readonly name: string;
  /** YYYY-MM-DD, first day and last possible day. */
  readonly from: string;
  readonly to: string;
  readonly pace: ProgramPace;
  readonly zones: ZoneChoice;
  readonly doses: readonly ProgramDose[];
  readonly tankL: number | null;
  /** days its rule asks for whose visit was removed by hand: it stays away until the visits are made anew. */
  readonly skips?: readonly string[];
}

/** Most that a zone should get, kg/m²; null: no cap. The label and local rules go first. */
export interface NutrientCaps {
  readonly totalNPerDose: number | null;
  readonly solubleNPerDose: number | null;
  readonly p2o5PerDose: number | null;
  readonly nPerYear: number | null;
  readonly p2o5PerYear: number | null;
  readonly k2oPerYear: number | null;
}

/** What a rule of a place says, as the person read it in the local code. */
export type RuleTerms =
  /** no phosphorus but by an exception. */
  | {
      readonly kind: 'no-phosphorus';
      readonly unlessSoilTest: boolean;
      /** a soil test counts for so many years; null: for ever. */
      readonly testYears: number | null;
      readonly unlessNewLawn: boolean;
    }
  /** none of the nutrients from one day of the year (MM-DD) to another, both included; may run over the new year. */
  | {
      readonly kind: 'blackout';
      readonly from: string;
      readonly to: string;
      readonly nutrients: readonly Nutrient[];
    }
  /** ground left alone round water, drains or wells, m. */
  | { readonly kind: 'buffer'; readonly round: 'water' | 'storm-drain' | 'well'; readonly widthM: number }
  /** most of a nutrient at once or in a calendar year, kg/m². */
  | {
      readonly kind: 'cap';
      readonly nutrient: Nutrient;
      readonly per: 'dose' | 'year';
      readonly isSolubleOnly: boolean;
      readonly maxKgPerM2: number;
    }
  /** least slow-release share of the nitrogen of a product, percent. */
  | { readonly kind: 'slow-share'; readonly minPct: number };

/** A rule of the place, filled in by the person: nothing here is claimed to be law. */
export interface LocalRule {
  readonly id: string;
  readonly name: string;
  readonly isOn: boolean;
  readonly terms: RuleTerms;
  /** where it was read, and when. */
  readonly source: string;
  readonly readOn: string | null;
}

/** A refusal that a person set aside, and why; kept as a log. It holds no further than what it was given for. */
export interface Override {
  readonly id: string;
  /** day of the decision. */
  readonly on: string;
  /** code of the issue set aside. */
  readonly code: string;
  readonly visitId: string;
  readonly doseId: string;
  readonly productId: string;
  readonly reason: string;
  /** zones that were refused then; empty: not told, so it holds for none. */
  readonly zoneIds: readonly string[];
  /** use of the label, as in the dose. */
  readonly useId: string | null;
  /** multiple of the label rate; it holds for no more. */
  readonly rateFactor: number;
  /** soil tests that refused, and the phosphorus they had then (null: the lab's word alone). */
  readonly soilTests: readonly { readonly id: string; readonly pMgPerKg: number | null }[];
}
