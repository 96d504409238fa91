import { RELATIVE_SLACK } from '../../plan/containers';
import type { Amount } from '../../yard/types';
import type { Vessel } from '../passTypes';

/** One vessel before it is numbered: contents in one unit, and what is left in it when the dose goes on. */
export interface Draw {
  readonly packId: string | null;
  readonly full: number;
  readonly start: number;
  /** share of `full`. */
  readonly levelAfter: number;
}

/**
 * Vessels numbered in the order of the dose, each with the ground it does: what is taken, by the dose's
 * rate. The last takes what is left of amount and ground, so both sum to the dose's own; where it holds less
 * than that (nothing else is known to draw from), the rest is in no vessel.
 * @param amount in the unit of the draws; @param areaM2 ground of the dose
 */
export function vesselsOfDraws(
  kind: Vessel['kind'],
  draws: readonly Draw[],
  amount: Amount,
  areaM2: number,
): readonly Vessel[] {
  if (!(amount.value > 0) || !(areaM2 > 0)) return [];
  const of = (value: number): Amount => ({ unit: amount.unit, value });
  const vessels: Vessel[] = [];
  let [restAmount, restM2] = [amount.value, areaM2];
  draws.forEach(({ packId, full, start, levelAfter }, i) => {
    const isLast = i === draws.length - 1;
    const isEmptied = levelAfter <= RELATIVE_SLACK;
    // counts of packs are taken to be whole within this share
    const doesRest = isLast && restAmount - start <= RELATIVE_SLACK * (2 * amount.value + full);
    const taken = doesRest ? restAmount : isEmptied ? start : start - levelAfter * full;
    const ownM2 = doesRest ? restM2 : (areaM2 * taken) / amount.value;
    restAmount -= taken;
    restM2 -= ownM2;
    vessels.push({
      kind,
      number: i + 1,
      full: of(full),
      start: of(Math.max(start, taken)),
      taken: of(taken),
      areaM2: ownM2,
      packId,
    });
  });
  return vessels;
}
