import { cheapestSums, firstHolding, type PackSum } from './cheapestSums';
import type { PackSize } from './coverNeed';
import { addScore, compareScores, NO_SCORE, type Score } from './goal';

/** A visit of one group of uses: what it takes, and how long what is opened at it keeps. */
export interface Stage {
  /** L or kg, 0 or more. */
  readonly need: number;
  /** index of the last stage that a container opened at this one can still serve; at least its own. */
  readonly reach: number;
  /** false: closed packs from the shelf have not kept until now. */
  readonly shelfIsGood: boolean;
}

/** A pack size, and how many closed ones stand on the shelf. */
export interface StockedSize extends PackSize {
  readonly onShelf: number;
}

/** Packs to open at each stage, by size; the score counts those beyond the shelf's. */
export interface OpeningPlan {
  readonly opened: readonly (readonly number[])[];
  readonly score: Score;
  readonly isProven: boolean;
}

/** How matters stand after a stage. */
interface State {
  /** in containers that are open, L or kg, and the last stage they serve. */
  readonly open: number;
  readonly reach: number;
  /** closed packs of the shelf not yet opened, by size. */
  readonly shelf: readonly number[];
  readonly score: Score;
  readonly before: State | null;
  readonly opened: readonly number[];
}

/** States kept after a stage, and steps from state to state in all, before the search gives up. */
const MOST_STATES = 1500;
const MOST_STEPS = 250_000;
/** States of the first, quick search, whose result bounds the second. */
const FEW_STATES = 12;
const FEW_STEPS = 20_000;
const MOST_SUMS = 4000;

/**
 * The best packs to open, stage by stage, where an opened container keeps for a time only. Exact, by
 * dynamic programming: a container is opened when what is open does not suffice (later is never worse,
 * since closed ones keep), what is open goes first, and so all that is open after a stage was opened at one
 * and the same. After a stage, then, only what is open, how long it keeps, what stands on the shelf and the
 * score matter; a state that another equals or betters in all of them is dropped, and so is one that cannot
 * come to a better score than a quick search found (bound: the rest of the need at the best ratio).
 * @param open in opened containers from before, L or kg; @param openReach last stage they serve (-1: none)
 * @param slack L or kg by which a stage may fall short and still be served
 * @returns null when nothing can be opened and a need is left
 */
export function planOpenings(
  stages: readonly Stage[],
  sizes: readonly StockedSize[],
  open: number,
  openReach: number,
  slack: number,
): OpeningPlan | null {
  const search = new Search(stages, sizes, slack);
  const quick = search.run(open, openReach, FEW_STATES, FEW_STEPS, null);
  if (quick?.isProven) return quick;
  const whole = search.run(open, openReach, MOST_STATES, MOST_STEPS, quick?.score ?? null);
  if (whole === null || (quick && compareScores(quick.score, whole.score) <= 0)) {
    // nothing better than the quick result: it is the best when the second search saw everything
    return quick && { ...quick, isProven: search.sawAll };
  }
  return { ...whole, isProven: search.sawAll };
}

class Search {
  /** whether the last run left nothing out. */
  sawAll = true;
  /** need of all stages after each one. */
  private readonly rest: readonly number[];
  private readonly ratio: number;
  private steps = 0;

  constructor(
    private readonly stages: readonly Stage[],
    private readonly sizes: readonly StockedSize[],
    private readonly slack: number,
  ) {
    let sum = 0;
    this.rest = stages
      .toReversed()
      .map((stage) => {
        const after = sum;
        sum += stage.need;
        return after;
      })
      .reverse();
    this.ratio = Math.min(...sizes.map((size) => size.score[0] / size.content));
  }

  run(
    open: number,
    openReach: number,
    mostStates: number,
    mostSteps: number,
    best: Score | null,
  ): OpeningPlan | null {
    this.sawAll = true;
    this.steps = mostSteps;
    const none = this.sizes.map(() => 0);
    const shelf = this.sizes.map((size) => size.onShelf);
    let states: State[] = [{ open, reach: openReach, shelf, score: NO_SCORE, before: null, opened: none }];
    for (const [index, stage] of this.stages.entries()) {
      const atHand = (state: State) => (index <= state.reach ? state.open : 0);
      const short = Math.max(0, ...states.map((state) => stage.need - atHand(state)));
      const choices = short > this.slack ? this.choicesUpTo(short) : [];
      const useful = usefulAfter(this.stages, index, stage.reach);
      const next: State[] = [];
      for (const state of states) {
        if (atHand(state) >= stage.need - this.slack) {
          const left = Math.max(0, atHand(state) - stage.need);
          next.push({ ...state, open: left, before: state, opened: none });
        } else {
          this.openFor(state, stage, stage.need - atHand(state), useful, choices, next);
        }
      }
      states = undominated(best === null ? next : next.filter((one) => !this.isBeaten(one, index, best)));
      if (states.length > mostStates) {
        this.sawAll = false;
        const bound = (one: State) => one.score[0] + this.atLeast(one, index);
        states = states.toSorted((a, b) => bound(a) - bound(b)).slice(0, mostStates);
      }
    }
    const [first, ...others] = states;
    if (first === undefined) return null;
    const winner = others.reduce(
      (one, other) => (compareScores(other.score, one.score) < 0 ? other : one),
      first,
    );
    const opened: (readonly number[])[] = [];
    for (let at: State | null = winner; at?.before; at = at.before) opened.unshift(at.opened);
    return { opened, score: winner.score, isProven: this.sawAll };
  }

  /** Least first member of the score that the stages after `index` add. */
  private atLeast(state: State, index: number): number {
    if (!Number.isFinite(this.ratio)) return 0;
    const own = state.shelf.reduce(
      (sum, count, i) => sum + count * (this.sizes[i]?.content ?? 0),
      state.open,
    );
    return Math.max(0, (this.rest[index] ?? 0) - own - this.slack * this.stages.length) * this.ratio;
  }

  private isBeaten(state: State, index: number, best: Score): boolean {
    return state.score[0] + this.atLeast(state, index) > best[0] * (1 + 1e-9) + 1e-12;
  }

  /** States after a stage that is short: some packs of the shelf, and of those bought what the rest takes. */
  private openFor(
    state: State,
    stage: Stage,
    short: number,
    useful: number,
    choices: readonly PackSum[],
    next: State[],
  ): void {
    const { slack } = this;
    for (const taken of this.fromShelf(state, stage, short)) {
      const rest = short - taken.sum;
      const shelf = state.shelf.map((count, i) => count - (taken.counts[i] ?? 0));
      const add = (bought: PackSum) => {
        const opened = taken.counts.map((count, i) => count + (bought.counts[i] ?? 0));
        const left = Math.min(Math.max(0, bought.sum - rest), useful);
        const score = addScore(state.score, bought.score);
        next.push({ open: left, reach: stage.reach, shelf, score, before: state, opened });
      };
      if (!(rest > slack)) {
        add({ sum: 0, score: NO_SCORE, counts: [] });
        continue;
      }
      for (let i = firstHolding(choices, rest - slack); i < choices.length; i++) {
        if (this.steps-- <= 0) {
          this.sawAll = false;
          // one way on, so that there is a result
          if (next.length > 0) return;
        }
        const choice = choices[i] as PackSum;
        add(choice);
        // the choices cost more and more: more than is of use is not bought
        if (choice.sum - rest >= useful) break;
      }
    }
  }

  /** Ways to take closed packs from the shelf for what is short, none that could do with one less. */
  private fromShelf(state: State, stage: Stage, short: number): readonly PackSum[] {
    const { sizes, slack } = this;
    const none = { sum: 0, score: NO_SCORE, counts: sizes.map(() => 0) };
    if (!stage.shelfIsGood) return [none];
    let ways: PackSum[] = [none];
    const order = sizes.map((_, i) => i).sort((a, b) => (sizes[b]?.content ?? 0) - (sizes[a]?.content ?? 0));
    for (const i of order) {
      const content = sizes[i]?.content ?? 0;
      ways = ways.flatMap((way) => {
        const more = [way];
        for (let n = 1; n <= (state.shelf[i] ?? 0) && short - way.sum - (n - 1) * content > slack; n++) {
          more.push({ ...way, sum: way.sum + n * content, counts: way.counts.with(i, n) });
        }
        return more;
      });
    }
    return ways;
  }

  /** Packs to buy that come to anything up to what is short and the largest pack more, by their sums. */
  private choicesUpTo(short: number): readonly PackSum[] {
    const buyable = this.sizes.flatMap((size, i) => (Number.isFinite(size.score[0]) ? [{ ...size, i }] : []));
    const most = short + Math.max(0, ...buyable.map((size) => size.content));
    const sums = cheapestSums(buyable, most + this.slack).map((one) => {
      const counts = this.sizes.map(() => 0);
      buyable.forEach(({ i }, n) => {
        counts[i] = one.counts[n] ?? 0;
      });
      return { ...one, counts };
    });
    if (sums.length <= MOST_SUMS) return sums;
    this.sawAll = false;
    const step = sums.length / MOST_SUMS;
    return Array.from({ length: MOST_SUMS }, (_, n) => sums[Math.floor((n + 1) * step) - 1] as PackSum);
  }
}

/** What the stages after this one could use of what is left open, L or kg. */
function usefulAfter(stages: readonly Stage[], index: number, reach: number): number {
  return stages.slice(index + 1, reach + 1).reduce((sum, stage) => sum + stage.need, 0);
}

/** Those that no other equals or betters in all respects; one of several alike. */
function undominated(states: readonly State[]): State[] {
  const sorted = states.toSorted((a, b) => compareScores(a.score, b.score) || b.open - a.open);
  // of each stock of the shelf and reach only the most that is open matters, the score being no worse
  const most = new Map<string, { shelf: readonly number[]; reach: number; open: number }>();
  return sorted.filter((state) => {
    const { shelf, reach, open } = state;
    for (const other of most.values()) {
      const isOpenAsGood = other.open >= open * (1 - 1e-12) - 1e-12 && (other.reach >= reach || open === 0);
      if (isOpenAsGood && other.shelf.every((count, i) => count >= (shelf[i] ?? 0))) return false;
    }
    most.set(`${shelf.join(' ')}|${reach}`, { shelf, reach, open });
    return true;
  });
}
