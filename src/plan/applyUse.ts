import type { Product, VisitDose } from '../yard/types';

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
