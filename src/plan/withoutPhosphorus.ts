import type { Product, VisitDose, Yard } from '../yard/types';
import { applyUse } from './applyUse';
import { checkProduct } from './check';
import { isLiquid } from './rate';

/** A product that can take the place of another in a dose, and the use of its label that fits. */
export interface Substitute {
  readonly product: Product;
  /** id in `otherUses`; null: the first use. */
  readonly useId: string | null;
}

/**
 * What is on the shelf without phosphorus and could feed the same ground instead: labels without fault that
 * carry nitrogen or potassium. Of the same form first, then sprayed for sprayed and spread for spread, then by
 * how near the nitrogen is; the use put out by the same applicator is taken where the label has one.
 */
export function productsWithoutPhosphorus(yard: Yard, dose: VisitDose): readonly Substitute[] {
  const now = yard.products.find((product) => product.id === dose.productId);
  if (now === undefined) return [];
  const used = applyUse(now, dose.useId) ?? now;
  const score = ({ product }: Substitute): readonly number[] => [
    product.form === now.form ? 0 : 1,
    isSprayed(product) === isSprayed(now) ? 0 : 1,
    Math.abs(product.analysis.nPct - now.analysis.nPct),
  ];
  return yard.products
    .filter(
      ({ id, analysis }) => id !== now.id && analysis.p2o5Pct === 0 && analysis.nPct + analysis.k2oPct > 0,
    )
    .map((product): Substitute => ({ product, useId: useLike(product, used) }))
    .filter(({ product, useId }) => {
      const label = applyUse(product, useId);
      return label !== null && checkProduct(label).every((issue) => issue.severity !== 'error');
    })
    .sort((a, b) => {
      const [first, second] = [score(a), score(b)];
      const at = first.findIndex((value, i) => value !== second[i]);
      return at < 0 ? 0 : (first[at] ?? 0) - (second[at] ?? 0);
    });
}

function isSprayed(product: Product): boolean {
  return isLiquid(product) || product.form === 'soluble-powder';
}

function useLike(product: Product, used: Product): string | null {
  if (used.applicator === null || product.applicator === used.applicator) return null;
  return product.otherUses.find((use) => use.applicator === used.applicator)?.id ?? null;
}
