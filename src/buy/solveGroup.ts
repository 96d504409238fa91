import { coverNeed } from './coverNeed';
import { addScore, NO_SCORE, type Score } from './goal';
import { type OpeningPlan, planOpenings, type Stage, type StockedSize } from './openedLife';

/** What a group of uses starts with: opened containers (L or kg in all) and the last stage they serve. */
export interface OpenStock {
  readonly amount: number;
  readonly reach: number;
}

/**
 * The best packs for one group of uses and when to open them. Stages that nothing opened before can serve
 * are planned apart; where all that is opened keeps to the end, only the sum counts (`coverNeed`);
 * otherwise see `planOpenings`.
 * @param sizes with an infinite first score where the size cannot be bought, and may only come from the shelf
 * @returns null when the packs cannot serve the need
 */
export function solveGroup(
  stages: readonly Stage[],
  sizes: readonly StockedSize[],
  open: OpenStock,
  slack: number,
): OpeningPlan | null {
  const hasShelf = sizes.some((size) => size.onShelf > 0);
  const blocks = hasShelf ? [[0, stages.length] as const] : blocksOf(stages, open);
  const opened: (readonly number[])[] = [];
  let score: Score = NO_SCORE;
  let isProven = true;
  for (const [from, to] of blocks) {
    const own = stages.slice(from, to).map((stage) => ({ ...stage, reach: stage.reach - from }));
    const before = from === 0 ? open : { amount: 0, reach: -1 };
    const plan = solveBlock(own, sizes, before, slack);
    if (plan === null) return null;
    opened.push(...plan.opened);
    score = addScore(score, plan.score);
    isProven &&= plan.isProven;
  }
  return { opened, score, isProven };
}

/** Stretches of stages such that nothing opened in one serves another: [first, one after the last]. */
function blocksOf(stages: readonly Stage[], open: OpenStock): (readonly [number, number])[] {
  const blocks: (readonly [number, number])[] = [];
  let from = 0;
  let reach = open.amount > 0 ? open.reach : -1;
  for (const [i, stage] of stages.entries()) {
    reach = Math.max(reach, stage.reach);
    if (reach > i && i < stages.length - 1) continue;
    blocks.push([from, i + 1]);
    from = i + 1;
  }
  return blocks;
}

function solveBlock(
  stages: readonly Stage[],
  sizes: readonly StockedSize[],
  open: OpenStock,
  slack: number,
): OpeningPlan | null {
  const last = stages.length - 1;
  const allKeep = stages.every((stage) => stage.reach >= last && stage.shelfIsGood);
  const openKeeps = open.amount === 0 || open.reach >= last;
  const noneOnShelf = sizes.every((size) => size.onShelf === 0);
  const isSum = stages.every((stage) => stage.reach >= last) && openKeeps && (allKeep || noneOnShelf);
  if (!isSum) return planOpenings(stages, sizes, open.amount, open.reach, slack);
  const onShelf = sizes.reduce((sum, size) => sum + size.onShelf * size.content, open.amount);
  const need = stages.reduce((sum, stage) => sum + stage.need, 0) - onShelf;
  const canBuy = sizes.filter((size) => Number.isFinite(size.score[0]));
  const cover = coverNeed(need, canBuy, slack);
  if (cover === null) return null;
  const bought = new Map(canBuy.map((size, i) => [size, cover.counts[i] ?? 0]));
  const counts = sizes.map((size) => size.onShelf + (bought.get(size) ?? 0));
  const opened = spreadOpenings(stages, sizes, counts, open.amount, slack);
  return { opened, score: cover.score, isProven: cover.isProven };
}

/**
 * When to open packs that suffice together: only when what is open falls short, those of the shelf before
 * those bought; of these the smallest that is enough, else the largest.
 */
function spreadOpenings(
  stages: readonly Stage[],
  sizes: readonly StockedSize[],
  counts: readonly number[],
  open: number,
  slack: number,
): (readonly number[])[] {
  const opened = stages.map(() => sizes.map(() => 0));
  const used = sizes.map(() => 0);
  let atHand = open;
  for (const [index, stage] of stages.entries()) {
    while (atHand < stage.need - slack) {
      const pick = pickPack(stage.need - atHand - slack, sizes, counts, used);
      if (pick < 0) break;
      used[pick] = (used[pick] ?? 0) + 1;
      const row = opened[index];
      if (row) row[pick] = (row[pick] ?? 0) + 1;
      atHand += sizes[pick]?.content ?? 0;
    }
    atHand = Math.max(0, atHand - stage.need);
  }
  return opened;
}

function pickPack(
  short: number,
  sizes: readonly StockedSize[],
  counts: readonly number[],
  used: readonly number[],
): number {
  const at = (i: number) => sizes[i]?.content ?? 0;
  const left = sizes.map((_, i) => i).filter((i) => (used[i] ?? 0) < (counts[i] ?? 0));
  const shelf = left.filter((i) => (used[i] ?? 0) < (sizes[i]?.onShelf ?? 0));
  const free = (shelf.length > 0 ? shelf : left).sort((a, b) => at(a) - at(b));
  return free.find((i) => at(i) >= short) ?? free.at(-1) ?? -1;
}
