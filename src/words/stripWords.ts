import type { NoApplyStrip } from '../cover/types';
import type { StripSaving } from '../plan/stripSavings';
import { formatArea } from '../units/format';
import { stripRule } from '../yard/stripWidths';
import type { UnitSystem, Yard } from '../yard/types';
import { amountWords, dosedName } from './productWords';

/** "by the rule “Lake strip”" or "by the yard’s settings": what set the width of a strip. */
export function stripWidthWords(
  yard: Pick<Yard, 'settings' | 'rules'>,
  { sourceKind }: Pick<NoApplyStrip, 'sourceKind'>,
): string {
  const rule = stripRule(yard, sourceKind);
  if (!rule) return 'by the yard’s settings';
  const name = rule.name.trim();
  return name === '' ? 'by a rule of the place' : `by the rule “${name}”`;
}

/** "78.5 sq ft left untreated; not put down there: 3.2 fl oz of Lawn liquid". */
export function stripSavingWords({ stripM2, saved }: StripSaving, units: UnitSystem): string {
  const amounts = saved.map(
    ({ product, amount }) => `${amountWords(product, amount, units)} of ${dosedName(product)}`,
  );
  return `${formatArea(stripM2, units)} left untreated; not put down there: ${amounts.join(', ')}`;
}
