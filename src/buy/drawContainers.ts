import { dayNumber, dayOfNumber } from '../yard/calendar';
import { type Days, goodUntil } from './shelfDays';
import type { CarriedPack, Draw, NeedLine, PackCount, PurchaseOrder, VisitOpening } from './types';
import type { SizedPack } from './useGroups';

/** A stage of a group of uses: one visit, and the packs opened at it (shelf's and bought) by index of pack. */
export interface DrawStage {
  readonly line: NeedLine;
  readonly day: number;
  readonly order: number;
  readonly need: number;
  readonly opened: readonly number[];
}

interface Container {
  readonly pack: number;
  readonly from: 'bought' | 'shelf';
  amount: number;
  readonly goodUntil: number;
}

/** What comes of drawing on containers, stage by stage. */
export interface DrawnGroup {
  readonly openings: readonly VisitOpening[];
  readonly carried: readonly CarriedPack[];
  /** bought by order and pack index. */
  readonly bought: readonly (readonly number[])[];
  /** day on which the first pack of an order is opened, by order; null: none of this group. */
  readonly firstOpened: readonly (number | null)[];
  /** closed packs taken from the shelf, by pack index. */
  readonly shelfUsed: readonly number[];
  readonly spoiled: number;
}

/**
 * Draws every stage on the containers of one group: what was opened first goes first; of those opened at
 * one stage the largest first, so that at most one of them stays part full. What is past its day is lost.
 * @param open opened containers the group begins with; @param shelf closed ones it may take, by pack index
 * @param lastDay day of the last visit of the whole need: what spoils before it counts as spoiled
 */
export function drawContainers(
  stages: readonly DrawStage[],
  packs: readonly SizedPack[],
  open: readonly { readonly pack: number; readonly amount: number }[],
  shelf: readonly number[],
  days: Days,
  lastDay: number,
): DrawnGroup {
  const first = days.orders[0] ?? 0;
  const live: Container[] = open.map((each) => ({
    ...each,
    from: 'shelf',
    goodUntil: goodUntil(first, days),
  }));
  const bought = days.orders.map(() => packs.map(() => 0));
  const firstOpened: (number | null)[] = days.orders.map(() => null);
  const shelfUsed = packs.map(() => 0);
  const openings: VisitOpening[] = [];
  const content = (pack: number) => packs[pack]?.content ?? 0;
  for (const { line, day, order, need, opened } of stages) {
    const fresh = freshContainers(opened, (pack) => {
      const isFromShelf = order === 0 && (shelfUsed[pack] ?? 0) < (shelf[pack] ?? 0);
      if (isFromShelf) shelfUsed[pack] = (shelfUsed[pack] ?? 0) + 1;
      const row = bought[order];
      if (!isFromShelf && row) {
        row[pack] = (row[pack] ?? 0) + 1;
        firstOpened[order] ??= day;
      }
      const from = isFromShelf ? 'shelf' : 'bought';
      return { pack, from, amount: content(pack), goodUntil: goodUntil(day, days) };
    }).sort((a, b) => content(b.pack) - content(a.pack));
    const draws: Draw[] = [];
    let left = need;
    for (const container of [...live.filter((one) => one.goodUntil >= day), ...fresh]) {
      const taken = Math.min(left, container.amount);
      if (!(taken > 0) && !fresh.includes(container)) continue;
      const level = (container.amount - taken) / content(container.pack);
      container.amount = level > 1e-9 ? container.amount - taken : 0;
      left -= taken;
      const pack = packs[container.pack]?.pack.id ?? '';
      const isOpened = fresh.includes(container);
      draws.push({ packId: pack, from: container.from, isOpened, taken, levelAfter: Math.max(0, level) });
    }
    live.push(...fresh);
    openings.push({ visitId: line.visitId, date: line.date, draws });
  }
  const over = live.filter((one) => one.amount > 0);
  const carried = over
    .filter((one) => one.goodUntil >= lastDay)
    .map(({ pack, from, amount, goodUntil: until }): CarriedPack => {
      const level = amount / content(pack);
      return {
        packId: packs[pack]?.pack.id ?? '',
        from,
        isOpen: true,
        level,
        // of opened ones the label is silent: that of closed ones says nothing of them
        goodUntil: Number.isFinite(days.openedLife) ? dayText(until, days) : null,
      };
    });
  const spoiled = over.reduce((sum, one) => (one.goodUntil >= lastDay ? sum : sum + one.amount), 0);
  return { openings, carried, bought, firstOpened, shelfUsed, spoiled };
}

function freshContainers(opened: readonly number[], make: (pack: number) => Container): Container[] {
  return opened.flatMap((count, pack) => Array.from({ length: count }, () => make(pack)));
}

const LAST_DAY = dayNumber('9999-12-31') ?? 0;

/** YYYY-MM-DD of a day; null where nothing is told of how long it keeps (or that is for ever), or no visit has a day. */
export function dayText(day: number, days: Days): string | null {
  return days.hasDays && day <= LAST_DAY ? dayOfNumber(day) : null;
}

/** The orders of several groups as one list, each with the packs it brings. */
export function ordersOf(
  groups: readonly DrawnGroup[],
  packs: readonly SizedPack[],
  days: Days,
): readonly PurchaseOrder[] {
  return days.orders.flatMap((_, order): PurchaseOrder[] => {
    const counts = packCounts(packs, (pack) =>
      groups.reduce((sum, group) => sum + (group.bought[order]?.[pack] ?? 0), 0),
    );
    if (counts.length === 0) return [];
    const day = Math.min(...groups.flatMap(({ firstOpened }) => firstOpened[order] ?? []));
    return [{ by: days.hasDays ? dayOfNumber(day) : null, packs: counts }];
  });
}

/** Counts by pack in the label's order, those above 0. */
export function packCounts(
  packs: readonly SizedPack[],
  countOf: (pack: number) => number,
): readonly PackCount[] {
  return packs.flatMap(({ pack }, i) => {
    const count = countOf(i);
    return count > 0 ? [{ packId: pack.id, count }] : [];
  });
}
