import type { Quantity } from '../units/choices';
import { type UnitChoice, unitChoices } from '../units/choices';
import {
  APPLICATORS,
  ELEMENTS,
  NUTRIENTS,
  PRODUCT_FORMS,
  type RateBasis,
  type UnitSystem,
} from '../yard/types';

/*
 * The table of labels (RFC 4180 with a heading row): its columns, in order. A product takes one row, or
 * more where it has several uses, packs or ingredients: its rows share the number in "No." (or, where that
 * column is missing, the name), and what holds for the whole product stands in the first of them. Each row
 * may hold one use, one pack and one ingredient beside each other. Units stand in the headings, in brackets.
 */

/** The rate bases, as they stand in the table. */
export const RATE_BASES = [
  'area-per-container',
  'volume-per-area',
  'mass-per-area',
  'nutrient-per-area',
  'pure-live-seed',
  'effective-lime',
  'depth',
] as const satisfies readonly RateBasis[];

/** Which part of a label a column tells of. */
export type ColumnPart = 'row' | 'product' | 'ingredient' | 'pack' | 'use';

/** How the cells of a column are read and written; figures become SI. */
export type ColumnKind =
  | { readonly kind: 'text' }
  | { readonly kind: 'yes-no' }
  /** numbers of packs, parted by blanks or semicolons; "none" for an empty list. */
  | { readonly kind: 'packs' }
  | { readonly kind: 'choice'; readonly values: readonly string[] }
  /** a number in one of `units`; the first of a system is written. `least` and `most` in SI. */
  | {
      readonly kind: 'number';
      readonly units: Readonly<Record<UnitSystem, readonly UnitChoice[]>> | null;
      readonly least: number | null;
      readonly most: number | null;
      readonly isWhole: boolean;
    };

/** One column of the table. */
export type LabelColumn = {
  readonly key: string;
  readonly part: ColumnPart;
  /** heading without its unit. */
  readonly title: string;
} & ColumnKind;

const bare = (label: string, si: number): UnitChoice => ({
  id: label,
  label,
  toSI: (value) => value * si,
  fromSI: (value) => value / si,
});
const both = (...units: readonly UnitChoice[]) => ({ us: units, metric: units });
const PERCENT = both(bare('%', 1));
const DAYS = both(bare('days', 1));

const text = (key: string, part: ColumnPart, title: string): LabelColumn => ({
  key,
  part,
  title,
  kind: 'text',
});
const yesNo = (key: string, part: ColumnPart, title: string): LabelColumn => ({
  key,
  part,
  title,
  kind: 'yes-no',
});
const choice = (key: string, part: ColumnPart, title: string, values: readonly string[]): LabelColumn => ({
  key,
  part,
  title,
  kind: 'choice',
  values,
});

interface NumberRules {
  readonly units?: Readonly<Record<UnitSystem, readonly UnitChoice[]>> | null;
  readonly least?: number | null;
  readonly most?: number | null;
  readonly isWhole?: boolean;
}
const number = (key: string, part: ColumnPart, title: string, rules: NumberRules = {}): LabelColumn => ({
  key,
  part,
  title,
  kind: 'number',
  units: rules.units ?? null,
  least: rules.least === undefined ? 0 : rules.least,
  most: rules.most ?? null,
  isWhole: rules.isWhole ?? false,
});

/** Units of a quantity, those written by the table first. */
const of = (quantity: Quantity, us?: string, metric?: string) => {
  const first = (system: UnitSystem, id: string | undefined) => {
    const units = unitChoices(quantity, system);
    return id === undefined ? units : units.toSorted((a, b) => Number(b.id === id) - Number(a.id === id));
  };
  return { us: first('us', us), metric: first('metric', metric) };
};
const RATE_VOLUME = of('volume-per-area');
const RATE_WEIGHT = of('mass-per-area');

/** All columns, in the order in which they are written. */
export const LABEL_COLUMNS: readonly LabelColumn[] = [
  number('no', 'row', 'No.', { least: 1, isWhole: true }),
  text('name', 'product', 'Product'),
  choice('form', 'product', 'Form', PRODUCT_FORMS),
  number('nPct', 'product', 'N', { units: PERCENT, most: 100 }),
  number('p2o5Pct', 'product', 'P2O5', { units: PERCENT, most: 100 }),
  number('k2oPct', 'product', 'K2O', { units: PERCENT, most: 100 }),
  number('slowNPctOfN', 'product', 'Slow-release N', { units: both(bare('% of N', 1)), most: 100 }),
  ...ELEMENTS.map((element) =>
    number(`element ${element}`, 'product', element, { units: PERCENT, most: 100 }),
  ),
  number('densityKgPerL', 'product', 'Density', { units: of('density') }),
  number('purityPct', 'product', 'Seed purity', { units: PERCENT, most: 100 }),
  number('germinationPct', 'product', 'Seed germination', { units: PERCENT, most: 100 }),
  number('limePct', 'product', 'Effective lime', { units: PERCENT }),
  number('saltIndex', 'product', 'Salt index'),
  yesNo('canPour', 'product', 'May be poured together'),
  number('rainfastS', 'product', 'Rainfast', { units: both(bare('h', 3600), bare('min', 60)) }),
  number('waterInDepthM', 'product', 'Water-in depth', { units: of('depth') }),
  number('shelfLifeDays', 'product', 'Keeps closed', { units: DAYS }),
  number('openedLifeDays', 'product', 'Keeps opened', { units: DAYS }),
  yesNo('stainsHardscape', 'product', 'Stains hardscape'),
  number('maxPerDose L', 'product', 'Most per dose by volume', { units: RATE_VOLUME }),
  number('maxPerDose kg', 'product', 'Most per dose by weight', { units: RATE_WEIGHT }),
  number('maxPerYear L', 'product', 'Most per year by volume', { units: RATE_VOLUME }),
  number('maxPerYear kg', 'product', 'Most per year by weight', { units: RATE_WEIGHT }),
  number('minIntervalDays', 'product', 'Least interval', { units: DAYS }),
  number('maxDosesPerYear', 'product', 'Most doses per year'),
  number('maxAirTempC', 'product', 'Warmest air', { units: of('temperature'), least: null }),
  text('note', 'product', 'Note'),
  text('ingredient', 'ingredient', 'Ingredient'),
  number('ingredientPct', 'ingredient', 'Ingredient share', { units: PERCENT, most: 100 }),
  number('pack L', 'pack', 'Pack volume', { units: of('volume') }),
  number('pack kg', 'pack', 'Pack weight', { units: of('mass') }),
  number('price', 'pack', 'Pack price'),
  number('onHand', 'pack', 'Packs on hand'),
  text('useName', 'use', 'Use'),
  choice('applicator', 'use', 'Applicator', APPLICATORS),
  choice('basis', 'use', 'Rate basis', RATE_BASES),
  number('areaM2', 'use', 'Area per pack', { units: of('area') }),
  number('ratePack', 'use', 'Pack that covers it', { least: 1, isWhole: true }),
  number('rate L', 'use', 'Rate by volume', { units: RATE_VOLUME }),
  number('rate kg', 'use', 'Rate by weight', { units: RATE_WEIGHT }),
  choice('nutrient', 'use', 'Nutrient', NUTRIENTS),
  number('depthM', 'use', 'Layer depth', { units: of('depth') }),
  number('carrierLPerM2', 'use', 'Carrier', {
    units: of('volume-per-area', 'gal per 1,000 sq ft', 'L per 100 m²'),
  }),
  yesNo('carrierIsTotal', 'use', 'Carrier is the whole mix'),
  number('spreadDistanceM', 'use', 'Spread distance', { units: of('length') }),
  yesNo('waterIn', 'use', 'Water in'),
  { key: 'packs', part: 'use', title: 'Packs of this use', kind: 'packs' },
];

/** What a cell holds: SI figures, text, true or false, numbers of packs; null: nothing. */
export type CellValue = string | number | boolean | readonly number[] | null;
/** A row by the keys of its columns; a key that is missing stands for nothing. */
export type LabelRow = Readonly<Record<string, CellValue>>;

/** The heading of a column, with the unit that a system writes it in. */
export function columnHeading(column: LabelColumn, system: UnitSystem): string {
  const unit = column.kind === 'number' ? column.units?.[system][0] : undefined;
  return unit ? `${column.title} (${unit.label})` : column.title;
}

/** A heading made alike: small letters, plain digits, single blanks. */
const plain = (words: string) => words.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim();

const BY_TITLE: ReadonlyMap<string, LabelColumn> = new Map(
  LABEL_COLUMNS.map((column) => [plain(column.title), column]),
);

/** A heading read: the column and its unit, or what is wrong with it. */
export type HeadingRead =
  | { readonly column: LabelColumn; readonly unit: UnitChoice | null }
  /** a column of this table whose unit is missing or unknown; `units`: those it can have. */
  | { readonly column: LabelColumn; readonly units: readonly string[] }
  | null;

/** Finds the column of a heading; null when it is none of this table. */
export function readHeading(heading: string): HeadingRead {
  const match = /^(.*?)(?:\s*\(([^()]*)\))?$/.exec(plain(heading));
  const [title, unitWords] = [match?.[1] ?? '', match?.[2]];
  const column = BY_TITLE.get(title);
  if (column === undefined) return null;
  if (column.kind !== 'number' || column.units === null) return { column, unit: null };
  const all = [...column.units.us, ...column.units.metric];
  const labels = [...new Set(all.map((unit) => unit.label))];
  const unit =
    unitWords === undefined
      ? labels.length === 1
        ? all[0]
        : undefined
      : all.find((each) => plain(each.label) === unitWords);
  return unit ? { column, unit } : { column, units: labels };
}
