import { RELATIVE_SLACK } from '../plan/containers';
import type { Product } from '../yard/types';
import { cheapestSums, firstHolding, type PackSum } from './cheapestSums';
import type { PackSize } from './coverNeed';
import { scoreOfPack } from './goal';
import type { ProductNeed } from './types';
import { sizedPacks, useGroups } from './useGroups';

/** From what need on a larger pack pays. */
export interface BreakEven {
  readonly packId: string;
  /** above this need (L or kg over the span) a purchase with this pack is never dearer than one of smaller packs alone. */
  readonly above: number;
  /** ground on which the doses of the span take that much, m²: that of all doses added up, at their mean rate. */
  readonly groundM2: number;
  /** whether any one dose of the span takes more than that. */
  readonly isFromFirst: boolean;
}

/** Steps of the smaller packs' cost that are looked through. */
const MOST_STEPS = 400;

/**
 * The needs from which each pack pays against all smaller ones, smallest pack first. The cost of a need
 * is a step function for the smaller packs alone, S, and for at least one of the larger with any others, W;
 * the answer is the greatest need at which W is dearer than S (0: none is). It is exact: both only change
 * at sums of packs, and beyond price / (ratio of the best smaller - ratio of the larger) W cannot be dearer.
 * What is on the shelf is left out, and opened packs are taken to keep.
 * @returns only packs that are cheaper by the unit than every smaller one, of uses that share all packs
 */
export function breakEvens(product: Product, need: ProductNeed): readonly BreakEven[] {
  const packs = sizedPacks(product, need.unit);
  const groups = useGroups(product, need.lines, packs);
  const own = new Set(groups.length === 1 ? (groups[0]?.packs ?? []) : []);
  const priced = packs
    .flatMap(({ pack, content }, i) =>
      own.has(i) && pack.price !== null ? [{ id: pack.id, content, price: pack.price }] : [],
    )
    .sort((a, b) => a.content - b.content);
  const total = need.lines.reduce((sum, line) => sum + line.amount, 0);
  const ground = need.lines.reduce((sum, line) => sum + line.areaM2, 0);
  const least = Math.min(...need.lines.map((line) => line.amount));
  return priced.flatMap((large, i): BreakEven[] => {
    const above = paysAbove(large, priced.slice(0, i));
    if (above === null || !(total > 0)) return [];
    const isFromFirst = least > above * (1 + RELATIVE_SLACK);
    return [{ packId: large.id, above, groundM2: (above / total) * ground, isFromFirst }];
  });
}

interface Priced {
  readonly content: number;
  readonly price: number;
}

/** Greatest need at which one larger pack with any others is dearer than smaller ones alone; null: for ever. */
function paysAbove(large: Priced, smaller: readonly Priced[]): number | null {
  const ratio = (pack: Priced) => pack.price / pack.content;
  const best = Math.min(...smaller.map(ratio));
  if (smaller.length === 0 || !(ratio(large) < best * (1 - 1e-9))) return null;
  const limit = large.price / (best - ratio(large));
  const least = Math.min(...smaller.map((pack) => pack.content));
  if (limit / least > MOST_STEPS) return null;
  const sizes = (packs: readonly Priced[]): readonly PackSize[] =>
    packs.map(({ content, price }) => ({ content, score: scoreOfPack('cost', price, content) }));
  const upTo = limit + large.content;
  const small = cheapestSums(sizes(smaller), upTo);
  const all = cheapestSums(sizes([...smaller, large]), upTo);
  const slack = least * 1e-9;
  const cost = (need: number, sums: readonly PackSum[]) =>
    need > slack ? (sums[firstHolding(sums, need - slack)]?.score[0] ?? Number.POSITIVE_INFINITY) : 0;
  // both costs hold from just above one of these sums up to the next
  const steps = [...small.map(({ sum }) => sum), ...all.map(({ sum }) => sum + large.content)]
    .filter((sum) => sum > slack && sum <= limit + slack)
    .sort((a, b) => a - b);
  for (const need of steps.toReversed()) {
    const withLarge = large.price + cost(need - large.content, all);
    if (withLarge > cost(need, small) * (1 + 1e-9)) return need;
  }
  return 0;
}
