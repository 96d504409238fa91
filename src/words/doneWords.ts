import { productOfDose } from '../plan/applyUse';
import { doneRecord, laidDose } from '../plan/laidDose';
import { convertAmount } from '../plan/rate';
import type { LaidRates, VisitFigures } from '../plan/types';
import { usedAmount } from '../season/markDone';
import { formatAmount, formatPercent } from '../units/format';
import { formatDay } from '../units/formatDay';
import type { Amount, Product, UnitSystem } from '../yard/types';
import { laidRows } from './labelWords';
import { amountWords, doseName } from './productWords';

/** Why a day cannot be the one on which a visit was done; empty for today and any day before. @param day, today YYYY-MM-DD */
export function notYetWords(day: string, today: string): string {
  if (day <= today) return '';
  return `${formatDay(day, true)}, is not yet: mark the visit done on that day or after, or type the day it was done.`;
}

/** A dose of a done visit: what the plan wanted beside what was really used, and what each lays down. */
export interface DoneRow {
  readonly doseId: string;
  readonly name: string;
  /** amounts of product; empty where nothing of the plan is known. */
  readonly planned: string;
  readonly used: string;
  /** "80 % of the plan"; empty as planned, with nothing used, and where no density turns one into the other. */
  readonly share: string;
  /** "N 3.79", "K₂O 1.2 g/m²", one entry for each thing, the unit with the last: by what was used, and by the plan. */
  readonly laid: readonly string[];
  readonly laidByPlan: readonly string[];
}

/**
 * The doses of a done visit in the order of the visit, as they count in the ledger.
 * @param products of the shelf, for names and measures
 * @returns none where the visit is not done
 */
export function doneRows(
  figures: VisitFigures,
  products: readonly Product[],
  units: UnitSystem,
): readonly DoneRow[] {
  const { visit } = figures;
  if (visit.doneOn === null) return [];
  return visit.doses.map((dose): DoneRow => {
    const own = figures.doses.find((each) => each.dose.id === dose.id) ?? null;
    const record = dose.laid ?? (own && doneRecord(own));
    const label = productOfDose(products, dose);
    const show = (amount: Amount) =>
      label ? amountWords(label, amount, units) : formatAmount(amount, units);
    const used = usedAmount(dose, figures);
    const inPlanned = used && record && convertAmount(used, record.planned.unit, record.densityKgPerL);
    const share =
      record && record.planned.value > 0 && inPlanned ? inPlanned.value / record.planned.value : 1;
    return {
      doseId: dose.id,
      name: doseName(dose, products),
      planned: record ? show(record.planned) : '',
      used: used === null ? 'not on record' : used.value === 0 ? 'none' : show(used),
      share: used?.value === 0 || Math.abs(share - 1) < 5e-4 ? '' : `${formatPercent(share)} of the plan`,
      laid: ratesWords(figures.laid.find(({ doseId }) => doseId === dose.id)?.rates, units),
      laidByPlan: ratesWords(laidDose(visit, dose, own, false)?.rates, units),
    };
  });
}

/** "N 0.8", "K₂O 0.4 lb per 1,000 sq ft": the unit stands with the last. */
function ratesWords(rates: LaidRates | null | undefined, units: UnitSystem): readonly string[] {
  const rows = rates ? laidRows({ ...rates, ingredients: null }, units) : [];
  return rows.map(({ what, rate }, index) => {
    const isLast = index === rows.length - 1;
    return `${what} ${isLast ? rate : rate.slice(0, rate.indexOf('\u00a0'))}`;
  });
}
