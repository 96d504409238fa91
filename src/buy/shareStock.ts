import type { Score } from './goal';
import type { OpeningPlan } from './openedLife';
import type { SizedPack } from './useGroups';

/** An opened container of the shelf: index of its pack, and what is in it, L or kg. */
export interface OpenContainer {
  readonly pack: number;
  readonly amount: number;
}

/** The stock of each group and what it comes to. */
export interface SharedStock {
  readonly groups: readonly {
    readonly plan: OpeningPlan;
    readonly closed: readonly number[];
    readonly open: readonly OpenContainer[];
  }[];
  /** false: not every way of sharing was tried. */
  readonly isProven: boolean;
}

type Group = { readonly packs: readonly number[]; readonly need: number };
type Solve = (group: number, closed: readonly number[], open: readonly OpenContainer[]) => OpeningPlan | null;

/** Ways of sharing tried before the search gives up. */
const MOST_WAYS = 5000;

/**
 * Shares the packs on the shelf among groups of uses so that the purchase is the best: a pack that one
 * group alone can draw on is its own; of the others every way of sharing is tried, each group being solved
 * once for a share. An opened container goes to one group whole.
 * @param solve the best purchase of one group with its share; null when it cannot be served
 * @returns null when no way serves all groups
 */
export function shareStock(
  packs: readonly SizedPack[],
  groups: readonly Group[],
  solve: Solve,
  scoreOf: (plans: readonly OpeningPlan[]) => Score,
  compare: (a: Score, b: Score) => number,
): SharedStock | null {
  const items = stockItems(packs, groups);
  const known = new Map<string, OpeningPlan | null>();
  let best: SharedStock['groups'] | null = null;
  let bestScore: Score | null = null;
  let ways = 0;
  // how many of each item each group has, by item and group
  const shares = items.map(() => groups.map(() => 0));

  const offer = () => {
    ways++;
    const found = groups.map((_, g) => {
      const closed = packs.map(() => 0);
      const open: OpenContainer[] = [];
      items.forEach((item, n) => {
        const count = shares[n]?.[g] ?? 0;
        if (count === 0) return;
        if (item.isOpen) open.push({ pack: item.pack, amount: item.amount });
        else closed[item.pack] = count;
      });
      const key = `${g}|${items.map((_, n) => shares[n]?.[g]).join(' ')}`;
      const plan = known.has(key) ? (known.get(key) ?? null) : solve(g, closed, open);
      known.set(key, plan);
      return plan && { plan, closed, open };
    });
    const whole = found.filter((each) => each !== null);
    if (whole.length < groups.length) return;
    const score = scoreOf(whole.map((each) => each.plan));
    if (bestScore !== null && compare(score, bestScore) >= 0) return;
    bestScore = score;
    best = whole;
  };
  const walk = (n: number, at: number, rest: number) => {
    if (ways >= MOST_WAYS) return;
    const item = items[n];
    if (item === undefined) return offer();
    const group = item.groups[at];
    const row = shares[n] as number[];
    if (group === undefined) return;
    if (at === item.groups.length - 1) {
      row[group] = rest;
      walk(n + 1, 0, items[n + 1]?.count ?? 0);
    } else {
      for (let count = rest; count >= 0; count--) {
        row[group] = count;
        walk(n, at + 1, rest - count);
      }
    }
    row[group] = 0;
  };
  walk(0, 0, items[0]?.count ?? 0);
  return best === null ? null : { groups: best, isProven: ways < MOST_WAYS };
}

interface Item {
  readonly pack: number;
  readonly isOpen: boolean;
  /** L or kg in one. */
  readonly amount: number;
  readonly count: number;
  /** groups that can draw on it. */
  readonly groups: readonly number[];
}

/** What of the shelf can be used; no more of a size than all its groups could empty. */
function stockItems(packs: readonly SizedPack[], groups: readonly Group[]): readonly Item[] {
  return packs.flatMap(({ closed, open, content }, pack): Item[] => {
    const own = groups.flatMap((group, g) => (group.packs.includes(pack) ? [g] : []));
    if (own.length === 0) return [];
    const most = own.reduce((sum, g) => sum + Math.ceil((groups[g]?.need ?? 0) / content), 0);
    const items: Item[] = [];
    if (open > 0) items.push({ pack, isOpen: true, amount: open * content, count: 1, groups: own });
    if (closed > 0) {
      items.push({ pack, isOpen: false, amount: content, count: Math.min(closed, most * 2), groups: own });
    }
    return items;
  });
}
