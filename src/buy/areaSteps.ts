import type { Product } from '../yard/types';
import { planPurchase } from './planPurchase';
import type { BuyGoal, ProductNeed, PurchasePlan } from './types';

/** How a purchase moves with the error of the measured ground. */
export interface AreaStep {
  /** relative change of the ground, within ±2 standard deviations, at which it moves; signed. */
  readonly change: number;
  readonly plan: PurchasePlan;
}

/** Effort of one purchase from which no others are looked for: at 20 purchases it would keep a person waiting. */
const MOST_EFFORT = 200;
/** How near a change is found, as a share of the ground: finer than it is shown. */
const NEAR = 5e-5;

/**
 * The purchases of a goal when the ground is larger or smaller than measured, where they differ from the one
 * as measured; the nearest change each way within ±2 standard deviations. All ground of a product is taken
 * to err together, each dose by its own standard deviation.
 * @returns null when it would take too long: many visits of several uses that share stock which spoils
 */
export function areaSteps(product: Product, need: ProductNeed, goal: BuyGoal): readonly AreaStep[] | null {
  const measured = planPurchase(product, need, [goal]).plans[goal];
  const widest = Math.max(
    0,
    ...need.lines.map(({ areaM2, areaSigmaM2 }) => (areaM2 > 0 ? (2 * areaSigmaM2) / areaM2 : 0)),
  );
  if (measured === null || !(widest > 0)) return [];
  // a shelf that no use competes for takes each visit a few times
  if (measured.effort > Math.max(MOST_EFFORT, 4 * need.lines.length)) return null;
  /** @param part of two standard deviations, -1 to 1 */
  const at = (part: number) => planPurchase(product, scaled(need, part), [goal]).plans[goal];
  const differs = (plan: PurchasePlan | null) => plan !== null && keyOf(plan) !== keyOf(measured);
  return [-1, 1].flatMap((way): AreaStep[] => {
    let [same, other] = [0, 1];
    let plan = at(way);
    if (plan === null || !differs(plan)) return [];
    while ((other - same) * widest > NEAR) {
      const middle = (same + other) / 2;
      const there = at(way * middle);
      if (there !== null && differs(there)) [other, plan] = [middle, there];
      else same = middle;
    }
    return [{ change: way * other * widest, plan }];
  });
}

function scaled(need: ProductNeed, part: number): ProductNeed {
  const lines = need.lines.map((line) => {
    const share = line.areaM2 > 0 ? (2 * line.areaSigmaM2) / line.areaM2 : 0;
    return { ...line, amount: line.amount * Math.max(0, 1 + part * share) };
  });
  return { ...need, lines: lines.filter((line) => line.amount > 0) };
}

function keyOf(plan: PurchasePlan): string {
  return plan.packs.map(({ packId, count }) => `${packId} ${count}`).join();
}
