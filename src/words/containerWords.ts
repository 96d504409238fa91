import { type Opened, openFromStock, type StockOpening } from '../plan/openFromStock';
import { stockAtDose } from '../plan/stockAtDose';
import type { ContainerCount, DoseFigures, VisitFigures } from '../plan/types';
import { formatPercent } from '../units/format';
import type { Product, UnitSystem } from '../yard/types';
import { amountWords } from './productWords';

/** Less than half a percent left is an empty pack to anybody who pours. */
const EMPTY = 0.005;

/** What is left in the last opened pack: "44 % of the last one is left", or that all are used up. */
export function lastWords({ open, lastLeft }: Pick<ContainerCount, 'open' | 'lastLeft'>): string {
  if (open === 0) return 'nothing to open';
  if (lastLeft < EMPTY) return open === 1 ? 'used up' : 'the last one is used up';
  return `${formatPercent(lastLeft)} of ${open === 1 ? 'it' : 'the last one'} is left`;
}

/** "2, 3 if the ground is 1.4 % larger", or null when the area's error does not change the count. */
export function changeWords(count: ContainerCount): string | null {
  const at = count.changesAt;
  if (at === null) return null;
  const next = at >= 0 ? count.open + 1 : count.open - 1;
  // a count that stands right on its edge
  if (Math.abs(at) < 0.0005)
    return `${count.open}, ${next} if the ground is even a little ${at >= 0 ? 'larger' : 'smaller'}`;
  return `${count.open}, ${next} if the ground is ${formatPercent(Math.abs(at))} ${at >= 0 ? 'larger' : 'smaller'}`;
}

/** "2 packs of 32 fl oz". */
export function countWords(product: Product, count: ContainerCount, units: UnitSystem): string {
  return `${count.open === 1 ? 'pack' : 'packs'} of ${amountWords(product, count.packContent, units)}`;
}

/**
 * How a dose is drawn with what is on the shelf when its turn comes: "Go on with 6.25 lb from the opened
 * 12.5 lb pack, then open 2 × 12.5 lb from the shelf: 70 % of the last one is left." Empty where the visit is
 * done or nothing that the use can draw on is there: then the counts of whole packs hold.
 * @param visits figures of all visits of the yard; @param visit that of the dose
 */
export function stockWords(
  visits: readonly VisitFigures[],
  { visit }: VisitFigures,
  dose: DoseFigures,
  units: UnitSystem,
): string {
  if (visit.doneOn !== null) return '';
  const { onHand, isAfterVisits } = stockAtDose(visits, visit.id, dose);
  const found = openFromStock({ ...dose.product, onHand }, dose.amount);
  if (found === null) return '';
  const words = openingWords(dose.product, found, units);
  return isAfterVisits
    ? `Once the visits before this one are done: ${words}`
    : words.charAt(0).toUpperCase() + words.slice(1);
}

function openingWords(product: Product, found: StockOpening, units: UnitSystem): string {
  const { opened, closed, missing } = found;
  const steps: string[] = [];
  const from = opened.map(
    ({ pack, taken }) =>
      `${amountWords(product, taken, units)} from the opened ${amountWords(product, pack.content, units)} pack`,
  );
  if (from.length > 0) steps.push(`go on with ${from.join(' and ')}`);
  const times = ({ pack, count }: Opened) => `${count} × ${amountWords(product, pack.content, units)}`;
  if (closed.length > 0) steps.push(`open ${closed.map(times).join(' and ')} from the shelf`);
  const lastClosed = closed.findLast((row) => row.lastLeft >= EMPTY) ?? closed.at(-1);
  const rest = ({ count, lastLeft }: Opened) => lastWords({ open: count, lastLeft });
  if (missing.length > 1) {
    const sizes = missing.map((row) => `${times(row)} (${rest(row)})`);
    steps.push(`open ${sizes.join(' or ')}, not on the shelf`);
    return `${steps.join(', then ')}.`;
  }
  const [only] = missing;
  if (only) steps.push(`open ${times(only)}, not on the shelf`);
  const last = only ?? lastClosed;
  const level = opened.at(-1)?.levelAfter ?? 0;
  const left = last ? rest(last) : lastWords({ open: 1, lastLeft: level });
  return `${steps.join(', then ')}: ${left}.`;
}
