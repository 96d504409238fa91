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

/** States kept after one stage before the search gives up. */
const MOST_STATES = 3000;
const MOST_CHOICES = 60_000;

/**
 * The best packs to open, stage by stage, where an opened container keeps for a time only. Exact, by
 * dynamic programming: a container is opened when what is open does not suffice (later is never worse,
 * since closed ones keep), what is open goes first, and so all that is open after a stage was opened at one
 * and the same. After a stage, then, only what is open, how long it keeps, what stands on the shelf and the
 * score matter; a state that another equals or betters in all of them is dropped.
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
  const none = sizes.map(() => 0);
  const shelf = sizes.map((size) => size.onShelf);
  let states: State[] = [{ open, reach: openReach, shelf, score: NO_SCORE, before: null, opened: none }];
  let isProven = true;
  for (const [index, stage] of stages.entries()) {
    const next: State[] = [];
    for (const state of states) {
      const atHand = index <= state.reach ? state.open : 0;
      if (atHand >= stage.need - slack) {
        const left = Math.max(0, atHand - stage.need);
        next.push({ ...state, open: left, before: state, opened: none });
        continue;
      }
      const short = stage.need - atHand;
      const useful = usefulAfter(stages, index, stage.reach);
      const choices = choicesFor(short, sizes, slack);
      isProven &&= choices.length < MOST_CHOICES;
      for (const opened of choices) {
        const made = openPacks(state, opened, sizes, stage, short, useful);
        if (made) next.push(made);
      }
    }
    states = undominated(next);
    if (states.length > MOST_STATES) {
      isProven = false;
      states.length = MOST_STATES;
    }
  }
  const [first, ...others] = states;
  if (first === undefined) return null;
  const best = others.reduce(
    (one, other) => (compareScores(other.score, one.score) < 0 ? other : one),
    first,
  );
  const opened: (readonly number[])[] = [];
  for (let at: State | null = best; at?.before; at = at.before) opened.unshift(at.opened);
  return { opened, score: best.score, isProven };
}

/** What the stages after this one could use of what is left open, L or kg. */
function usefulAfter(stages: readonly Stage[], index: number, reach: number): number {
  return stages.slice(index + 1, reach + 1).reduce((sum, stage) => sum + stage.need, 0);
}

function openPacks(
  state: State,
  opened: readonly number[],
  sizes: readonly StockedSize[],
  stage: Stage,
  short: number,
  useful: number,
): State | null {
  let { score } = state;
  let sum = 0;
  const shelf = [...state.shelf];
  for (const [i, size] of sizes.entries()) {
    const count = opened[i] ?? 0;
    const own = stage.shelfIsGood ? Math.min(count, shelf[i] ?? 0) : 0;
    shelf[i] = (shelf[i] ?? 0) - own;
    const buys = count - own;
    if (buys > 0 && !Number.isFinite(size.score[0])) return null;
    score = buys > 0 ? addScore(score, size.score, buys) : score;
    sum += count * size.content;
  }
  const left = Math.min(Math.max(0, sum - short), useful);
  return { open: left, reach: stage.reach, shelf, score, before: state, opened };
}

/** Every choice of packs that covers what is short and could not do so with one pack less. */
function choicesFor(short: number, sizes: readonly StockedSize[], slack: number): readonly number[][] {
  const order = sizes.map((_, i) => i).sort((a, b) => contentOf(sizes, b) - contentOf(sizes, a));
  const found: number[][] = [];
  const now = sizes.map(() => 0);
  // from the largest down, so that a choice that covers only with its last and smallest pack has none to spare
  const walk = (level: number, rest: number) => {
    const index = order[level];
    if (index === undefined || found.length >= MOST_CHOICES) return;
    const content = contentOf(sizes, index);
    const most = Math.ceil((rest - slack) / content);
    for (let count = most; count >= 0; count--) {
      now[index] = count;
      const left = rest - count * content;
      if (left > slack) walk(level + 1, left);
      else found.push([...now]);
    }
    now[index] = 0;
  };
  walk(0, short);
  return found;
}

function contentOf(sizes: readonly StockedSize[], index: number): number {
  return sizes[index]?.content ?? 0;
}

/** Those that no other equals or betters in all respects; one of several alike. */
function undominated(states: readonly State[]): State[] {
  const sorted = states.toSorted((a, b) => compareScores(a.score, b.score) || b.open - a.open);
  const kept: State[] = [];
  for (const state of sorted) if (!kept.some((other) => isAsGood(other, state))) kept.push(state);
  return kept;
}

/** `a` is not behind `b` in anything; its score is known to be no worse. */
function isAsGood(a: State, b: State): boolean {
  const hasMore = a.open >= b.open * (1 - 1e-12) - 1e-12 && (a.reach >= b.reach || b.open === 0);
  return hasMore && a.shelf.every((count, i) => count >= (b.shelf[i] ?? 0));
}
