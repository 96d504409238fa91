/** What may be missed, and done twice beyond the plan, as shares of the ground. */
export const MOST_MISSED = 0.0047;
export const MOST_DOUBLE = 0.05;
/** What each of them beyond that is worth in walk: so much of the walk for all of the ground. */
export const MISSED_PRICE = 150;
export const DOUBLE_PRICE = 10;

/** Length with a price on what is missed beyond the allowed. @param missed as a share of the ground; @param lengthM m */
export function priceOfMissed(lengthM: number, missed: number): number {
  return lengthM * (1 + MISSED_PRICE * Math.max(0, missed - MOST_MISSED));
}

/** Length, with a price on ground missed or done twice beyond what is allowed. @param missed, double as shares of the ground */
export function priceOfWalk(lengthM: number, missed: number, double: number): number {
  const over = (share: number, most: number) => Math.max(0, share - most);
  return lengthM * (1 + MISSED_PRICE * over(missed, MOST_MISSED) + DOUBLE_PRICE * over(double, MOST_DOUBLE));
}
