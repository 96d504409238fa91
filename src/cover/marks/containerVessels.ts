import { packsOfUse } from '../../plan/applyUse';
import { RELATIVE_SLACK, wholePacks } from '../../plan/containers';
import { openFromStock } from '../../plan/openFromStock';
import { convertAmount } from '../../plan/rate';
import type { DoseFigures } from '../../plan/types';
import type { Amount, Pack, Product } from '../../yard/types';
import { type Drawn, upToMost } from './mostVessels';
import { type Draw, vesselsOfDraws } from './vesselsOfDraws';

/** An opened container with less than this share of a full one in it counts as empty. */
const SLIVER = 1e-3;

/** Containers of one size, before they are told apart. */
interface Row {
  readonly count: number;
  readonly draws: () => readonly Draw[];
}

/**
 * Containers that a dose is drawn from, in order: opened ones on the shelf, the emptiest first; then closed
 * ones on the shelf, those used up whole before the one that is left opened (as `takeFromStock` draws them);
 * then new ones of one size: the smallest that alone holds what is missing, else the largest. The size a
 * label's coverage is told by goes before other sizes.
 * @param onHand packs on hand when the dose's turn comes, by pack id (see `stockAtDose`); null: none
 * @returns empty where the use has no pack that can be measured against the dose (none at all, or no density), and where they would be
 * too many (see `upToMost`)
 */
export function containerVessels(dose: DoseFigures, onHand: Product['onHand'] | null): Drawn {
  const { amount } = dose;
  const product = { ...dose.product, onHand: withoutSlivers(onHand ?? {}) };
  const fullOf = (pack: Pack) => convertAmount(pack.content, amount.unit, product.densityKgPerL)?.value ?? 0;
  const found = openFromStock(product, amount);
  const opened = (found?.opened ?? []).map(({ pack, levelAfter }) => {
    const count = product.onHand[pack.id] ?? 0;
    const full = fullOf(pack);
    return { packId: pack.id, full, start: (count - Math.floor(count + RELATIVE_SLACK)) * full, levelAfter };
  });
  const rows: Row[] = [{ count: opened.length, draws: () => opened.toSorted((a, b) => a.start - b.start) }];
  let drawn = opened.reduce((sum, draw) => sum + draw.start - draw.levelAfter * draw.full, 0);
  const closed = (found?.closed ?? []).toSorted((a, b) => fullOf(b.pack) - fullOf(a.pack));
  for (const { pack, count, lastLeft } of closed.toSorted(
    (a, b) => Math.sign(a.lastLeft) - Math.sign(b.lastLeft),
  )) {
    rows.push(closedOnes(pack, fullOf(pack), count, lastLeft));
    drawn += fullOf(pack) * (count - lastLeft);
  }
  const missing = found ? found.missing.map(({ pack }) => pack) : packsOfUse(product);
  if (!found || missing.length > 0) rows.push(...newOnes(product, missing, fullOf, amount, drawn));
  const count = rows.reduce((sum, row) => sum + row.count, 0);
  return upToMost(count, () =>
    vesselsOfDraws(
      'container',
      rows.flatMap((row) => row.draws()),
      amount,
      dose.areaM2,
    ),
  );
}

/** What is on hand, without what is left in packs that are all but empty. */
function withoutSlivers(onHand: Product['onHand']): Product['onHand'] {
  return Object.fromEntries(
    Object.entries(onHand).map(([id, count]) => {
      const whole = Math.floor(count + RELATIVE_SLACK);
      return [id, count - whole < SLIVER ? whole : count];
    }),
  );
}

function closedOnes(pack: Pack, full: number, count: number, lastLeft: number): Row {
  const drawOf = (_: unknown, i: number): Draw => ({
    packId: pack.id,
    full,
    start: full,
    levelAfter: i === count - 1 ? lastLeft : 0,
  });
  return { count, draws: () => Array.from({ length: count }, drawOf) };
}

/** New containers of one size for what is not on hand. */
function newOnes(
  product: Product,
  packs: readonly Pack[],
  fullOf: (pack: Pack) => number,
  amount: Amount,
  drawn: number,
): readonly Row[] {
  const need = amount.value - drawn;
  const sizes = packs.filter((pack) => fullOf(pack) > 0).toSorted((a, b) => fullOf(a) - fullOf(b));
  const { rate } = product;
  const told = rate.basis === 'area-per-container' ? sizes.find(({ id }) => id === rate.packId) : undefined;
  const pack = told ?? sizes.find((each) => fullOf(each) >= need * (1 - RELATIVE_SLACK)) ?? sizes.at(-1);
  if (!pack || !(need > 0)) return [];
  const full = fullOf(pack);
  const count = wholePacks(need / full);
  return [closedOnes(pack, full, count, Math.max(0, count - need / full))];
}
