import type { PackSize } from './coverNeed';
import { addScore, compareScores, NO_SCORE, type Score } from './goal';

/** Packs taken together: what they hold, L or kg, their score and their counts by size. */
export interface PackSum {
  readonly sum: number;
  readonly score: Score;
  readonly counts: readonly number[];
}

/**
 * The choices of packs that hold up to some amount, rising by what they hold, each with a worse score than
 * all before: those that hold no more than another and are no better are left out. The first holds nothing.
 * @param upTo L or kg; @returns also the step function of the best score for a need: see `firstHolding`
 */
export function cheapestSums(sizes: readonly PackSize[], upTo: number): readonly PackSum[] {
  let sums: readonly PackSum[] = [{ sum: 0, score: NO_SCORE, counts: sizes.map(() => 0) }];
  for (const [i, { content, score }] of sizes.entries()) {
    const more = sums.flatMap((one) => {
      const own = [one];
      for (let n = 1; one.sum + n * content <= upTo; n++) {
        const sum = one.sum + n * content;
        own.push({ sum, score: addScore(one.score, score, n), counts: one.counts.with(i, n) });
      }
      return own;
    });
    sums = withoutWorse(more);
  }
  return sums;
}

function withoutWorse(sums: readonly PackSum[]): readonly PackSum[] {
  const falling = sums.toSorted((a, b) => b.sum - a.sum || compareScores(a.score, b.score));
  const kept: PackSum[] = [];
  for (const one of falling) {
    const last = kept.at(-1);
    if (!last || compareScores(one.score, last.score) < 0) kept.push(one);
  }
  return kept.reverse();
}

/** Index of the first choice that holds at least so much; the length of the list when none does. */
export function firstHolding(sums: readonly PackSum[], amount: number): number {
  let [low, high] = [0, sums.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sums[middle]?.sum ?? 0) < amount) low = middle + 1;
    else high = middle;
  }
  return low;
}
