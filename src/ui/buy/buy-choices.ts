import type { BuyGoal, BuySpan } from '../../buy/types';

/** How the screen was last set up; of this session of the screen, not of the document. */
export interface BuyChoices {
  readonly kind: 'all' | 'days' | 'visit';
  readonly from: string;
  readonly to: string;
  readonly visitId: string | null;
  readonly withUndated: boolean;
  /** plan taken for the order, by product id. */
  readonly goals: Readonly<Record<string, BuyGoal>>;
}

export const FIRST_CHOICES: BuyChoices = {
  kind: 'all',
  from: '',
  to: '',
  visitId: null,
  withUndated: true,
  goals: {},
};

/** The span that choices stand for. @param visitId the visit shown, where none is chosen */
export function spanOf(choices: BuyChoices, visitId: string | null): BuySpan {
  const { kind, from, to, withUndated } = choices;
  const all: BuySpan = { from: null, to: null, withUndated, visitId: null };
  if (kind === 'all') return all;
  if (kind === 'visit') return { ...all, visitId: choices.visitId ?? visitId };
  return { ...all, from: from || null, to: to || null };
}
