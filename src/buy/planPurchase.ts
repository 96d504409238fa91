import { RELATIVE_SLACK } from '../plan/containers';
import type { Product } from '../yard/types';
import { type DrawnGroup, dayText, drawContainers, ordersOf, packCounts } from './drawContainers';
import { NO_SCORE, type Score, scoreOfPack } from './goal';
import type { Stage, StockedSize } from './openedLife';
import { purchaseIssues } from './purchaseIssues';
import { shareStock } from './shareStock';
import { type Days, daysOfNeed, goodUntil, orderOf } from './shelfDays';
import { solveGroup } from './solveGroup';
import {
  BUY_GOALS,
  type BuyGoal,
  type CarriedPack,
  type NeedLine,
  type ProductNeed,
  type ProductPurchase,
  type PurchasePlan,
} from './types';
import { type SizedPack, sizedPacks, type UseGroup, usableOnShelf, useGroups } from './useGroups';

/** A group of uses with its visits in order. */
interface StagedGroup {
  readonly group: UseGroup;
  readonly stages: readonly (Stage & { readonly line: NeedLine; readonly day: number })[];
}

/** What all goals of one product share. */
interface Setting {
  readonly product: Product;
  readonly packs: readonly SizedPack[];
  readonly days: Days;
  readonly groups: readonly StagedGroup[];
  readonly needed: number;
  readonly onShelf: number;
  readonly slack: number;
}

/**
 * What to buy of one product for what its visits take, less what is on the shelf: the exact optimum in
 * whole packs for each of the three goals. See `useGroups` for what may be drawn from what, `daysOfNeed` for
 * what keeps, `scoreOfPack` for how ties are broken. Packs without a price have no part in least cost.
 * Amounts in the need's unit, L or kg. Never throws for what a person can enter.
 * @param goals those that are looked for; the others have no plan
 */
export function planPurchase(
  product: Product,
  need: ProductNeed,
  goals: readonly BuyGoal[] = BUY_GOALS,
): ProductPurchase {
  const setting = settingOf(product, need);
  const planOf = (goal: BuyGoal) => (goals.includes(goal) ? planFor(goal, setting) : null);
  const plans = { cost: planOf('cost'), packs: planOf('packs'), left: planOf('left') };
  const { needed, onShelf } = setting;
  return { need, needed, onShelf, plans, issues: purchaseIssues(product, need, plans) };
}

function settingOf(product: Product, need: ProductNeed): Setting {
  const { lines, unit } = need;
  const packs = sizedPacks(product, unit);
  const days = daysOfNeed(lines, product);
  const groups = useGroups(product, lines, packs).map((group) => stagesOf(group, lines, days));
  const onShelf = usableOnShelf(product, need);
  const needed = lines.reduce((sum, line) => sum + line.amount, 0);
  const smallest = Math.min(needed, ...packs.map((pack) => pack.content));
  // as in counting the packs of a visit
  const slack = RELATIVE_SLACK * Math.max(needed, smallest);
  return { product, packs, days, groups, needed, onShelf, slack };
}

/** The visits of a group: doses of one visit are one stage. */
function stagesOf(group: UseGroup, lines: readonly NeedLine[], days: Days): StagedGroup {
  const visits: { line: NeedLine; day: number; need: number }[] = [];
  for (const index of group.lines) {
    const line = lines[index];
    if (line === undefined) continue;
    const same = visits.find((visit) => visit.line.visitId === line.visitId);
    if (same) same.need += line.amount;
    else visits.push({ line, day: days.ofLine[index] ?? 0, need: line.amount });
  }
  const stages = visits.map((visit) => {
    const until = goodUntil(visit.day, days);
    const reach = visits.findLastIndex((other) => other.day <= until);
    return { ...visit, reach, shelfIsGood: orderOf(visit.day, days) === 0 };
  });
  return { group, stages };
}

function planFor(goal: BuyGoal, setting: Setting): PurchasePlan | null {
  const { groups, packs, days, slack } = setting;
  const scores = scoresOf(goal, packs);
  const shared = shareStock(
    packs,
    groups.map(({ group, stages }) => ({ packs: group.packs, needs: stages.map((stage) => stage.need) })),
    (index, closed, open) => {
      const { group, stages } = groups[index] as StagedGroup;
      const sizes = group.packs.map((i): StockedSize => {
        const content = packs[i]?.content ?? 0;
        return { content, score: scores[i] ?? NO_SCORE, onShelf: closed[i] ?? 0 };
      });
      const amount = open.reduce((sum, each) => sum + each.amount, 0);
      const until = goodUntil(days.orders[0] ?? 0, days);
      const reach = stages.findLastIndex((stage) => stage.day <= until);
      return solveGroup(stages, sizes, { amount, reach }, slack);
    },
  );
  if (shared === null) return null;
  const lastDay = days.ofLine.at(-1) ?? 0;
  const drawn = groups.map(({ group, stages }, g): DrawnGroup => {
    const { plan, closed, open } = shared.groups[g] as (typeof shared.groups)[number];
    const drawStages = stages.map((stage, s) => {
      const opened = packs.map(() => 0);
      group.packs.forEach((pack, n) => {
        opened[pack] = plan.opened[s]?.[n] ?? 0;
      });
      return { ...stage, order: orderOf(stage.day, days), opened };
    });
    return drawContainers(drawStages, packs, open, closed, days, lastDay);
  });
  const isProven = shared.isProven && shared.groups.every(({ plan }) => plan.isProven);
  return { ...assemble(goal, setting, drawn), isProven, effort: shared.effort };
}

/** Score of one pack of each size; infinite for those that have no part in the goal. */
function scoresOf(goal: BuyGoal, packs: readonly SizedPack[]): readonly Score[] {
  const allPriced = packs.every(({ pack }) => pack.price !== null);
  return packs.map(({ pack: { price }, content }): Score => {
    if (goal === 'cost' && price === null) return [Number.POSITIVE_INFINITY, 1, content];
    return scoreOfPack(goal, allPriced || goal === 'cost' ? price : 0, content);
  });
}

function assemble(
  goal: BuyGoal,
  setting: Setting,
  drawn: readonly DrawnGroup[],
): Omit<PurchasePlan, 'isProven' | 'effort'> {
  const { packs, days, needed, onShelf } = setting;
  const count = (pack: number) =>
    drawn.reduce((sum, group) => sum + group.bought.reduce((all, row) => all + (row[pack] ?? 0), 0), 0);
  const counts = packCounts(packs, count);
  const prices = packs.map(({ pack }, i) => (count(i) > 0 ? (pack.price ?? Number.NaN) * count(i) : 0));
  const cost = prices.reduce((sum, price) => sum + price, 0);
  const bought = packs.reduce((sum, { content }, i) => sum + content * count(i), 0);
  const untouched = untouchedShelf(setting, drawn);
  return {
    goal,
    packs: counts,
    cost: Number.isNaN(cost) ? null : cost,
    packCount: counts.reduce((sum, each) => sum + each.count, 0),
    bought,
    left: Math.max(0, bought + onShelf - needed),
    spoiled: drawn.reduce((sum, group) => sum + group.spoiled, untouched.spoiled),
    orders: ordersOf(drawn, packs, days),
    openings: drawn.flatMap((group) => group.openings).toSorted(byDay),
    carried: [...drawn.flatMap((group) => group.carried), ...untouched.carried],
  };
}

/** Closed packs of the shelf that no use took: carried on, or past their day before the last visit. */
function untouchedShelf(
  { packs, days, groups }: Setting,
  drawn: readonly DrawnGroup[],
): { readonly carried: readonly CarriedPack[]; readonly spoiled: number } {
  const usable = new Set(groups.flatMap(({ group }) => group.packs));
  const until = (days.orders[0] ?? 0) + days.closedLife;
  const isGood = until >= (days.ofLine.at(-1) ?? 0);
  const carried: CarriedPack[] = [];
  let spoiled = 0;
  packs.forEach(({ pack, closed, content }, i) => {
    if (!usable.has(i)) return;
    const rest = closed - drawn.reduce((sum, group) => sum + (group.shelfUsed[i] ?? 0), 0);
    if (!isGood) spoiled += rest * content;
    for (let n = 0; isGood && n < rest; n++)
      carried.push({
        packId: pack.id,
        from: 'shelf',
        isOpen: false,
        level: 1,
        goodUntil: dayText(until, days),
      });
  });
  return { carried, spoiled };
}

function byDay(a: { readonly date: string | null }, b: { readonly date: string | null }): number {
  return (a.date ?? '9999-99-99').localeCompare(b.date ?? '9999-99-99');
}
