import type { DoseFigures, VisitFigures } from '../plan/types';
import { formatArea, formatVolume } from '../units/format';
import type { Issue, UnitSystem } from '../yard/types';
import { rainfastWords, waterInWords } from './labelWords';
import { amountRateWords, amountWords, productName, useTitle } from './productWords';

/**
 * What a calendar of the person's own tells of a visit, a line each: done or planned, every dose with its use, rate and water,
 * what speaks against it, and the note.
 * @param issues what speaks against the visit as a whole and its doses
 */
export function eventWords(
  { visit, doses }: VisitFigures,
  issues: readonly Issue[],
  units: UnitSystem,
): readonly string[] {
  const isDone = visit.doneOn !== null;
  const faults = issues
    .filter((issue) => issue.severity !== 'note')
    .toSorted((a, b) => Number(b.severity === 'error') - Number(a.severity === 'error'))
    .map((issue) => `${issue.severity === 'error' ? 'Not right' : 'Check'}: ${issue.message}`);
  const note = visit.note.trim();
  return [
    isDone ? 'Done.' : 'Planned.',
    ...doses.map((dose) => doseLine(dose, isDone, units)),
    ...new Set(faults),
    ...(note ? [note] : []),
    'The label comes first.',
  ];
}

/** "Light liquid: 6 fl oz on 1,500 sq ft, 4 fl oz per 1,000 sq ft, tank sprayer, 3 gal of water to mix in; water in". */
function doseLine(
  { dose, product, rate, amount, areaM2, carrierL }: DoseFigures,
  isDone: boolean,
  units: UnitSystem,
): string {
  const real = isDone ? dose.actual : null;
  const used = real ?? amount;
  const perM2 = real && areaM2 > 0 ? { unit: real.unit, value: real.value / areaM2 } : rate.perM2;
  const parts = [
    `${amountWords(product, used, units)} on ${formatArea(areaM2, units)}`,
    amountRateWords(product, perM2, units),
    ...(product.useName.trim() || product.applicator !== null ? [useTitle(product)] : []),
    ...(carrierL === null ? [] : [`${formatVolume(carrierL, units)} of water to mix in`]),
  ];
  const after = isDone
    ? []
    : [waterInWords(product, units), rainfastWords(product)].filter((words) => words !== '');
  return `${productName(product)}: ${[parts.join(', '), ...after].join('; ')}`;
}
