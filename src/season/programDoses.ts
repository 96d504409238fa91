import { applyUse } from '../plan/applyUse';
import { largestDose } from '../plan/largestDose';
import { nutrientRates } from '../plan/nutrients';
import { productRate } from '../plan/rate';
import { formatNutrientRate } from '../units/format';
import { chosenZones } from '../yard/choose';
import type { Issue, Program, ProgramDose, Yard } from '../yard/types';
import type { NeedOnDay } from './programNeed';

/** How much of the label rate one dose of a program puts out on a day. */
export interface DoseShare {
  /** 0: nothing is wanted, the dose is left out. */
  readonly rateFactor: number;
  readonly issues: readonly Issue[];
}

/** Shares of the label are held to a thousandth, always down. */
const STEP = 1000;
/** N that is not worth a word, kg/m² (1 mg/m²): rounding of the months' sums. */
const TRIFLE = 1e-6;

/**
 * The share of the label rate of a dose on a day. By the label: as told. By need: the N that the ground wants of
 * this visit (the least, where its zones differ; see `needOnDay`) times `share`; at most `maxFactor`, the label's most for one dose and the yard's caps of one dose (N, soluble N, P2O5).
 * @param dates all days of the program, `date` among them
 * @returns issues, with the program and `path` `doses[i]`: `program-product-missing`, `program-rate`,
 * `program-no-nitrogen`, `program-no-ground`, `program-no-need`, `program-no-climate` (errors, factor 0);
 * `program-need-differs`, `program-need-capped`, `program-need-held`, `program-need-gap` (notes)
 */
export function doseShare(
  yard: Yard,
  program: Program,
  dose: ProgramDose,
  date: string,
  dates: readonly string[],
  needOf: NeedOnDay,
): DoseShare {
  const path = `doses[${program.doses.indexOf(dose)}]`;
  const place = { programId: program.id, productId: dose.productId, path };
  const issue = (code: string, severity: Issue['severity'], message: string): Issue => ({
    code,
    severity,
    message: `${program.name || 'A program without a name'}: ${message}`,
    place,
  });
  const none = (code: string, message: string): DoseShare => ({
    rateFactor: 0,
    issues: [issue(code, 'error', message)],
  });
  const label = yard.products.find((one) => one.id === dose.productId);
  const product = label ? applyUse(label, dose.useId) : null;
  if (product === null)
    return none('program-product-missing', 'a dose names a product or a use that is gone; choose another.');
  const { amount } = dose;
  if (amount.kind === 'label') return { rateFactor: amount.rateFactor, issues: [] };

  const { rate } = productRate(product);
  const laid = rate && nutrientRates(product, rate);
  if (!rate || !laid)
    return none(
      'program-rate',
      `${product.name} has no label rate in weight yet, so no need can set its amount.`,
    );
  if (!(laid.N > 0))
    return none(
      'program-no-nitrogen',
      `${product.name} carries no nitrogen, so the need cannot set its amount.`,
    );
  const zones = chosenZones(yard, dose.zones ?? program.zones);
  if (zones.length === 0) return none('program-no-ground', `no ground is chosen for ${product.name}.`);
  const wants: number[] = [];
  let [leftOver, skipped] = [0, 0];
  for (const zone of zones) {
    const want = needOf(zone, date, dates);
    if (want === 'no-need')
      return none(
        'program-no-need',
        `no need is set for ${zone.name || 'a zone without a name'}; set it under Need.`,
      );
    if (want === 'no-climate')
      return none(
        'program-no-climate',
        'the need is split by growth, which takes the monthly mean temperatures; set them under Need.',
      );
    wants.push(want.nKgPerM2);
    leftOver = Math.max(leftOver, want.leftOverKgPerM2);
    skipped = Math.max(skipped, want.skippedKgPerM2);
  }
  const issues: Issue[] = [];
  if (leftOver > TRIFLE)
    issues.push(
      issue(
        'program-need-held',
        'note',
        `nitrogen of ${formatNutrientRate(leftOver, yard.settings.units)} is wanted after the hold before the spring flush, where it has no visit. A visit after the hold brings it.`,
      ),
    );
  if (skipped > TRIFLE)
    issues.push(
      issue(
        'program-need-gap',
        'note',
        `the months between its visits that have none want nitrogen of ${formatNutrientRate(skipped, yard.settings.units)}, which this program does not bring. A visit in each month does.`,
      ),
    );
  const least = Math.min(...wants);
  if (Math.max(...wants) > least * (1 + 1e-6))
    issues.push(
      issue(
        'program-need-differs',
        'note',
        'its zones want different amounts of N; the least is used, so that none gets too much. A program for each makes both right.',
      ),
    );
  const wanted = (least * amount.share) / laid.N;
  const most = largestDose(product, yard.caps, amount.maxFactor)?.factor ?? 0;
  if (wanted > most * (1 + 1e-6))
    issues.push(
      issue(
        'program-need-capped',
        'note',
        `${product.name} is held below what the month wants, by the most of one dose. More visits bring the rest.`,
      ),
    );
  return { rateFactor: Math.floor(Math.min(wanted, most) * STEP + 1e-9) / STEP, issues };
}
