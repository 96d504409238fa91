import type { VisitFigures } from '../plan/types';
import type { Yard } from '../yard/types';
import { ledgerEntries } from './ledgerEntries';
import type { SeasonFigures } from './types';

/** The ledger of the yard, and what speaks against it. @param visits figures of every visit of the yard */
export function seasonFigures(_yard: Yard, visits: readonly VisitFigures[]): SeasonFigures {
  return { entries: ledgerEntries(visits), issues: [] };
}
