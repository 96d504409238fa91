import type { UnitChoice } from '../units/choices';
import type { Amount, Product, ProductUse, UnitSystem } from '../yard/types';
import { csvText } from './csvText';
import {
  type CellValue,
  columnHeading,
  LABEL_COLUMNS,
  type LabelColumn,
  type LabelRow,
} from './labelColumns';

/** Text that a spreadsheet would take for a formula (OWASP, "CSV Injection"), or that was guarded against it. */
export const FORMULA = /^'*[=+\-@\t\r]/;

/**
 * Labels as a table in the form of `csvText`, its columns as in `labelColumns.ts`, the units in the headings.
 * No products give the headings alone.
 * @param withStock false: prices and what is on hand are left out
 */
export function writeLabelsCsv(products: readonly Product[], units: UnitSystem, withStock: boolean): string {
  const head = LABEL_COLUMNS.map((column) => columnHeading(column, units));
  const rows = products.flatMap((product, i) =>
    labelRows(product, i + 1, withStock).map((row) =>
      LABEL_COLUMNS.map((column) => cellText(column, row[column.key] ?? null, units)),
    ),
  );
  return csvText([head, ...rows]);
}

/** The rows of one product: k-th use, pack and ingredient beside each other. @param no number that its rows share */
export function labelRows(product: Product, no: number, withStock: boolean): LabelRow[] {
  const packNo = (id: string) => product.packs.findIndex((pack) => pack.id === id) + 1;
  const uses = [{ ...product, name: product.useName }, ...product.otherUses];
  const { packs, ingredients } = product;
  const count = Math.max(uses.length, packs.length, ingredients.length);
  return Array.from({ length: count }, (_, k) => {
    const [use, pack, ingredient] = [uses[k], packs[k], ingredients[k]];
    return {
      no,
      name: product.name,
      ...(k === 0 && wholeCells(product)),
      ...(ingredient && { ingredient: ingredient.name, ingredientPct: ingredient.pct }),
      ...(pack && { [`pack ${pack.content.unit}`]: pack.content.value }),
      ...(pack && withStock && { price: pack.price, onHand: product.onHand[pack.id] ?? null }),
      ...(use && useCells(use, packNo)),
    };
  });
}

function wholeCells(product: Product): LabelRow {
  const { analysis, limits, seed } = product;
  const most = (key: 'maxPerDose' | 'maxPerYear', limit: Amount | null) =>
    limit ? { [`${key} ${limit.unit}`]: limit.value } : {};
  return {
    form: product.form,
    nPct: analysis.nPct,
    p2o5Pct: analysis.p2o5Pct,
    k2oPct: analysis.k2oPct,
    slowNPctOfN: analysis.slowNPctOfN,
    ...Object.fromEntries(
      Object.entries(analysis.elementsPct).map(([element, pct]) => [`element ${element}`, pct ?? null]),
    ),
    densityKgPerL: product.densityKgPerL,
    purityPct: seed?.purityPct ?? null,
    germinationPct: seed?.germinationPct ?? null,
    limePct: product.limePct,
    saltIndex: product.saltIndex,
    canPour: product.canPour,
    rainfastS: product.rainfastS,
    waterInDepthM: product.waterInDepthM,
    shelfLifeDays: product.shelfLifeDays,
    openedLifeDays: product.openedLifeDays,
    stainsHardscape: product.stainsHardscape,
    ...most('maxPerDose', limits.maxPerDose),
    ...most('maxPerYear', limits.maxPerYear),
    minIntervalDays: limits.minIntervalDays,
    maxDosesPerYear: limits.maxDosesPerYear,
    maxAirTempC: limits.maxAirTempC,
    note: product.note,
  };
}

function useCells(use: Omit<ProductUse, 'id'>, packNo: (id: string) => number): LabelRow {
  const { rate } = use;
  const rateCells = (): LabelRow => {
    switch (rate.basis) {
      case 'area-per-container':
        return { areaM2: rate.areaM2, ratePack: packNo(rate.packId) || null };
      case 'volume-per-area':
        return { 'rate L': rate.rateLPerM2 };
      case 'nutrient-per-area':
        return { 'rate kg': rate.rateKgPerM2, nutrient: rate.nutrient };
      case 'depth':
        return { depthM: rate.depthM };
      default:
        return { 'rate kg': rate.rateKgPerM2 };
    }
  };
  return {
    useName: use.name,
    applicator: use.applicator,
    basis: rate.basis,
    ...rateCells(),
    carrierLPerM2: use.carrierLPerM2,
    carrierIsTotal: use.carrierIsTotal,
    spreadDistanceM: use.spreadDistanceM,
    waterIn: use.waterIn,
    packs: use.packIds?.map(packNo).filter((no) => no > 0) ?? null,
  };
}

function cellText(column: LabelColumn, value: CellValue, system: UnitSystem): string {
  if (value === null || value === '') return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return FORMULA.test(value) ? `'${value}` : value;
  if (typeof value === 'number') {
    const unit = column.kind === 'number' ? (column.units?.[system][0] ?? null) : null;
    return shortNumber(value, unit);
  }
  return value.length === 0 ? 'none' : value.join(' ');
}

/** Relative loss that is no loss: a figure goes there and back within it. */
const LOSS = 1e-14;

/** The shortest number that reads back as the same figure. @param value SI; @param unit null: a plain number */
function shortNumber(value: number, unit: UnitChoice | null): string {
  const shown = unit ? unit.fromSI(value) : value;
  for (let digits = 1; digits <= 16; digits++) {
    const short = Number(shown.toPrecision(digits));
    const back = unit ? unit.toSI(short) : short;
    if (Math.abs(back - value) <= LOSS * Math.abs(value)) return String(short);
  }
  return String(shown);
}
