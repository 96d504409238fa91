import { addScore, compareScores, NO_SCORE, type Score } from './goal';
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
  /** visits looked at, once for each share that a group was solved for. */
  readonly effort: number;
  /** false: not every way of sharing was tried. */
  readonly isProven: boolean;
}

/** Packs by index that a group draws on, and what each of its visits takes, L or kg. */
type Group = { readonly packs: readonly number[]; readonly needs: readonly number[] };
type Solve = (group: number, closed: readonly number[], open: readonly OpenContainer[]) => OpeningPlan | null;
type Served = SharedStock['groups'][number];

/** Visits that are looked at, once for each share that a group is solved for, before the search gives up. */
const MOST_EFFORT = 2000;

/**
 * Shares the packs on the shelf among groups of uses so that the purchase is the best: a pack that one
 * group alone can draw on is its own; the others go first to one group as far as it takes them, then to
 * the next. Where that is dearer than each group would be with the whole stock to itself, every way of sharing
 * is tried, each group being solved once for a share. An opened container goes to one group whole.
 * @param solve the best purchase of one group with its share; null when it cannot be served
 * @returns null when no way serves all groups
 */
export function shareStock(
  packs: readonly SizedPack[],
  groups: readonly Group[],
  solve: Solve,
): SharedStock | null {
  const search = new Search(packs, groups, solve);
  if (!search.bound()) return null;
  search.tryInTurn();
  if (!search.isAtBound()) search.tryAll();
  const { best, effort } = search;
  return best && { groups: best, effort, isProven: search.isAtBound() || effort < MOST_EFFORT };
}

class Search {
  best: readonly Served[] | null = null;
  effort = 0;
  private bestScore: Score | null = null;
  private readonly items: readonly Item[];
  private readonly known = new Map<string, OpeningPlan | null>();
  /** how many of each item each group has, by item and group. */
  private readonly shares: number[][];
  /** least score of a group and all after it, with the whole stock to each; one more for none. */
  private rest: readonly Score[] = [];

  constructor(
    private readonly packs: readonly SizedPack[],
    private readonly groups: readonly Group[],
    private readonly solve: Solve,
  ) {
    this.items = stockItems(packs, groups);
    this.shares = this.items.map(() => groups.map(() => 0));
  }

  /** @returns false when a group cannot be served even by the whole stock */
  bound(): boolean {
    const rest: Score[] = [NO_SCORE];
    for (let g = this.groups.length - 1; g >= 0; g--) {
      const plan = this.planOf(
        g,
        this.items.map((item) => Math.min(item.count, item.most(g))),
      );
      if (plan === null) return false;
      rest.unshift(addScore(rest[0] as Score, plan.score));
    }
    this.rest = rest;
    return true;
  }

  isAtBound(): boolean {
    return this.bestScore !== null && compareScores(this.bestScore, this.rest[0] as Score) <= 0;
  }

  /** Each group in turn takes what it uses of what those before it left; each is the first once. */
  tryInTurn(): void {
    const { groups, items, shares } = this;
    for (let first = 0; first < groups.length && !this.isAtBound(); first++) {
      const left = items.map((item) => item.count);
      for (let n = 0; n < groups.length; n++) {
        const g = (first + n) % groups.length;
        const share = items.map((item, i) => Math.min(left[i] ?? 0, item.most(g)));
        const plan = this.planOf(g, share);
        items.forEach((item, i) => {
          const used = plan?.opened.reduce(
            (sum, row) => sum + (row[groups[g]?.packs.indexOf(item.pack) ?? -1] ?? 0),
            0,
          );
          const taken = item.isOpen ? (share[i] ?? 0) : Math.min(share[i] ?? 0, used ?? 0);
          left[i] = (left[i] ?? 0) - taken;
          (shares[i] as number[])[g] = taken;
        });
      }
      this.offer();
    }
    for (const row of shares) row.fill(0);
  }

  tryAll(): void {
    this.walk(0, 0, this.items[0]?.count ?? 0);
  }

  private walk(n: number, at: number, rest: number): void {
    if (this.effort >= MOST_EFFORT || this.isAtBound()) return;
    const item = this.items[n];
    if (item === undefined) {
      this.offer();
      return;
    }
    const g = item.groups[at];
    if (g === undefined) {
      this.walk(n + 1, 0, this.items[n + 1]?.count ?? 0);
      return;
    }
    const row = this.shares[n] as number[];
    const later = item.groups.slice(at + 1).reduce((sum, group) => sum + item.most(group), 0);
    for (let count = Math.min(rest, item.most(g)); count >= Math.max(0, rest - later); count--) {
      row[g] = count;
      this.walk(n, at + 1, rest - count);
    }
    row[g] = 0;
  }

  private offer(): void {
    const found: Served[] = [];
    let score = NO_SCORE;
    for (const g of this.groups.keys()) {
      // what is known so far, and the least that the others add
      const least = addScore(score, this.rest[g] as Score);
      if (this.bestScore !== null && compareScores(least, this.bestScore) >= 0) return;
      const share = this.shares.map((row) => row[g] ?? 0);
      const plan = this.planOf(g, share);
      if (plan === null) return;
      found.push({ plan, ...this.stockOf(share) });
      score = addScore(score, plan.score);
    }
    if (this.bestScore !== null && compareScores(score, this.bestScore) >= 0) return;
    this.bestScore = score;
    this.best = found;
  }

  private planOf(group: number, share: readonly number[]): OpeningPlan | null {
    const key = `${group}|${share.join(' ')}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    this.effort += this.groups[group]?.needs.length ?? 0;
    const { closed, open } = this.stockOf(share);
    const plan = this.solve(group, closed, open);
    this.known.set(key, plan);
    return plan;
  }

  private stockOf(share: readonly number[]): { closed: readonly number[]; open: readonly OpenContainer[] } {
    const closed = this.packs.map(() => 0);
    const open: OpenContainer[] = [];
    this.items.forEach(({ pack, amount, isOpen }, n) => {
      const count = share[n] ?? 0;
      if (count === 0) return;
      if (isOpen) open.push({ pack, amount });
      else closed[pack] = count;
    });
    return { closed, open };
  }
}

interface Item {
  readonly pack: number;
  readonly isOpen: boolean;
  /** L or kg in one. */
  readonly amount: number;
  readonly count: number;
  /** groups that can draw on it. */
  readonly groups: readonly number[];
  /** the most of it that a group could open; 0 for those that cannot draw on it. */
  most(group: number): number;
}

/**
 * What of the shelf can be used. A group opens at most as many of a size as each of its visits would by
 * itself: what is opened sooner than that serves no visit better.
 */
function stockItems(packs: readonly SizedPack[], groups: readonly Group[]): readonly Item[] {
  return packs.flatMap(({ closed, open, content }, pack): Item[] => {
    const mosts = groups.map(({ packs: drawn, needs }) =>
      drawn.includes(pack) ? needs.reduce((sum, need) => sum + Math.ceil(need / content), 0) : 0,
    );
    const own = mosts.flatMap((most, g) => (most > 0 ? [g] : []));
    if (own.length === 0) return [];
    const count = Math.min(
      closed,
      mosts.reduce((sum, each) => sum + each, 0),
    );
    const most = (g: number) => mosts[g] ?? 0;
    const items: Item[] = [];
    if (open > 0) {
      const one = (g: number) => Math.min(1, most(g));
      items.push({ pack, isOpen: true, amount: open * content, count: 1, groups: own, most: one });
    }
    if (count > 0) items.push({ pack, isOpen: false, amount: content, count, groups: own, most });
    return items;
  });
}
