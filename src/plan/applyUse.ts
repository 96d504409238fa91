import type { Pack, Product, VisitDose } from '../yard/types';

/** Uses applied before: a season asks for the same ones thousands of times. */
const applied = new WeakMap<Product, Map<string, Product>>();

/**
 * The product as one use of its label has it: rate, carrier, applicator, spread distance, watering in and
 * packs of that use. Everything planned from a product is planned from this.
 * @param useId an id in `otherUses`; null: the first use, the product itself
 * @returns null when the label has no such use (any more); the same object for the same product and use
 */
export function applyUse(product: Product, useId: string | null): Product | null {
  if (useId === null) return product;
  const kept = applied.get(product)?.get(useId);
  if (kept !== undefined) return kept;
  const use = product.otherUses.find((each) => each.id === useId);
  if (use === undefined) return null;
  const { id: _id, name, ...members } = use;
  const made: Product = { ...product, ...members, useName: name };
  applied.set(product, (applied.get(product) ?? new Map<string, Product>()).set(useId, made));
  return made;
}

/** The product of a dose, by the use it names; null when product or use is gone. */
export function productOfDose(products: readonly Product[], dose: VisitDose): Product | null {
  const product = products.find((each) => each.id === dose.productId);
  return product ? applyUse(product, dose.useId) : null;
}

/** One use of a label. */
export interface LabelUse {
  /** null: the first use; else its id in `otherUses`. */
  readonly id: string | null;
  /** as typed; may be empty (`useName` of words/productWords has words for it then). */
  readonly name: string;
  /** the product as this use has it. */
  readonly product: Product;
}

/** All uses of a label, the first one first. */
export function usesOf(product: Product): readonly LabelUse[] {
  const others = product.otherUses.flatMap((use): LabelUse[] => {
    const own = applyUse(product, use.id);
    return own ? [{ id: use.id, name: use.name, product: own }] : [];
  });
  return [{ id: null, name: product.useName, product }, ...others];
}

/**
 * Packs that a use opens: those its label names for it, or all.
 * @param product as the use has it (see `applyUse`)
 */
export function packsOfUse(product: Product): readonly Pack[] {
  const { packs, packIds } = product;
  return packIds === null ? packs : packs.filter((pack) => packIds.includes(pack.id));
}

/** Packs whose content a use may draw on: its own, and where the label lets it be poured together, every one. */
export function packsToDrawOn(product: Product): readonly Pack[] {
  return product.canPour ? product.packs : packsOfUse(product);
}
