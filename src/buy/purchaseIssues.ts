import { applyUse } from '../plan/applyUse';
import type { Issue, Product } from '../yard/types';
import type { BuyGoal, ProductNeed, PurchasePlan } from './types';
import { sizedPacks, useGroups } from './useGroups';

/** What a person should know before they buy; amounts are told by the screen. */
export function purchaseIssues(
  product: Product,
  need: ProductNeed,
  plans: Readonly<Record<BuyGoal, PurchasePlan | null>>,
): readonly Issue[] {
  const issues: Issue[] = [];
  const tell = (code: string, severity: Issue['severity'], message: string, path: string) =>
    issues.push({ code, severity, message, place: { productId: product.id, path } });
  const packs = sizedPacks(product, need.unit);
  const groups = useGroups(product, need.lines, packs);
  if (packs.length < product.packs.length) {
    const message =
      'A pack size is told in the other measure (weight or volume) and the density is not known, so it is left out.';
    tell('buy-pack-no-density', 'warning', message, 'densityKgPerL');
  }
  const unread = need.unreadDoseIds.length;
  if (unread > 0) {
    const doses = unread === 1 ? 'One dose is' : `${unread} doses are`;
    const message = `${doses} measured otherwise than the first (weight or volume) and the density is not known, so nothing is bought for ${unread === 1 ? 'it' : 'them'}.`;
    tell('buy-dose-no-density', 'warning', message, 'densityKgPerL');
  }
  if (groups.some((group) => group.packs.length === 0)) {
    const message = 'A use draws on no pack size of the label; name one on the shelf.';
    tell('buy-use-no-pack', 'error', message, 'packIds');
  }
  const usable = new Set(groups.flatMap((group) => group.packs));
  const priceless = packs.filter(({ pack }, i) => usable.has(i) && pack.price === null);
  if (priceless.length > 0) {
    const isNone = priceless.length === usable.size;
    const message = isNone
      ? 'No pack has a price, so there is no least cost; type one below.'
      : 'A pack without a price has no part in least cost; type its price below.';
    tell('buy-no-price', 'note', message, 'packs');
  }
  if (
    need.lines.some((line) => line.date === null) &&
    (product.openedLifeDays ?? product.shelfLifeDays) !== null
  ) {
    const message =
      'Visits without a day are taken to fall on the last day of the others: how long packs keep is not held against them.';
    tell('buy-undated', 'note', message, 'openedLifeDays');
  }
  if (product.canPour && isRefilled(product, need, plans)) {
    const message =
      'A use of this label has containers of its own: filling one from another pack takes an empty one, rinsed and with its label on, and a label that allows it.';
    tell('buy-refill', 'note', message, 'canPour');
  }
  if (Object.values(plans).some((plan) => plan !== null && !plan.isProven)) {
    const message = 'So many packs are needed that not every choice was tried; a better one may exist.';
    tell('buy-not-proven', 'note', message, 'packs');
  }
  return issues;
}

/** Whether a plan buys packs that a use of the span does not name. */
function isRefilled(
  product: Product,
  { lines }: ProductNeed,
  plans: Readonly<Record<BuyGoal, PurchasePlan | null>>,
): boolean {
  const named = lines
    .map(({ useId }) => applyUse(product, useId)?.packIds ?? null)
    .filter((ids) => ids !== null);
  const bought = Object.values(plans).flatMap((plan) => plan?.packs ?? []);
  return named.some((ids) => bought.some(({ packId }) => !ids.includes(packId)));
}
