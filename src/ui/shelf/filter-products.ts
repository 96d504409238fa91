import { usesOf } from '../../plan/applyUse';
import { analysisWords, FORM_WORDS, useName } from '../../words/productWords';
import type { Product } from '../../yard/types';

/** Products whose name, form, analysis, uses, contents or note hold every word typed, in any order. */
export function filterProducts(products: readonly Product[], typed: string): readonly Product[] {
  const words = typed
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  if (words.length === 0) return products;
  return products.filter((product) => {
    const text = textOf(product);
    return words.every((word) => text.includes(word));
  });
}

function textOf(product: Product): string {
  return [
    product.name,
    FORM_WORDS[product.form],
    analysisWords(product),
    ...usesOf(product).map((use) => useName(use.product)),
    ...Object.keys(product.analysis.elementsPct),
    ...product.ingredients.map((one) => one.name),
    product.note,
  ]
    .join(' ')
    .toLowerCase();
}
