import type { Product, VisitDose, Yard } from '../yard/types';
import { applyUse } from './applyUse';
import { checkProduct } from './check';
import { isSprayed } from './sprayRate';

/** A product that can take the place of another in a dose, and the use of its label that fits. */
export interface Substitute {
  readonly product: Product;
  /** id in `otherUses`; null: the first use. */
  readonly useId: string | null;
}

/**
 * What is on the shelf without phosphorus and could feed the same ground instead: labels without fault that
 * carry nitrogen or potassium. Of the same form first, then sprayed for sprayed and spread for spread (by their
 * uses), then by how near the nitrogen is; the use put out by the same applicator is taken where the label has one.
 */
export function productsWithoutPhosphorus(yard: Yard, dose: VisitDose): readonly Substitute[] {
  const now = yard.products.find((product) => product.id === dose.productId);
  if (now === undefined) return [];
  const used = applyUse(now, dose.useId) ?? now;
  const isWet = isSprayed(used);
  const found = yard.products
    .filter(
      ({ id, analysis }) => id !== now.id && analysis.p2o5Pct === 0 && analysis.nPct + analysis.k2oPct > 0,
    )
    .flatMap((product) => {
      const useId = useLike(product, used);
      const label = applyUse(product, useId);
      if (label === null || checkProduct(label).some((issue) => issue.severity === 'error')) return [];
      const score = [
        product.form === now.form ? 0 : 1,
        isSprayed(label) === isWet ? 0 : 1,
        Math.abs(product.analysis.nPct - now.analysis.nPct),
      ];
      return [{ product, useId, score }];
    })
    .sort((a, b) => {
      const at = a.score.findIndex((value, i) => value !== b.score[i]);
      return at < 0 ? 0 : (a.score[at] ?? 0) - (b.score[at] ?? 0);
    });
  return found.map(({ product, useId }) => ({ product, useId }));
}

function useLike(product: Product, used: Product): string | null {
  if (used.applicator === null || product.applicator === used.applicator) return null;
  return product.otherUses.find((use) => use.applicator === used.applicator)?.id ?? null;
}
