import type { Pack, Product, VisitDose } from '../yard/types';

/**
 * The product as one use of its label has it: rate, carrier, applicator, spread distance, watering in and
 * packs of that use. Everything planned from a product is planned from this.
 * @param useId an id in `otherUses`; null: the first use, the product itself
 * @returns null when the label has no such use (any more)
 */
export function applyUse(product: Product, useId: string | null): Product | null {
  if (useId === null) return product;
  const use = product.otherUses.find((each) => each.id === useId);
  if (use === undefined) return null;
  const { id: _id, name, ...members } = use;
  return { ...product, ...members, useName: name };
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
    const applied = applyUse(product, use.id);
    return applied ? [{ id: use.id, name: use.name, product: applied }] : [];
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
