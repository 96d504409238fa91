import type { Issue, Product } from '../yard/types';

/** An issue on one field of a label: "Name: sentence"; @param path in Product, such as `packs[1].content` */
export function labelIssue(
  product: Product,
  code: string,
  path: string,
  sentence: string,
  severity: Issue['severity'] = 'error',
): Issue {
  const name = product.name.trim() === '' ? 'This product' : product.name;
  return { code, severity, message: `${name}: ${sentence}`, place: { productId: product.id, path } };
}
