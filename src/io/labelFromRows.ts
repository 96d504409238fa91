import { newProduct } from '../yard/defaults';
import { checkProductShape } from '../yard/schemaPlan';
import {
  type Amount,
  ELEMENTS,
  type Ingredient,
  type Issue,
  type LabelRate,
  type Pack,
  type Product,
  type ProductUse,
} from '../yard/types';
import { LABEL_COLUMNS, type LabelRow } from './labelColumns';

/** One row of a table of labels, read. */
export interface LabelLine {
  readonly line: number;
  readonly row: LabelRow;
  /** headings of the cells that stand in it, by column key. */
  readonly titles: Readonly<Record<string, string>>;
  /** what is wrong with its cells. */
  readonly faults: readonly Issue[];
}

/** A fault of a row: its line, the heading of its column (empty: of none), and what is wrong. */
export function rowFault(
  line: number,
  title: string,
  what: string,
  severity: Issue['severity'] = 'error',
): Issue {
  const where = title === '' ? `Line ${line}` : `Line ${line}, column “${title}”`;
  return {
    code: 'labels-row',
    severity,
    message: `${where}: ${what}.`,
    place: { line, ...(title !== '' && { path: title }) },
  };
}

const num = (row: LabelRow, key: string): number | null => (row[key] as number | undefined) ?? null;
const word = <T extends string>(row: LabelRow, key: string): T | null => (row[key] as T | undefined) ?? null;
const isSo = (row: LabelRow, key: string): boolean => row[key] === true;
const keysOf = (part: string) =>
  LABEL_COLUMNS.filter((column) => column.part === part).map((column) => column.key);
const KEYS = {
  product: keysOf('product'),
  ingredient: keysOf('ingredient'),
  pack: keysOf('pack'),
  use: keysOf('use'),
};

/**
 * One product from its rows. Rows with faults are left out; with the first of them the whole product is.
 * @returns the product, null when it was left out, and every fault with its line
 */
export function labelFromRows(
  id: string,
  lines: readonly LabelLine[],
): { readonly product: Product | null; readonly faults: readonly Issue[] } {
  const faults = lines.flatMap((each) => [...each.faults]);
  const [first] = lines;
  if (first === undefined) return { product: null, faults };
  const leaveOut = (message: string) => {
    faults.push(rowFault(first.line, '', `${nameOf(first)} was left out${message}`));
    return { product: null, faults };
  };
  if (first.faults.length > 0) return leaveOut(lines.length > 1 ? ', with all its rows' : '');
  if (first.row.form === undefined) return leaveOut(': its first row must have a Form');

  const whole = wholeRow(lines, faults);
  const packs: { readonly no: number; readonly pack: Pack; readonly onHand: number | null }[] = [];
  const ingredients: Ingredient[] = [];
  let packNo = 0;
  for (const each of lines) {
    const has = (part: keyof typeof KEYS) => KEYS[part].some((key) => key in each.titles);
    // a pack that cannot be read keeps its number: others are named by theirs
    if (has('pack')) packNo += 1;
    if (each.faults.length > 0) continue;
    if (has('pack')) {
      const pack = readPack(each, packNo, faults);
      if (pack) packs.push({ no: packNo, pack, onHand: num(each.row, 'onHand') });
    }
    if (has('ingredient')) {
      const [name, pct] = [word(each.row, 'ingredient'), num(each.row, 'ingredientPct')];
      if (name === null)
        faults.push(rowFault(each.line, 'Ingredient', 'a share stands beside no name; left out'));
      else ingredients.push({ name, pct: pct ?? 0 });
    }
  }
  const uses: ProductUse[] = [];
  for (const each of lines) {
    if (each.faults.length > 0 || !KEYS.use.some((key) => key in each.titles)) continue;
    const use = readUse(
      each,
      `use-${uses.length + 1}`,
      packs.map((one) => one.no),
      faults,
    );
    if (use) uses.push(use);
  }
  const [use, ...otherUses] = uses;
  if (use === undefined) return leaveOut(': none of its rows has a use with a Rate basis that can be read');
  const { id: _, name: useName, ...members } = use;
  const product = newProduct(id, {
    ...whole,
    ...members,
    useName,
    otherUses,
    ingredients,
    packs: packs.map((one) => one.pack),
    onHand: Object.fromEntries(packs.flatMap(({ pack, onHand }) => (onHand ? [[pack.id, onHand]] : []))),
  });
  const checked = checkProductShape(product);
  if (checked.ok) return { product: checked.value, faults };
  for (const fault of checked.faults) faults.push(rowFault(first.line, '', `${fault.path} ${fault.message}`));
  return leaveOut('');
}

function nameOf({ row }: LabelLine): string {
  return row.name ? `“${row.name}”` : 'a product';
}

/** What holds for the whole product: of each column the first cell that is filled in. */
function wholeRow(lines: readonly LabelLine[], faults: Issue[]): Partial<Product> {
  const row: Record<string, LabelRow[string]> = {};
  const from: Record<string, number> = {};
  for (const each of lines) {
    if (each.faults.length > 0) continue;
    for (const key of KEYS.product) {
      const value = each.row[key];
      if (value === undefined || value === null) continue;
      if (row[key] === undefined) {
        row[key] = value;
        from[key] = each.line;
      } else if (row[key] !== value && key !== 'name') {
        const what = `it differs from line ${from[key]} of the same product; line ${from[key]} counts`;
        faults.push(rowFault(each.line, each.titles[key] ?? '', what, 'warning'));
      }
    }
  }
  const [purityPct, germinationPct] = [num(row, 'purityPct'), num(row, 'germinationPct')];
  const most = (key: string): Amount | null => {
    const [litres, kg] = [num(row, `${key} L`), num(row, `${key} kg`)];
    if (litres !== null) return { unit: 'L', value: litres };
    return kg === null ? null : { unit: 'kg', value: kg };
  };
  return {
    name: word(row, 'name') ?? '',
    form: row.form as Product['form'],
    analysis: {
      nPct: num(row, 'nPct') ?? 0,
      p2o5Pct: num(row, 'p2o5Pct') ?? 0,
      k2oPct: num(row, 'k2oPct') ?? 0,
      slowNPctOfN: num(row, 'slowNPctOfN'),
      elementsPct: Object.fromEntries(
        ELEMENTS.flatMap((element) => {
          const pct = num(row, `element ${element}`);
          return pct === null ? [] : [[element, pct]];
        }),
      ),
    },
    densityKgPerL: num(row, 'densityKgPerL'),
    seed:
      purityPct === null && germinationPct === null
        ? null
        : { purityPct: purityPct ?? 0, germinationPct: germinationPct ?? 0 },
    limePct: num(row, 'limePct'),
    saltIndex: num(row, 'saltIndex'),
    canPour: isSo(row, 'canPour'),
    rainfastS: num(row, 'rainfastS'),
    waterInDepthM: num(row, 'waterInDepthM'),
    shelfLifeDays: num(row, 'shelfLifeDays'),
    openedLifeDays: num(row, 'openedLifeDays'),
    stainsHardscape: isSo(row, 'stainsHardscape'),
    limits: {
      maxPerDose: most('maxPerDose'),
      maxPerYear: most('maxPerYear'),
      minIntervalDays: num(row, 'minIntervalDays'),
      maxDosesPerYear: num(row, 'maxDosesPerYear'),
      maxAirTempC: num(row, 'maxAirTempC'),
    },
    note: word(row, 'note') ?? '',
  };
}

function readPack({ line, row }: LabelLine, no: number, faults: Issue[]): Pack | null {
  const [litres, kg] = [num(row, 'pack L'), num(row, 'pack kg')];
  if ((litres === null) === (kg === null)) {
    const what = litres === null ? 'neither a volume nor a weight' : 'both a volume and a weight';
    faults.push(rowFault(line, 'Pack volume', `the pack has ${what}; it was left out`));
    return null;
  }
  const content: Amount = litres === null ? { unit: 'kg', value: kg ?? 0 } : { unit: 'L', value: litres };
  return { id: `pack-${no}`, content, price: num(row, 'price') };
}

function readUse(
  { line, row, titles }: LabelLine,
  id: string,
  packNos: readonly number[],
  faults: Issue[],
): ProductUse | null {
  const refuse = (key: string, what: string) => {
    const title = titles[key] ?? LABEL_COLUMNS.find((column) => column.key === key)?.title ?? '';
    faults.push(rowFault(line, title, `${what}; this use was left out`));
    return null;
  };
  if (row.basis === undefined) return refuse('basis', 'it says nothing, so the rate cannot be read');
  const need = NEEDED_CELL[row.basis as LabelRate['basis']];
  if (num(row, need) === null) return refuse(need, `nothing stands there, but the basis is ${row.basis}`);
  if (need === 'rate kg' && row.basis === 'nutrient-per-area' && row.nutrient === undefined)
    return refuse('nutrient', 'nothing stands there, but the basis is by a nutrient');
  const packIds = (row.packs as readonly number[] | undefined) ?? null;
  const named = [...(packIds ?? []), ...(row.basis === 'area-per-container' ? [num(row, 'ratePack')] : [])];
  const stranger = named.find((no) => no !== null && !packNos.includes(no));
  if (stranger !== undefined)
    return refuse(
      packIds?.includes(stranger ?? 0) ? 'packs' : 'ratePack',
      `pack ${stranger} is not among the packs of the product`,
    );
  return {
    id,
    name: word(row, 'useName') ?? '',
    applicator: word(row, 'applicator'),
    rate: readRate(row, packNos),
    carrierLPerM2: num(row, 'carrierLPerM2'),
    carrierIsTotal: isSo(row, 'carrierIsTotal'),
    spreadDistanceM: num(row, 'spreadDistanceM') ?? USUAL.spreadDistanceM,
    waterIn: isSo(row, 'waterIn'),
    packIds: packIds?.map((no) => `pack-${no}`) ?? null,
  };
}

const USUAL = newProduct('');

/** The column that a basis cannot do without. */
const NEEDED_CELL: Readonly<Record<LabelRate['basis'], string>> = {
  'area-per-container': 'areaM2',
  'volume-per-area': 'rate L',
  'mass-per-area': 'rate kg',
  'nutrient-per-area': 'rate kg',
  'pure-live-seed': 'rate kg',
  'effective-lime': 'rate kg',
  depth: 'depthM',
};

function readRate(row: LabelRow, packNos: readonly number[]): LabelRate {
  const basis = row.basis as LabelRate['basis'];
  const rateKgPerM2 = num(row, 'rate kg') ?? 0;
  switch (basis) {
    case 'area-per-container': {
      // a product of one pack needs no number for it
      const no = num(row, 'ratePack') ?? (packNos.length === 1 ? (packNos[0] ?? null) : null);
      return { basis, areaM2: num(row, 'areaM2') ?? 0, packId: no === null ? '' : `pack-${no}` };
    }
    case 'volume-per-area':
      return { basis, rateLPerM2: num(row, 'rate L') ?? 0 };
    case 'nutrient-per-area':
      return { basis, nutrient: word(row, 'nutrient') ?? 'N', rateKgPerM2 };
    case 'depth':
      return { basis, depthM: num(row, 'depthM') ?? 0 };
    default:
      return { basis, rateKgPerM2 };
  }
}
