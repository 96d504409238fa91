import { addScore, compareScores, NO_SCORE, type Score } from './goal';

/** A pack size that can be bought: what it holds (L or kg, more than 0) and what it adds to the score. */
export interface PackSize {
  readonly content: number;
  readonly score: Score;
}

/** A choice of packs: a count for each size, in their order. */
export interface Cover {
  readonly counts: readonly number[];
  readonly score: Score;
  /** false: the search was cut short. */
  readonly isProven: boolean;
}

/** Leaves looked at before the search gives up; about a second's work. */
const MOST_LEAVES = 4_000_000;
/** Entries in the table of the last two sizes. */
const MOST_ENTRIES = 200_000;

interface Tail {
  readonly sum: number;
  readonly counts: readonly [number, number];
  readonly score: Score;
}

/**
 * The best choice of packs that hold at least `need` together: an integer covering problem with one
 * constraint, solved exactly. Branch and bound over the sizes from the best score for its content down
 * (bound: the rest of the need at the best ratio that is left, the first member of the score alone, so
 * that ties are still found); the last two sizes are looked up in a table of their sums, sorted, with the
 * best score from each sum up.
 * @param slack L or kg by which the sum may fall short and still serve (rounding of measured ground)
 * @returns null when there is no size and the need is more than the slack
 */
export function coverNeed(need: number, sizes: readonly PackSize[], slack: number): Cover | null {
  if (!(need > slack)) return { counts: sizes.map(() => 0), score: NO_SCORE, isProven: true };
  if (sizes.length === 0) return null;
  const ratio = (index: number) => at(sizes, index).score[0] / at(sizes, index).content;
  const order = sizes
    .map((_, i) => i)
    .sort((a, b) => ratio(a) - ratio(b) || at(sizes, b).content - at(sizes, a).content);
  const sorted = order.map((i) => at(sizes, i));
  const search = new Search(sorted, slack);
  search.run(need);
  const counts = sizes.map(() => 0);
  search.best.forEach((count, i) => {
    counts[at(order, i)] = count;
  });
  return { counts, score: search.bestScore as Score, isProven: search.leaves < MOST_LEAVES };
}

class Search {
  best: number[] = [];
  bestScore: Score | null = null;
  leaves = 0;
  private readonly now: number[];
  private tails: readonly Tail[] | null = null;

  constructor(
    private readonly sizes: readonly PackSize[],
    private readonly slack: number,
  ) {
    this.now = sizes.map(() => 0);
  }

  run(need: number): void {
    const { sizes } = this;
    const [a, b] = [sizes.at(-2), sizes.at(-1)];
    // worth its memory only where it is looked at more than once
    if (sizes.length > 2 && a && b) {
      const entries = (this.countFor(need, a) + 1) * (this.countFor(need, b) + 1);
      if (entries <= MOST_ENTRIES) this.tails = makeTails(need, this.slack, a, b);
    }
    this.walk(0, need, NO_SCORE);
  }

  private countFor(rest: number, size: PackSize): number {
    return rest > this.slack ? Math.ceil((rest - this.slack) / size.content) : 0;
  }

  private walk(level: number, rest: number, score: Score): void {
    const { sizes, now } = this;
    if (this.leaves >= MOST_LEAVES) return;
    const size = at(sizes, level);
    if (!(rest > this.slack)) {
      now.fill(0, level);
      this.offer(score);
      return;
    }
    if (this.tails && level === sizes.length - 2) {
      this.lookUp(level, rest, score);
      return;
    }
    const most = this.countFor(rest, size);
    if (level === sizes.length - 1) {
      now[level] = most;
      this.offer(addScore(score, size.score, most));
      return;
    }
    const next = at(sizes, level + 1);
    const ratio = next.score[0] / next.content;
    for (let count = most; count >= 0; count--) {
      const left = rest - count * size.content;
      const soFar = addScore(score, size.score, count);
      if (this.isBeaten(soFar[0] + Math.max(0, left - this.slack) * ratio)) {
        // the ratios rise: with fewer of this size the bound only grows, unless this one covered too much
        if (left > this.slack) break;
        continue;
      }
      now[level] = count;
      this.walk(level + 1, left, soFar);
    }
  }

  private isBeaten(bound: number): boolean {
    return this.bestScore !== null && bound > this.bestScore[0] * (1 + 1e-9) + 1e-12;
  }

  private lookUp(level: number, rest: number, score: Score): void {
    const tails = this.tails as readonly Tail[];
    let [low, high] = [0, tails.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (at(tails, middle).sum < rest - this.slack) low = middle + 1;
      else high = middle;
    }
    const tail = tails[low];
    if (tail === undefined) return;
    [this.now[level], this.now[level + 1]] = tail.counts as [number, number];
    this.offer(addScore(score, tail.score));
  }

  private offer(score: Score): void {
    this.leaves++;
    if (this.bestScore !== null && compareScores(score, this.bestScore) >= 0) return;
    this.bestScore = score;
    this.best = [...this.now];
  }
}

/** Sums of two sizes up to the first that covers the need alone, rising, each with the best choice that reaches it. */
function makeTails(need: number, slack: number, a: PackSize, b: PackSize): readonly Tail[] {
  const tails: Tail[] = [];
  for (let i = 0; ; i++) {
    for (let j = 0; ; j++) {
      const sum = i * a.content + j * b.content;
      tails.push({ sum, counts: [i, j], score: addScore(addScore(NO_SCORE, a.score, i), b.score, j) });
      if (sum >= need - slack) break;
    }
    if (i * a.content >= need - slack) break;
  }
  tails.sort((x, y) => x.sum - y.sum);
  for (let i = tails.length - 2; i >= 0; i--) {
    const [own, next] = [at(tails, i), at(tails, i + 1)];
    if (compareScores(next.score, own.score) < 0) tails[i] = { ...next, sum: own.sum };
  }
  return tails;
}

/** An entry that is known to be there. */
function at<T>(list: readonly T[], index: number): T {
  return list[index] as T;
}
