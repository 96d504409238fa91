/** A share of the whole that three digits do not show: amounts are told to no more. */
const UNTOLD = 5e-4;

/** What is left over of an amount, L or kg; 0 where it is no more than rounding of the whole. */
export function leftOver(holds: number, taken: number): number {
  const left = holds - taken;
  return left > UNTOLD * Math.max(holds, taken) ? left : 0;
}
