import type { DoseAmounts } from '../season/ledgerAmounts';
import { type LedgerItem, type LedgerYear, laidBy } from '../season/ledgerSums';
import type { LedgerEntry } from '../season/types';
import { KG_PER_LB, L_PER_FLOZ, M2_PER_1000_SQFT, M2_PER_SQFT } from '../units/factors';
import { inNutrientUnit } from '../units/nutrientRow';
import type { Amount, UnitSystem } from '../yard/types';
import { csvText, safeText } from './csvText';

/** Names for the lines of the ledger, told by the caller. */
export interface LedgerNames {
  zone(zoneId: string): string;
  visit(visitId: string): string;
  product(entry: LedgerEntry): string;
  /** product per m²; undefined where nothing is known of it. */
  amounts(doseId: string): DoseAmounts | undefined;
}

/**
 * Every dose on every zone as a table, a line each in the form of `csvText`: day, visit, product, zone, ground
 * treated, planned or done, product planned and really used on it (lb or fl oz, kg or L) with the rate of each,
 * and what is laid down of each item.
 * @param items columns of what is laid down, in lb per 1,000 sq ft or g/m²
 */
export function ledgerDosesCsv(
  entries: readonly LedgerEntry[],
  items: readonly LedgerItem[],
  names: LedgerNames,
  units: UnitSystem,
): string {
  const isUs = units === 'us';
  const head = [
    'Day',
    'State',
    'Visit',
    'Product',
    'Zone',
    `Ground treated (${isUs ? 'sq ft' : 'm²'})`,
    'Product in',
    'Planned',
    'Really used',
    `Planned per ${isUs ? '1,000 sq ft' : '100 m²'}`,
    `Really used per ${isUs ? '1,000 sq ft' : '100 m²'}`,
    ...itemHeads(items, units),
  ];
  const rows = entries.map((entry) => [
    entry.date ?? '',
    entry.isDone ? 'done' : 'planned',
    safeText(names.visit(entry.visitId)),
    safeText(names.product(entry)),
    safeText(names.zone(entry.zoneId)),
    (entry.areaM2 / (isUs ? M2_PER_SQFT : 1)).toFixed(isUs ? 1 : 2),
    ...amountCells(names.amounts(entry.doseId), entry.areaM2, units),
    ...items.map((item) => rate(laidBy(entry)[item] ?? 0, units)),
  ]);
  return csvText([head, ...rows]);
}

/**
 * A year of each ground by month: a line for each ground, item and state (done, to come, total), with twelve
 * months and the year, in lb per 1,000 sq ft or g/m².
 */
export function ledgerMonthsCsv(
  grounds: readonly (readonly [name: string, year: LedgerYear])[],
  items: readonly LedgerItem[],
  year: number,
  units: UnitSystem,
): string {
  const months = Array.from({ length: 12 }, (_, index) => `${year}-${String(index + 1).padStart(2, '0')}`);
  const head = ['Ground', 'Item', 'State', 'Unit', ...months, String(year)];
  const states = [
    ['done', 'done'],
    ['to come', 'toCome'],
    ['total', 'total'],
  ] as const;
  const rows = grounds.flatMap(([name, own]) =>
    items.flatMap((item) =>
      states.map(([words, state]) => [
        safeText(name),
        itemHead(item),
        words,
        unitOf(units),
        ...own.months.map((month) => rate(month[state][item] ?? 0, units)),
        rate(own.year[state][item] ?? 0, units),
      ]),
    ),
  );
  return csvText([head, ...rows]);
}

/** Unit, amounts on the ground and rates; empty where nothing is known. */
function amountCells(amounts: DoseAmounts | undefined, areaM2: number, units: UnitSystem): readonly string[] {
  if (!amounts) return ['', '', '', '', ''];
  const { planned, used } = amounts;
  const isUs = units === 'us';
  const [label, si] =
    planned.unit === 'L' ? (isUs ? ['fl oz', L_PER_FLOZ] : ['L', 1]) : isUs ? ['lb', KG_PER_LB] : ['kg', 1];
  const on = (amount: Amount | null, m2: number) =>
    amount === null ? '' : String(Number(((amount.value * m2) / si).toFixed(5)));
  const each = isUs ? M2_PER_1000_SQFT : 100;
  return [label, on(planned, areaM2), on(used, areaM2), on(planned, each), on(used, each)];
}

const unitOf = (units: UnitSystem) => (units === 'us' ? 'lb/1,000 sq ft' : 'g/m²');
const itemHead = (item: LedgerItem) => (item === 'solubleN' ? 'Soluble N' : item);
const itemHeads = (items: readonly LedgerItem[], units: UnitSystem) =>
  items.map((item) => `${itemHead(item)} (${unitOf(units)})`);
const rate = (kgPerM2: number, units: UnitSystem) =>
  String(Number(inNutrientUnit(kgPerM2, units).toFixed(5)));
