import type { Amount } from '../yard/types';
import type { LaidDose } from './types';

/**
 * What is laid of a product on one zone, per m², in both measures. Where a dose of it cannot be read in a
 * measure the sum there is the part that is known, and `is…Whole` is false: at least that much.
 */
export interface ZoneAmount {
  readonly kgPerM2: number;
  readonly lPerM2: number;
  readonly isKgWhole: boolean;
  readonly isLWhole: boolean;
}

/** Nothing laid down. */
export const NOTHING: ZoneAmount = { kgPerM2: 0, lPerM2: 0, isKgWhole: true, isLWhole: true };

/** Two amounts on the same ground together. */
export function addAmounts(a: ZoneAmount, b: ZoneAmount): ZoneAmount {
  return {
    kgPerM2: a.kgPerM2 + b.kgPerM2,
    lPerM2: a.lPerM2 + b.lPerM2,
    isKgWhole: a.isKgWhole && b.isKgWhole,
    isLWhole: a.isLWhole && b.isLWhole,
  };
}

/** The amount in one measure, per m², and whether that is all of it. */
export function readAmount(
  { kgPerM2, lPerM2, isKgWhole, isLWhole }: ZoneAmount,
  unit: Amount['unit'],
): { readonly value: number; readonly isWhole: boolean } {
  return unit === 'kg' ? { value: kgPerM2, isWhole: isKgWhole } : { value: lPerM2, isWhole: isLWhole };
}

/** A product of a visit by zone, and the most that it lays on any zone. */
export interface ProductGround {
  readonly byZone: ReadonlyMap<string, ZoneAmount>;
  readonly most: ZoneAmount;
}

const NO_GROUND: ProductGround = { byZone: new Map(), most: NOTHING };
const kept = new WeakMap<readonly LaidDose[], Map<string, ProductGround>>();

/**
 * What a visit lays of one product on each zone, over all its doses, each at the rate of its own use: shares of
 * different label rates do not add up, amounts do. Doses that laid nothing, and zones without any, are left out.
 * Worked out once for each list of doses.
 */
export function productByZone(laid: readonly LaidDose[], productId: string): ProductGround {
  const known = kept.get(laid);
  const before = known?.get(productId);
  if (before) return before;
  const made = sumProduct(laid, productId);
  if (known) known.set(productId, made);
  else kept.set(laid, new Map([[productId, made]]));
  return made;
}

function sumProduct(laid: readonly LaidDose[], productId: string): ProductGround {
  const byZone = new Map<string, ZoneAmount>();
  let most = NOTHING;
  for (const dose of laid) {
    const { kgPerM2, lPerM2, zones } = dose;
    if (dose.productId !== productId || (kgPerM2 === 0 && lPerM2 === 0)) continue;
    const own: ZoneAmount = {
      kgPerM2: kgPerM2 ?? 0,
      lPerM2: lPerM2 ?? 0,
      isKgWhole: kgPerM2 !== null,
      isLWhole: lPerM2 !== null,
    };
    for (const { zoneId } of zones) byZone.set(zoneId, addAmounts(byZone.get(zoneId) ?? NOTHING, own));
    if (zones.length > 0) most = addAmounts(most, own);
  }
  return byZone.size === 0 ? NO_GROUND : { byZone, most };
}
