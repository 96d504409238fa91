import { applyUse, packsToDrawOn } from '../plan/applyUse';
import { convertAmount } from '../plan/rate';
import type { Amount, Pack, Product } from '../yard/types';
import type { NeedLine, ProductNeed } from './types';

/** A pack size in the unit of a need. */
export interface SizedPack {
  readonly pack: Pack;
  /** L or kg, more than 0. */
  readonly content: number;
  /** closed packs on the shelf, and the share left in an opened one, 0 to <1. */
  readonly closed: number;
  readonly open: number;
}

/** Lines of a need whose uses draw on the same packs. */
export interface UseGroup {
  /** indices into the need's lines. */
  readonly lines: readonly number[];
  /** indices into the sized packs. */
  readonly packs: readonly number[];
}

/** A count of packs this near to a whole one is whole. */
const WHOLE = 1e-6;

/** The packs of a label that can be told in the unit of the need, with what of them is on the shelf. */
export function sizedPacks(product: Product, unit: Amount['unit']): readonly SizedPack[] {
  return product.packs.flatMap((pack): SizedPack[] => {
    const content = convertAmount(pack.content, unit, product.densityKgPerL)?.value ?? 0;
    if (!(content > 0)) return [];
    const onHand = Math.max(0, product.onHand[pack.id] ?? 0);
    const closed = Math.floor(onHand + WHOLE);
    const open = onHand - closed;
    return [{ pack, content, closed, open: open > WHOLE ? open : 0 }];
  });
}

/** What is on the shelf in packs that a use of the need can draw on, L or kg in its unit. */
export function usableOnShelf(
  product: Product,
  { lines, unit }: Pick<ProductNeed, 'lines' | 'unit'>,
): number {
  const packs = sizedPacks(product, unit);
  const usable = new Set(useGroups(product, lines, packs).flatMap((group) => group.packs));
  return packs.reduce(
    (sum, { closed, open, content }, i) => (usable.has(i) ? sum + (closed + open) * content : sum),
    0,
  );
}

/**
 * The lines by the packs that their uses can draw on. Uses of one label that name the same packs draw on
 * the same containers. Where what is left may be poured together (`canPour`), every use draws on all.
 * Otherwise a container that is open stays with the uses that opened it: a bottle with a hose-end is not
 * emptied into a tank, nor filled up from a jug; a closed one is free for any use that names it.
 */
export function useGroups(
  product: Product,
  lines: readonly NeedLine[],
  packs: readonly SizedPack[],
): readonly UseGroup[] {
  const groups = new Map<string, { lines: number[]; packs: number[] }>();
  for (const [index, line] of lines.entries()) {
    const drawn = packsToDrawOn(applyUse(product, line.useId) ?? { ...product, packIds: null });
    const own = packs.flatMap(({ pack }, i) => (drawn.includes(pack) ? [i] : []));
    const key = own.join(' ');
    const group = groups.get(key) ?? { lines: [], packs: own };
    groups.set(key, group);
    group.lines.push(index);
  }
  return [...groups.values()];
}
