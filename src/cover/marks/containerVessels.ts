import { packsOfUse } from '../../plan/applyUse';
import { RELATIVE_SLACK, wholePacks } from '../../plan/containers';
import { openFromStock } from '../../plan/openFromStock';
import { convertAmount } from '../../plan/rate';
import type { DoseFigures } from '../../plan/types';
import type { Amount, Pack, Product } from '../../yard/types';
import type { Vessel } from '../passTypes';
import { type Draw, vesselsOfDraws } from './vesselsOfDraws';

/**
 * Containers that a dose is drawn from, in order: opened ones on the shelf, the emptiest first; then closed
 * ones on the shelf, those used up whole before the one that is left opened (as `takeFromStock` draws them);
 * then new ones of one size: the smallest that alone holds what is missing, else the largest. The size a
 * label's coverage is told by goes before other sizes.
 * @param onHand packs on hand when the dose's turn comes, by pack id (see `stockAtDose`); null: none
 * @returns empty where the use has no pack that can be measured against the dose (none at all, or no density)
 */
export function containerVessels(dose: DoseFigures, onHand: Product['onHand'] | null): readonly Vessel[] {
  const { amount } = dose;
  const product = { ...dose.product, onHand: onHand ?? {} };
  const fullOf = (pack: Pack) => convertAmount(pack.content, amount.unit, product.densityKgPerL)?.value ?? 0;
  const draws: Draw[] = [];
  const found = openFromStock(product, amount);
  const opened = (found?.opened ?? []).map(({ pack, levelAfter }) => {
    const count = product.onHand[pack.id] ?? 0;
    const full = fullOf(pack);
    return { packId: pack.id, full, start: (count - Math.floor(count + RELATIVE_SLACK)) * full, levelAfter };
  });
  draws.push(...opened.toSorted((a, b) => a.start - b.start));
  const closed = (found?.closed ?? []).toSorted((a, b) => fullOf(b.pack) - fullOf(a.pack));
  for (const { pack, count, lastLeft } of closed.toSorted(
    (a, b) => Math.sign(a.lastLeft) - Math.sign(b.lastLeft),
  ))
    draws.push(...closedOnes(pack, fullOf(pack), count, lastLeft));
  const missing = found ? found.missing.map(({ pack }) => pack) : packsOfUse(product);
  const drawn = draws.reduce((sum, draw) => sum + draw.start - draw.levelAfter * draw.full, 0);
  if (!found || missing.length > 0) draws.push(...newOnes(product, missing, fullOf, amount, drawn));
  return vesselsOfDraws('container', draws, amount, dose.areaM2);
}

function closedOnes(pack: Pack, full: number, count: number, lastLeft: number): Draw[] {
  return Array.from({ length: count }, (_, i) => ({
    packId: pack.id,
    full,
    start: full,
    levelAfter: i === count - 1 ? lastLeft : 0,
  }));
}

/** New containers of one size for what is not on hand. */
function newOnes(
  product: Product,
  packs: readonly Pack[],
  fullOf: (pack: Pack) => number,
  amount: Amount,
  drawn: number,
): Draw[] {
  const need = amount.value - drawn;
  const sizes = packs.filter((pack) => fullOf(pack) > 0).toSorted((a, b) => fullOf(a) - fullOf(b));
  const { rate } = product;
  const told = rate.basis === 'area-per-container' ? sizes.find(({ id }) => id === rate.packId) : undefined;
  const pack = told ?? sizes.find((each) => fullOf(each) >= need * (1 - RELATIVE_SLACK)) ?? sizes.at(-1);
  if (!pack || !(need > 0)) return [];
  const full = fullOf(pack);
  const count = wholePacks(need / full);
  return closedOnes(pack, full, count, Math.max(0, count - need / full));
}
