import highsLoader, { type Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { planPurchase } from '../../src/buy/planPurchase';
import { BUY_GOALS, type BuyGoal, type PurchasePlan } from '../../src/buy/types';
import { type PurchaseCase, purchaseCase } from '../fixtures/purchaseCases';
import { GRID, purchaseModel } from '../fixtures/purchaseModel';

/*
 * The purchase against HiGHS (Huangfu & Hall 2018, doi 10.1007/s12532-017-0130-5), a solver of mixed
 * integer programs, on 1,000 invented cases.
 */

const CASES = 1000;
/** Every so many cases the ties are held too. */
const TIES_EVERY = 19;

const figureOf: Readonly<Record<BuyGoal, (plan: PurchasePlan) => number>> = {
  cost: (plan) => plan.cost ?? Number.NaN,
  packs: (plan) => plan.packCount,
  left: (plan) => plan.bought,
};
const TIES: Readonly<Record<BuyGoal, readonly BuyGoal[]>> = {
  cost: ['cost', 'packs', 'left'],
  packs: ['packs', 'cost', 'left'],
  left: ['left', 'cost', 'packs'],
};

let highs: Highs;
beforeAll(async () => {
  highs = await highsLoader();
});

/** @returns null where the need cannot be served */
function least(model: string): number | null {
  const { Status, ObjectiveValue } = highs.solve(model, { mip_rel_gap: 0, mip_abs_gap: 0.5 });
  if (Status === 'Infeasible') return null;
  expect(Status, model).toBe('Optimal');
  // whole by the model: hundredths, or packs
  return Math.round(ObjectiveValue);
}

/** What is drawn covers every visit, what is left adds up, and no container is drawn on beyond its day. */
function expectSound({ product, need }: PurchaseCase, plan: PurchasePlan): void {
  const content = new Map(product.packs.map((pack) => [pack.id, pack.content.value]));
  for (const visitId of new Set(need.lines.map((line) => line.visitId))) {
    const wanted = need.lines
      .filter((line) => line.visitId === visitId)
      .reduce((sum, line) => sum + line.amount, 0);
    const drawn = plan.openings
      .filter((opening) => opening.visitId === visitId)
      .flatMap((opening) => opening.draws)
      .reduce((sum, draw) => sum + draw.taken, 0);
    expect(drawn).toBeCloseTo(wanted, 4);
  }
  const carried = plan.carried.reduce((sum, pack) => sum + pack.level * (content.get(pack.packId) ?? 0), 0);
  expect(carried + plan.spoiled).toBeCloseTo(plan.left, 4);
  const opened = plan.openings.flatMap((opening) => opening.draws).filter((draw) => draw.isOpened);
  expect(opened.filter((draw) => draw.from === 'bought').length).toBe(plan.packCount);
  const ordered = plan.orders.flatMap((order) => order.packs).reduce((sum, pack) => sum + pack.count, 0);
  expect(ordered).toBe(plan.packCount);
}

describe('the purchase against a solver of mixed integer programs', () => {
  it(`finds the same optimum in ${CASES} cases at random`, { timeout: 240_000 }, () => {
    let none = 0;
    for (let seed = 0; seed < CASES; seed++) {
      const one = purchaseCase(seed);
      const { plans } = planPurchase(one.product, one.need);
      for (const goal of BUY_GOALS) if (plans[goal] !== null) expectSound(one, plans[goal]);
      // the solver takes ten times as long as all else: one goal a case, in turn
      const goal = BUY_GOALS[seed % BUY_GOALS.length] as BuyGoal;
      const plan = plans[goal];
      if (plan === null) {
        none++;
        expect(least(purchaseModel(one, goal)), `case ${seed}, ${goal}`).toBeNull();
        continue;
      }
      expect(plan.isProven, `case ${seed}`).toBe(true);
      const isPriced = one.product.packs.every((pack) => pack.price !== null);
      const ties = TIES[goal].filter((tie) => tie === goal || tie !== 'cost' || isPriced);
      const held: [BuyGoal, number][] = [];
      for (const tie of seed % TIES_EVERY === 0 ? ties : [goal]) {
        const best = least(purchaseModel(one, tie, held));
        const scale = tie === 'packs' ? 1 : GRID;
        expect(figureOf[tie](plan) * scale, `case ${seed}, ${goal}, by ${tie}`).toBeCloseTo(best ?? -1, 6);
        held.push([tie, best ?? -1]);
      }
    }
    // a pack without a price can leave a need that only it could serve
    expect(none).toBeLessThan(CASES / 20);
  });
});
