import type { Product } from '../yard/types';

/** Whether a product marks hardscape: its label says so, or it holds iron, which rusts where it lies (common practice, no source). */
export function isStaining({
  stainsHardscape,
  analysis,
}: Pick<Product, 'stainsHardscape' | 'analysis'>): boolean {
  return stainsHardscape || (analysis.elementsPct.Fe ?? 0) > 0;
}
