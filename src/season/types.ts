import type { Issue, LabelElement, Nutrient } from '../yard/types';

/** One dose laid on one zone: what the ledger is summed from. */
export interface LedgerEntry {
  readonly visitId: string;
  readonly doseId: string;
  readonly productId: string;
  /** name of product and zone: as recorded where it is done, so that they are told when either is gone. */
  readonly productName: string;
  readonly zoneId: string;
  readonly zoneName: string;
  /** the day it was done, else the day it is planned for; YYYY-MM-DD; null: no day yet. */
  readonly date: string | null;
  readonly isDone: boolean;
  /** ground treated, m². */
  readonly areaM2: number;
  /** kg per m² of that ground. */
  readonly nutrientKgPerM2: Readonly<Record<Nutrient, number>>;
  readonly solubleNKgPerM2: number;
  readonly elementKgPerM2: Readonly<Partial<Record<LabelElement, number>>>;
  /** true where the label does not say how much of its nitrogen is slow-release: all counts as soluble. */
  readonly isSilentOnSlow: boolean;
}

/** The whole season as planned and done. */
export interface SeasonFigures {
  readonly entries: readonly LedgerEntry[];
  /** what speaks against visits as a whole: caps of the year, rules, holds; the place names visit and, where one is at fault, dose. */
  readonly issues: readonly Issue[];
}
