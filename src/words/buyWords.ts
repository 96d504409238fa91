import type { AreaStep } from '../buy/areaSteps';
import type { BreakEven } from '../buy/breakEven';
import { leftOver } from '../buy/leftOver';
import type {
  BuyGoal,
  CarriedPack,
  Draw,
  PackCount,
  ProductPurchase,
  PurchasePlan,
  SpokenFor,
  UnitCosts,
} from '../buy/types';
import { KG_PER_LB, M2_PER_1000_SQFT } from '../units/factors';
import { areaUnit, formatArea, formatMoney, formatPercent, placeOf } from '../units/format';
import type { Amount, Nutrient, Product, UnitSystem } from '../yard/types';
import { amountWords, NUTRIENT_WORDS } from './productWords';
import { dayWords } from './seasonWords';

const NB = '\u00a0';

export const GOAL_WORDS: Readonly<Record<BuyGoal, string>> = {
  cost: 'Least cost',
  packs: 'Fewest packs',
  left: 'Least left over',
};

/** What a pack size is called: "2.5 gal". */
export function packName(product: Product, packId: string, units: UnitSystem): string {
  const pack = product.packs.find((each) => each.id === packId);
  return pack ? amountWords(product, pack.content, units) : 'a size no longer on the label';
}

/** "1 × 2.5 gal, 2 × 32 fl oz"; "nothing" where all is on the shelf. */
export function packsToBuyWords(product: Product, packs: readonly PackCount[], units: UnitSystem): string {
  const words = packs.map(({ packId, count }) => `${count}${NB}×${NB}${packName(product, packId, units)}`);
  return words.length > 0 ? words.join(', ') : 'nothing';
}

/**
 * "Needs 3.2 gal for 6 doses; on the shelf 0.5 gal.", or, where earlier visits draw on the shelf first, "; 25 fl oz
 * on the shelf, 12 fl oz of it for visits before Sat, May 1, 2027."
 */
export function neededWords(
  product: Product,
  purchase: ProductPurchase,
  units: UnitSystem,
  spokenFor: SpokenFor | null = null,
): string {
  const { need, needed, onShelf } = purchase;
  const amount = (value: number) => amountWords(product, { unit: need.unit, value } as Amount, units);
  const doses = need.lines.length === 1 ? 'one dose' : `${need.lines.length} doses`;
  const needs = `Needs ${amount(needed)} for ${doses}`;
  const taken = spokenFor === null ? 0 : leftOver(spokenFor.amount + needed, needed);
  const short = spokenFor === null ? 0 : leftOver(spokenFor.short + needed, needed);
  if (spokenFor === null || taken === 0) {
    const lacking = short > 0 ? ` Earlier visits take ${amount(short)}, which is not bought here.` : '';
    return `${needs}; ${onShelf > 0 ? `on the shelf ${amount(onShelf)}` : 'none on the shelf'}.${lacking}`;
  }
  const part = leftOver(onShelf + taken, taken) > 0 ? `${amount(taken)} of it` : 'all of it';
  const visits =
    spokenFor.before === null ? 'earlier visits' : `visits before ${dayWords(spokenFor.before, true)}`;
  const lacking = short > 0 ? ` They take ${amount(short)} more, which is not bought here.` : '';
  return `${needs}; ${amount(onShelf + taken)} on the shelf, ${part} for ${visits}.${lacking}`;
}

/** "opened on Mon, May 31, 2027; have it by then". @param isLater bought later, since it would not keep */
export function haveByWords(by: string, isLater: boolean): string {
  return `opened on ${dayWords(by, true)}; have it by then${isLater ? ', not long before' : ''}`;
}

/** What is left over: "0.4 gal", with what of it spoils. */
export function leftWords(
  product: Product,
  purchase: ProductPurchase,
  plan: PurchasePlan,
  units: UnitSystem,
): string {
  const amount = (value: number) =>
    amountWords(product, { unit: purchase.need.unit, value } as Amount, units);
  const spoils =
    plan.spoiled > 1e-6 * Math.max(1, plan.left) ? `, of which ${amount(plan.spoiled)} spoils` : '';
  return leftOver(plan.left + purchase.needed, purchase.needed) > 0
    ? `${amount(plan.left)}${spoils}`
    : 'nothing';
}

/** "4 × 50 lb; 5 × 50 lb if the ground is 1.4 % larger." Nothing to tell gives null. */
export function areaStepWords(
  product: Product,
  plan: PurchasePlan,
  steps: readonly AreaStep[] | null,
  units: UnitSystem,
): string | null {
  if (steps === null)
    return 'Not looked at: whether a little more or less ground changes this. There are too many ways to share what is on the shelf.';
  if (steps.length === 0) return null;
  const parts = steps.map(({ change, plan: other }) => {
    const size = Math.abs(change) < 0.0005 ? 'even a little' : formatPercent(Math.abs(change));
    return `${packsToBuyWords(product, other.packs, units)} if the ground is ${size} ${change > 0 ? 'larger' : 'smaller'}`;
  });
  return `Buy ${packsToBuyWords(product, plan.packs, units)}; ${parts.join('; ')} (within the ± of the measured ground).`;
}

/**
 * "The 2.5 gal pack pays from 9,400 sq ft, all doses added up; these 6 doses treat 12,000 sq ft." The first
 * figure goes up to two digits, so that what is said holds from there on.
 */
export function breakEvenWords(
  product: Product,
  found: BreakEven,
  { need, needed, onShelf }: ProductPurchase,
  units: UnitSystem,
): string {
  const name = packName(product, found.packId, units);
  if (found.isFromFirst) return `The ${name} pack pays from the first dose on.`;
  const ground = need.lines.reduce((sum, line) => sum + line.areaM2, 0);
  const count = need.lines.length;
  const from = formatArea(roundedUp(found.groundM2, units), units);
  const doses = count === 1 ? 'this dose treats' : `these ${count} doses treat`;
  const ofShelf = Math.min(1, onShelf / needed) * ground;
  const shelf = ofShelf > 0 ? `, of which the shelf does ${formatArea(ofShelf, units)}` : '';
  const all = count === 1 ? '' : ', all doses added up';
  return `The ${name} pack pays from ${from}${all}; ${doses} ${formatArea(ground, units)}${shelf}.`;
}

/** An area with no more than two digits in the unit it is shown in, not less than it was. */
function roundedUp(areaM2: number, units: UnitSystem): number {
  const { si } = areaUnit(areaM2, units);
  const step = 10 ** -placeOf(areaM2 / si, 2);
  // typed areas are round in their unit but for the last bits
  return Math.ceil((areaM2 / si / step) * (1 - 1e-9)) * step * si;
}

/** Costs by ground and by nutrient: "$4.10 per 1,000 sq ft a dose; $5.20 per lb of N". */
export function costWords(
  costs: UnitCosts,
  perM2: number | null,
  currency: string,
  units: UnitSystem,
): readonly string[] {
  const isUs = units === 'us';
  const ground = isUs ? `1,000${NB}sq${NB}ft` : `100${NB}m²`;
  const groundM2 = isUs ? M2_PER_1000_SQFT : 100;
  const byGround =
    perM2 === null ? [] : [`${formatMoney(costs.perUnit * perM2 * groundM2, currency)} per ${ground} a dose`];
  const byNutrient = (Object.entries(costs.perKg) as [Nutrient, number | null][]).flatMap(
    ([nutrient, cost]) => (cost === null ? [] : [nutrientCostWords(nutrient, cost, currency, units)]),
  );
  return [...byGround, ...byNutrient];
}

/** The same in a sentence that says what it counts: at the price of the packs, without what is left of them. */
export function usedCostWords(
  costs: UnitCosts,
  perM2: number | null,
  currency: string,
  units: UnitSystem,
): string {
  return `Only what is used, at the price of the packs: ${costWords(costs, perM2, currency, units).join('; ')}.`;
}

/** "$2.17 per lb of N". @param costPerKg in the yard's currency */
export function nutrientCostWords(
  nutrient: Nutrient,
  costPerKg: number,
  currency: string,
  units: UnitSystem,
): string {
  const isUs = units === 'us';
  return `${formatMoney(costPerKg * (isUs ? KG_PER_LB : 1), currency)} per ${isUs ? 'lb' : 'kg'} of ${NUTRIENT_WORDS[nutrient]}`;
}

/** "opens a 32 fl oz pack, which stays 40 % full", "goes on with …, used up". */
export function drawWords(product: Product, draw: Draw, units: UnitSystem): string {
  const name = packName(product, draw.packId, units);
  const whose = draw.from === 'shelf' ? ' from the shelf' : '';
  const what = draw.isOpened ? `opens ${name}${whose}` : `goes on with ${name}${whose}`;
  return `${what}: ${levelWords(draw.levelAfter)}`;
}

/** How full a container stays. */
export function levelWords(level: number): string {
  return level < 0.005 ? 'used up' : `stays ${formatPercent(level)} full`;
}

/** What is in hand after the last visit: "32 fl oz, 40 % full, good until Sun, Mar 2, 2031". */
export function carriedWords(product: Product, carried: CarriedPack, units: UnitSystem): string {
  const name = packName(product, carried.packId, units);
  const state = carried.isOpen ? `opened, ${formatPercent(carried.level)} full` : 'closed';
  const isSilent = carried.isOpen && carried.goodUntil === null && product.openedLifeDays === null;
  const silent = isSilent ? '; how long it keeps opened: the label is silent' : '';
  const until = carried.goodUntil === null ? silent : `, good until ${dayWords(carried.goodUntil, true)}`;
  return `${name}, ${state}${until}`;
}

/** The same containers told once: "2 × 50 lb, closed". */
export function carriedLines(
  product: Product,
  carried: readonly CarriedPack[],
  units: UnitSystem,
): readonly string[] {
  const counts = new Map<string, number>();
  for (const each of carried) {
    const words = carriedWords(product, each, units);
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  return [...counts].map(([words, count]) => (count === 1 ? words : `${count}${NB}×${NB}${words}`));
}
