import { SCHEMA_VERSION } from '../yard/defaults';
import type { Product } from '../yard/types';

/** The member by which a file of labels is known. */
export const LABELS_MEMBER = 'measured-yard-labels';

/**
 * Labels as the text of a JSON file, one product a line: `measured-yard-labels` holds the version of the
 * file form (that of the yard's), `products` the labels as a yard has them, amounts SI.
 * @param withStock false: prices and what is on hand are left out
 */
export function writeLabels(products: readonly Product[], withStock: boolean): string {
  const list = products.map((product) => JSON.stringify(withStock ? product : withoutStock(product)));
  return `{\n"${LABELS_MEMBER}": {"version": ${SCHEMA_VERSION}},\n"products": [\n${list.join(',\n')}\n]\n}\n`;
}

/** The label alone: no prices, nothing on hand. */
export function withoutStock(product: Product): Product {
  return { ...product, packs: product.packs.map((pack) => ({ ...pack, price: null })), onHand: {} };
}

/** A file name for labels: of the product where it is but one. @param ending such as ".json" */
export function labelsFileName(products: readonly Product[], ending: string): string {
  const [only] = products;
  const words = products.length === 1 && only ? `label ${only.name}` : 'labels';
  const stem = words
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem}${ending}`;
}
