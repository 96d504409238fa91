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

/** Packs by index that a group draws on, and what each of its visits takes, L or kg. */
type Group = { readonly packs: readonly number[]; readonly needs: readonly number[] };
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
    const own = item.groups[at];
    if (own === undefined) return walk(n + 1, 0, items[n + 1]?.count ?? 0);
    const row = shares[n] as number[];
    const later = item.groups.slice(at + 1).reduce((sum, group) => sum + group.most, 0);
    for (let count = Math.min(rest, own.most); count >= Math.max(0, rest - later); count--) {
      row[own.group] = count;
      walk(n, at + 1, rest - count);
    }
    row[own.group] = 0;
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
  /** groups that can draw on it, and the most of it that each could open. */
  readonly groups: readonly { readonly group: number; readonly most: number }[];
}

/**
 * What of the shelf can be used. A group opens at most as many of a size as each of its visits would by
 * itself: what is opened sooner than that serves no visit better.
 */
function stockItems(packs: readonly SizedPack[], groups: readonly Group[]): readonly Item[] {
  return packs.flatMap(({ closed, open, content }, pack): Item[] => {
    const own = groups.flatMap(({ packs: drawn, needs }, group) => {
      const most = needs.reduce((sum, need) => sum + Math.ceil(need / content), 0);
      return drawn.includes(pack) && most > 0 ? [{ group, most }] : [];
    });
    if (own.length === 0) return [];
    const most = own.reduce((sum, each) => sum + each.most, 0);
    const items: Item[] = [];
    if (open > 0) {
      const groups = own.map((each) => ({ ...each, most: 1 }));
      items.push({ pack, isOpen: true, amount: open * content, count: 1, groups });
    }
    if (closed > 0) {
      items.push({ pack, isOpen: false, amount: content, count: Math.min(closed, most), groups: own });
    }
    return items;
  });
}
