import type { Amount, Pack, Product } from '../yard/types';
import { packsOfUse } from './applyUse';
import { RELATIVE_SLACK, wholePacks } from './containers';
import { convertAmount } from './rate';
import { takeFromStock } from './takeFromStock';

/** What is gone on with in an opened pack. */
export interface GoneOnWith {
  readonly pack: Pack;
  /** in the measure of the pack, L or kg. */
  readonly taken: Amount;
  /** share of a full pack left in it afterwards, 0 to <1. */
  readonly levelAfter: number;
}

/** Closed packs of one size that are opened, and the share of the last that is left in it, 0 to <1. */
export interface Opened {
  readonly pack: Pack;
  readonly count: number;
  readonly lastLeft: number;
}

/** How a dose is drawn when what is on the shelf goes first. */
export interface StockOpening {
  readonly opened: readonly GoneOnWith[];
  /** closed packs on hand. */
  readonly closed: readonly Opened[];
  /** packs that are not on hand, one of these sizes; none where the shelf holds enough. */
  readonly missing: readonly Opened[];
}

/**
 * How a dose opens packs with what is on hand: opened packs first, then closed ones, then new ones of one
 * size (see `takeFromStock` for which go first).
 * @param product as the dose's use has it, `onHand` as it stands at that dose (see `stockAtDose`)
 * @param amount kg or L
 * @returns null where nothing that the use can draw on is on hand: then the plain counts hold
 */
export function openFromStock(product: Product, amount: Amount): StockOpening | null {
  const { taken, short } = takeFromStock(product, amount);
  const opened: GoneOnWith[] = [];
  const closed: Opened[] = [];
  for (const pack of product.packs) {
    const count = taken[pack.id] ?? 0;
    if (!(count > RELATIVE_SLACK)) continue;
    const onHand = product.onHand[pack.id] ?? 0;
    const full = Math.floor(onHand + RELATIVE_SLACK);
    const part = Math.max(0, onHand - full);
    // an opened pack goes before any closed one
    const fromOpened = part > RELATIVE_SLACK ? Math.min(part, count) : 0;
    if (fromOpened > 0) {
      const { unit, value } = pack.content;
      opened.push({ pack, taken: { unit, value: fromOpened * value }, levelAfter: tidy(part - fromOpened) });
    }
    const row = opening(pack, count - fromOpened);
    if (row.count > 0) closed.push(row);
  }
  if (opened.length + closed.length === 0) return null;
  const missing =
    short.value > amount.value * RELATIVE_SLACK
      ? packsOfUse(product).flatMap((pack) => {
          const need = convertAmount(short, pack.content.unit, product.densityKgPerL);
          return need && pack.content.value > 0 ? opening(pack, need.value / pack.content.value) : [];
        })
      : [];
  return { opened, closed, missing };
}

function opening(pack: Pack, exact: number): Opened {
  const count = wholePacks(exact);
  return { pack, count, lastLeft: tidy(count - exact) };
}

function tidy(share: number): number {
  return share > RELATIVE_SLACK ? Math.min(1, share) : 0;
}
