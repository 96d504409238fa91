import highsLoader from 'highs';
import { planPurchase } from '../../src/buy/planPurchase';
import { BUY_GOALS } from '../../src/buy/types';
import { purchaseCase } from '../fixtures/purchaseCases';
import { purchaseModel } from '../fixtures/purchaseModel';

/**
 * The purchase of invented products (up to 5 pack sizes, several uses, stock, opened life) by all three
 * goals, beside HiGHS on the same three programs; its reading of the text is counted in.
 */
export async function benchBuy(
  report: (label: string, times: readonly number[]) => void,
  say: (line: string) => void,
): Promise<void> {
  const cases = Array.from({ length: 200 }, (_, seed) => purchaseCase(seed));
  const highs = await highsLoader();
  const models = cases.map((one) => BUY_GOALS.map((goal) => purchaseModel(one, goal)));
  const timed = (work: (index: number) => void) =>
    cases.map((_, i) => {
      const start = performance.now();
      work(i);
      return performance.now() - start;
    });
  const ours = (i: number) => {
    const one = cases[i];
    if (one) planPurchase(one.product, one.need);
  };
  const theirs = (i: number) => {
    for (const model of models[i] ?? []) highs.solve(model, { mip_rel_gap: 0, mip_abs_gap: 0.5 });
  };
  // once to warm up
  timed(ours);
  say(`${cases.length} purchases at random, three goals each`);
  report('purchase of one product (ours)', timed(ours));
  report('purchase of one product (HiGHS, mixed integer program)', timed(theirs));
}
