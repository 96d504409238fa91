import type { BuyGoal } from './types';

/** Cost, packs and amount of a choice of packs, in the order in which a goal looks at them. */
export type Score = readonly [number, number, number];

/** Nothing bought. */
export const NO_SCORE: Score = [0, 0, 0];

/** Shares of a figure below which two are alike: rounding of sums, far under any price or weight. */
const ALIKE = 1e-9;

/**
 * What one pack adds to the score of a goal. Least cost looks at cost, then the number of packs, then the
 * amount; fewest packs at packs, cost, amount; least left at amount, cost, packs.
 * @param price null: not known; such packs have no part in least cost, and count as free in the others
 */
export function scoreOfPack(goal: BuyGoal, price: number | null, content: number): Score {
  const cost = price ?? 0;
  if (goal === 'cost') return [cost, 1, content];
  return goal === 'packs' ? [1, cost, content] : [content, cost, 1];
}

export function addScore(a: Score, b: Score, times = 1): Score {
  return [a[0] + b[0] * times, a[1] + b[1] * times, a[2] + b[2] * times];
}

/** Below 0 when `a` is the better, above 0 when `b` is, 0 when they are alike. */
export function compareScores(a: Score, b: Score): number {
  for (let i = 0; i < 3; i++) {
    const [x, y] = [a[i] as number, b[i] as number];
    if (Math.abs(x - y) > ALIKE * Math.max(1e-3, Math.abs(x), Math.abs(y))) return x - y;
  }
  return 0;
}
