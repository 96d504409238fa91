import type { VisitFigures } from '../plan/types';
import { formatDay } from '../units/formatDay';
import { doneRows } from '../words/doneWords';
import type { Product, UnitSystem } from '../yard/types';
import type { Block, Column } from './types';

const COLUMNS: readonly Column[] = [
  { head: 'Product', share: 0.24, align: 'left' },
  { head: 'Planned', share: 0.13, align: 'right' },
  { head: 'Really used', share: 0.17, align: 'right' },
  { head: 'Laid down', share: 0.23, align: 'left' },
  { head: 'By the plan', share: 0.23, align: 'left' },
];

/**
 * What was really put down at a done visit, beside the plan: the ledger, and what speaks against the visit, go by
 * that. @param products of the shelf
 * @returns none where the visit is not done
 */
export function doneBlocks(
  figures: VisitFigures,
  products: readonly Product[],
  units: UnitSystem,
): readonly Block[] {
  const rows = doneRows(figures, products, units);
  const { doneOn } = figures.visit;
  if (doneOn === null || rows.length === 0) return [];
  const caption = 'What was really put down';
  return [
    { type: 'heading', text: `${caption}, done on ${formatDay(doneOn, true)}` },
    {
      type: 'text',
      strong: false,
      text: 'The ledger, and what speaks against the visit, go by what was really used. Amounts further down are those of the plan.',
    },
    {
      type: 'table',
      caption,
      columns: COLUMNS,
      rows: rows.map(({ name, planned, used, share, laid, laidByPlan }) => [
        name,
        planned,
        share === '' ? used : `${used}, ${share}`,
        laid.join('; ') || 'nothing',
        laidByPlan.join('; '),
      ]),
      sum: false,
      plain: true,
      continued: false,
    },
  ];
}
