import type { Amount, Product } from '../yard/types';
import { packsToDrawOn } from './applyUse';
import { convertAmount } from './rate';

/** What is drawn from the shelf for one dose. */
export interface StockTaking {
  /** packs drawn, by pack id; fractions where one stays opened. */
  readonly taken: Readonly<Record<string, number>>;
  /** what the shelf lacks, in the measure asked for; 0 when it holds enough. */
  readonly short: Amount;
}

/** Counts of packs are kept to a billionth: what is smaller is rounding. */
const GRAIN = 1e-9;

function tidy(count: number): number {
  return Math.max(0, Math.round(count / GRAIN) * GRAIN);
}

/**
 * Draws an amount from the packs on hand: opened ones first, the emptiest first; then full ones, the largest
 * that is used up whole, last the smallest that holds the rest. Only packs of the product's use, unless what
 * is left may be poured together.
 * @param product as the dose's use has it (see `applyUse`), with what is on hand
 * @param amount kg or L; packs in the other measure count where the density is known
 */
export function takeFromStock(product: Product, amount: Amount): StockTaking {
  const taken: Record<string, number> = {};
  let rest = Math.max(0, amount.value);
  const slack = rest * GRAIN;
  const packs = usablePacks(product, amount.unit);
  const draw = (pack: { readonly id: string; readonly value: number }, count: number): void => {
    taken[pack.id] = (taken[pack.id] ?? 0) + count;
    rest -= count * pack.value;
  };

  const opened = packs
    .map((pack) => ({ ...pack, part: tidy(pack.count) - Math.floor(tidy(pack.count)) }))
    .filter(({ part }) => part > GRAIN)
    .sort((a, b) => a.part * a.value - b.part * b.value);
  for (const pack of opened) if (rest > slack) draw(pack, Math.min(pack.part, rest / pack.value));

  const full = packs
    .map((pack) => ({ ...pack, left: Math.floor(tidy(pack.count)) }))
    .sort((a, b) => b.value - a.value);
  for (const pack of full) {
    const whole = Math.min(pack.left, Math.floor((rest + slack) / pack.value));
    if (whole < 1) continue;
    draw(pack, whole);
    pack.left -= whole;
  }
  for (const pack of full.toReversed()) {
    if (rest <= slack || pack.left === 0 || pack.value < rest - slack) continue;
    draw(pack, rest / pack.value);
    pack.left = 0;
  }
  // no single pack holds the rest: what is there, the largest first
  for (const pack of full)
    if (rest > slack && pack.left > 0) draw(pack, Math.min(pack.left, rest / pack.value));

  const short: Amount = { unit: amount.unit, value: rest > slack ? rest : 0 };
  return { taken: Object.fromEntries(Object.entries(taken).map(([id, count]) => [id, tidy(count)])), short };
}

/** What is on hand once packs are taken off it (or put back, by negative counts); never less than none. */
export function stockLess(
  onHand: Product['onHand'],
  taken: Readonly<Record<string, number>>,
  sign: 1 | -1 = 1,
): Product['onHand'] {
  const next: Record<string, number> = { ...onHand };
  for (const [id, count] of Object.entries(taken)) next[id] = tidy((next[id] ?? 0) - sign * count);
  return next;
}

function usablePacks(product: Product, unit: Amount['unit']) {
  return packsToDrawOn(product).flatMap((pack) => {
    const content = convertAmount(pack.content, unit, product.densityKgPerL);
    const count = product.onHand[pack.id] ?? 0;
    return content && content.value > 0 && count > 0 ? [{ id: pack.id, value: content.value, count }] : [];
  });
}
