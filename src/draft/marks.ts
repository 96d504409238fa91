import type { MarkKind } from '../yard/types';

/** Symbols on a 24 by 24 field, stroked: a grate, a ring in a ring, a tap, an open leaf between posts. */
export const MARK_SYMBOLS: Readonly<Record<MarkKind, string>> = {
  'storm-drain': 'M4 4H20V20H4ZM8 4V20M12 4V20M16 4V20',
  well: 'M12 3A9 9 0 1 0 12 21A9 9 0 1 0 12 3M12 8A4 4 0 1 0 12 16A4 4 0 1 0 12 8',
  'hose-bib': 'M4 10H15A3 3 0 0 1 18 13V19M9 10V5M5.5 5H12.5M4 7V13',
  gate: 'M4 6V19M20 6V19M4 16L17 8',
};

/** Width of the strokes on the same field. */
export const MARK_STROKE = 2.2;
