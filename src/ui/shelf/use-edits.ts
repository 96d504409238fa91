import { M_PER_FT } from '../../units/factors';
import { replaceProduct } from '../../yard/edits';
import type {
  Applicator,
  LabelRate,
  Product,
  ProductUse,
  RateBasis,
  UnitSystem,
  Yard,
} from '../../yard/types';
import { isRateEmpty, rateInBasis } from './product-edits';

/** Members that each use of a label has of its own, in the first use as in the others. */
export type UseMembers = Omit<ProductUse, 'id' | 'name'>;

const USE_KEYS = [
  'applicator',
  'rate',
  'carrierLPerM2',
  'carrierIsTotal',
  'spreadDistanceM',
  'waterIn',
  'packIds',
] as const satisfies readonly (keyof UseMembers)[];

/** Members of the first use in a product, its name too. */
export const FIRST_USE_FIELDS: readonly string[] = ['useName', ...USE_KEYS];

/** The members of a use, taken from a product as that use has it. */
export function membersOfUse(product: UseMembers): UseMembers {
  return Object.fromEntries(USE_KEYS.map((key) => [key, product[key]])) as unknown as UseMembers;
}

/**
 * The change of a product that a change of one of its uses comes to.
 * @param useId null: the first use
 * @param change members of the product as the use has it; `useName` is the name of the use
 */
export function changeOfUse(
  product: Product,
  useId: string | null,
  change: Partial<Product>,
): Partial<Product> {
  if (useId === null) return change;
  const { useName, ...rest } = change;
  const own: Partial<ProductUse> = {
    ...Object.fromEntries(Object.entries(rest).filter(([key]) => USE_KEYS.some((each) => each === key))),
    ...(useName !== undefined && { name: useName }),
  };
  return {
    otherUses: product.otherUses.map((use) => (use.id === useId ? { ...use, ...own } : use)),
  };
}

/** A further use that begins as a copy of another, all but its name. */
export function copyOfUse(applied: UseMembers, id: string): ProductUse {
  return { ...membersOfUse(applied), id, name: '' };
}

/**
 * Makes another use of a label its first. The two change places, and every dose keeps the use it goes by.
 */
export function makeUseFirst(yard: Yard, productId: string, useId: string): Yard {
  const product = yard.products.find((each) => each.id === productId);
  const index = product?.otherUses.findIndex((use) => use.id === useId) ?? -1;
  const next = product?.otherUses[index];
  if (!product || !next) return yard;
  const before: ProductUse = { ...membersOfUse(product), id: useId, name: product.useName };
  const { id: _, name, ...members } = next;
  const turned = replaceProduct(yard, {
    ...product,
    ...members,
    useName: name,
    otherUses: product.otherUses.with(index, before),
  });
  return withUseIds(turned, productId, (id) => (id === null ? useId : id === useId ? null : id));
}

/** Takes a use off a label; doses that went by it go by the first. */
export function removeUse(yard: Yard, productId: string, useId: string): Yard {
  const product = yard.products.find((each) => each.id === productId);
  if (!product?.otherUses.some((use) => use.id === useId)) return yard;
  const otherUses = product.otherUses.filter((use) => use.id !== useId);
  const left = replaceProduct(yard, { ...product, otherUses });
  return withUseIds(left, productId, (id) => (id === useId ? null : id));
}

/** Names of the visits and programs with a dose that goes by a use. */
export function namesWithUse(yard: Yard, productId: string, useId: string): readonly string[] {
  const goesBy = (dose: { readonly productId: string; readonly useId: string | null }) =>
    dose.productId === productId && dose.useId === useId;
  return [...yard.visits, ...yard.programs]
    .filter((one) => [...one.doses].some(goesBy))
    .map((one) => one.name);
}

interface DoseHolder<D> {
  readonly doses: readonly D[];
}

function withUseIds(yard: Yard, productId: string, turn: (useId: string | null) => string | null): Yard {
  const turned = <
    D extends { readonly productId: string; readonly useId: string | null },
    T extends DoseHolder<D>,
  >(
    one: T,
  ): T => {
    const doses = one.doses.map((dose) => {
      const useId = dose.productId === productId ? turn(dose.useId) : dose.useId;
      return useId === dose.useId ? dose : { ...dose, useId };
    });
    return doses.every((dose, i) => dose === one.doses[i]) ? one : { ...one, doses };
  };
  return { ...yard, visits: yard.visits.map(turned), programs: yard.programs.map(turned) };
}

/** Feet, and the round metres of the same size. */
const USUAL_SPREAD: Readonly<Record<Applicator, Readonly<Record<UnitSystem, number>>>> = {
  'hose-end': { us: 2 * M_PER_FT, metric: 0.6 },
  'tank-sprayer': { us: 1 * M_PER_FT, metric: 0.3 },
  'broadcast-spreader': { us: 5 * M_PER_FT, metric: 1.5 },
  'drop-spreader': { us: 0.5 * M_PER_FT, metric: 0.15 },
  'by-hand': { us: 2 * M_PER_FT, metric: 0.6 },
};

/**
 * How far past the edge aimed at product usually lands, m: about 2 ft from a hose-end bottle, 1 ft from a
 * tank sprayer, 5 ft from a broadcast spreader, 6 in from a drop spreader, 2 ft by hand; round in the units
 * shown. Common practice, no source.
 */
export function usualSpreadM(applicator: Applicator, units: UnitSystem): number {
  return USUAL_SPREAD[applicator][units];
}

const DRY: readonly Applicator[] = ['broadcast-spreader', 'drop-spreader', 'by-hand'];

/**
 * How labels for what puts the product out usually give the rate; null: whatever the label says. Common
 * practice, no source.
 */
export function usualBasis(product: Product, applicator: Applicator): RateBasis | null {
  if (product.form === 'mulch' || product.form === 'topdressing') return null;
  if (applicator === 'hose-end') return 'area-per-container';
  const first = product.packs[0]?.content.unit;
  if (applicator === 'tank-sprayer') return first === 'kg' ? 'mass-per-area' : 'volume-per-area';
  return first === 'L' ? null : 'mass-per-area';
}

/**
 * What choosing an applicator changes in a use. The distance follows while nobody typed one. A rate that is
 * empty, or still the copy of another use's, is said the way labels for that applicator say it.
 * @param product as the use has it; @param others rates of the other uses
 */
export function withApplicator(
  product: Product,
  applicator: Applicator | null,
  others: readonly LabelRate[],
  units: UnitSystem,
): Partial<Product> {
  if (applicator === null) return { applicator };
  const isUsual = Object.values(USUAL_SPREAD).some(({ us, metric }) =>
    [us, metric].some((usual) => Math.abs(usual - product.spreadDistanceM) < 1e-9),
  );
  const spread = isUsual ? { spreadDistanceM: usualSpreadM(applicator, units) } : {};
  const isOpen = isRateEmpty(product.rate) || others.some((rate) => isSameRate(rate, product.rate));
  if (!isOpen) return { applicator, ...spread };
  const basis = usualBasis(product, applicator);
  const rate = basis === null ? product.rate : rateInBasis(product, basis);
  const isMixed = applicator === 'tank-sprayer';
  return {
    applicator,
    ...spread,
    // a rate that cannot be said otherwise stays as it was copied
    rate: isRateEmpty(rate) && !isRateEmpty(product.rate) ? product.rate : rate,
    ...(!isMixed && { carrierLPerM2: null }),
  };
}

/** True for what is put out dry, without water to carry it. */
export function isPutOutDry(applicator: Applicator | null): boolean {
  return applicator !== null && DRY.includes(applicator);
}

function isSameRate(a: LabelRate, b: LabelRate): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
