import type { Extractant, SoilLevel, SoilNutrient, SoilTest } from '../yard/types';

/** How a figure of a table came to this program. */
export const SOURCE_STATES = ['read', 'copy', 'from memory'] as const;
/** `read`: in the publication itself; `copy`: in another text that quotes it; `from memory`: recalled, not opened. */
export type SourceState = (typeof SOURCE_STATES)[number];

/** One level of one nutrient in a table, as the source has it. */
export interface Band {
  readonly level: SoilLevel;
  /** what the source calls it. */
  readonly word: string;
  /** upper bound in the table's unit; null: no end. */
  readonly upTo: number | null;
  /** whether the bound itself still belongs to the band; what is above belongs to the next. */
  readonly isUpToIncluded: boolean;
}

/** A published table that turns figures of one extractant into levels. */
export interface SoilTable {
  readonly id: string;
  readonly name: string;
  /** in a sentence: "Rutgers NJAES". */
  readonly shortName: string;
  /** publication, and what of it was used. */
  readonly source: string;
  /** year, month or day of the publication, as it states it; empty: not dated. */
  readonly date: string;
  readonly state: SourceState;
  readonly extractant: Extractant;
  readonly use: 'turf' | 'general';
  readonly unit: SoilTest['labUnit'];
  /** bands from least to most; a nutrient without bands is not told by the source. */
  readonly bands: Readonly<Partial<Record<SoilNutrient, readonly Band[]>>>;
  /** the level from which the source calls for no phosphorus; null: it names none (a floor alone). */
  readonly noPhosphorusFrom: SoilLevel | null;
  /** what the source says on phosphorus, in one sentence; empty: nothing. */
  readonly phosphorusWords: string;
}

/** What is made of one nutrient of a test. */
export interface NutrientReading {
  readonly nutrient: SoilNutrient;
  /** null: only the lab's word is known. */
  readonly mgPerKg: number | null;
  /** null: neither the lab nor a table says. */
  readonly level: SoilLevel | null;
  /** who says so: the lab, or the id of a table; null as above. */
  readonly by: 'lab' | string | null;
  /** one line: "P 92 ppm, very high (Rutgers NJAES)". */
  readonly words: string;
  /** the table's bands in mg/kg, for a scale; empty where no table has this nutrient. */
  readonly bandsMgPerKg: readonly Band[];
}

/** A test read whole. */
export interface SoilReading {
  readonly test: SoilTest;
  /** null: no table for the extractant. */
  readonly table: SoilTable | null;
  /** nutrients measured or rated, in the order of the list of nutrients. */
  readonly nutrients: readonly NutrientReading[];
  /** class of the pH in words; null when none was measured. */
  readonly phWords: string | null;
}

/** Whether phosphorus may go on a piece of ground. */
export interface PhosphorusGate {
  readonly verdict: 'allowed' | 'refused' | 'no-test';
  /** one part of a sentence: "P 92 ppm (very high by Rutgers NJAES, sampled 2026-03-10)". */
  readonly reason: string;
  /** sentences where the lab's word and the table speak against each other; null where they do not. */
  readonly disagreement: string | null;
  /** the test it goes by; null when there is none. */
  readonly test: SoilTest | null;
}
