import { isBulk } from '../plan/rate';
import { stripSavings } from '../plan/stripSavings';
import type { DoseFigures, TankMix, VisitFigures } from '../plan/types';
import type { DerivedVisit } from '../session/types';
import { formatAmounts, formatZoneAreas } from '../units/columns';
import {
  formatArea,
  formatAreaPm,
  formatLength,
  formatPercent,
  formatVolume,
  formatVolumeLike,
} from '../units/format';
import { CAUTIONS } from '../words/cautions';
import { changeWords, lastWords, stockWords } from '../words/containerWords';
import { SOURCE_WORDS } from '../words/edgeWords';
import { laidRows } from '../words/labelWords';
import { amountRateWords, amountWords, dosedName } from '../words/productWords';
import { doseAreaWords } from '../words/slopeWords';
import { stripSavingWords, stripWidthWords } from '../words/stripWords';
import { workOrder } from '../words/workOrder';
import { groundName, ROUNDED_APART, UNPLACED_WORDS, zoneKeys, zoneName, zoneWords } from '../words/zoneWords';
import type { Issue, UnitSystem, Yard } from '../yard/types';
import { doneBlocks } from './doneBlocks';
import type { DoseWalk } from './doseWalks';
import { passBlocks } from './passBlocks';
import { rinseBlocks } from './rinseBlocks';
import type { Block, Column, SheetPart } from './types';

/** A column of a table; the shares of its columns add up to 1. */
export function column(head: string, share: number, align: Column['align'] = 'left'): Column {
  return { head, share, align };
}

/** Captions that only say the heading again. */
const PLAIN = new Set(['Zones', 'Totals by kind', 'Zones to treat', 'Edges to rinse']);

/** A whole table. */
export function table(
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  sum = false,
): Block {
  const plain = PLAIN.has(caption);
  return { type: 'table', caption, columns, rows, sum, plain, continued: false };
}

/**
 * Blocks of a visit's work sheet, in the order a helper needs them.
 * @param parts which to make; the map is none of them
 * @param season what the year and the rules of the place say against the visit
 * @param visits figures of all visits of the yard: those before this one draw on the shelf first
 * @param walks how its doses are walked; empty: not laid out
 */
export function visitBlocks(
  yard: Yard,
  visit: DerivedVisit,
  parts: readonly SheetPart[],
  season: readonly Issue[],
  visits: readonly VisitFigures[],
  walks: readonly DoseWalk[] = [],
): Block[] {
  const blocks: Block[] = [];
  if (parts.includes('cautions')) blocks.push(...cautionBlocks(visit, season));
  if (parts.includes('products'))
    blocks.push(...doneBlocks(visit.figures, yard.products, yard.settings.units));
  if (parts.includes('order')) blocks.push(...orderBlocks(yard, visit));
  if (parts.includes('products'))
    blocks.push(
      ...visit.figures.doses.flatMap((dose, i) =>
        doseBlocks(yard, dose, i, stockWords(visits, visit.figures, dose, yard.settings.units), visit),
      ),
    );
  if (parts.includes('zones')) blocks.push(...zoneBlocks(yard, visit));
  if (parts.includes('passes')) blocks.push(...passBlocks(yard, walks));
  if (parts.includes('rinse')) blocks.push(...rinseBlocks(yard, visit));
  if (parts.includes('record')) blocks.push(...recordBlocks(visit));
  return blocks;
}

function zoneBlocks(yard: Yard, visit: DerivedVisit): Block[] {
  const { units } = yard.settings;
  const keys = zoneKeys(yard);
  const rows = yard.zones.flatMap((zone) => {
    const treated = visit.treated.get(zone.id);
    if (!treated) return [];
    return [
      [
        keys.get(zone.id) ?? '',
        zoneName(zone),
        zone.isPlaced ? zoneWords(zone) : `${zoneWords(zone)}; ${UNPLACED_WORDS}`,
        formatAreaPm(treated.areaM2, treated.areaSigmaM2, units),
        treated.stripM2 > 0 ? formatArea(treated.stripM2, units) : '—',
      ],
    ];
  });
  const strips = [...visit.treated.values()].flatMap((zone) => zone.strips);
  const widths = [
    ...new Set(
      strips.map(
        (s) => `${SOURCE_WORDS[s.sourceKind]} ${formatLength(s.widthM, units)}, ${stripWidthWords(yard, s)}`,
      ),
    ),
  ];
  const blocks: Block[] = [
    { type: 'heading', text: 'Zones to treat' },
    table(
      'Zones to treat',
      [
        column('Key', 0.07),
        column('Zone', 0.29),
        column('Class', 0.22),
        column('Area to treat', 0.26, 'right'),
        column('No-apply strip', 0.16, 'right'),
      ],
      rows,
    ),
  ];
  const text = `No-apply strips are already taken off the areas and amounts. Width kept: ${widths.join('; ')}. The label and the local code decide.`;
  if (widths.length > 0) blocks.push({ type: 'text', strong: false, text });
  for (const saving of stripSavings(visit.figures.doses)) {
    const words = `${groundName(saving.name)}: ${stripSavingWords(saving, units)}.`;
    blocks.push({ type: 'text', strong: false, text: words });
  }
  for (const { code, message } of visit.issues)
    if (code === 'zone-cut-by-strips') blocks.push({ type: 'text', strong: false, text: message });
  const isSloped = yard.zones.some((zone) => zone.slope !== null && visit.treated.has(zone.id));
  if (isSloped) blocks.push({ type: 'text', strong: false, text: doseAreaWords(yard.settings) });
  return blocks;
}

function doseBlocks(
  yard: Yard,
  dose: DoseFigures,
  index: number,
  stock: string,
  visit: DerivedVisit,
): Block[] {
  const { units } = yard.settings;
  const keys = zoneKeys(yard);
  const { product } = dose;
  const areas = formatZoneAreas(
    dose.zones.map(({ zoneId, areaM2 }) => ({
      areaM2,
      sigmaM2: visit.treated.get(zoneId)?.areaSigmaM2 ?? 0,
    })),
    dose.areaM2,
    dose.areaSigmaM2,
    units,
  );
  const bulk = isBulk(product);
  const amounts = formatAmounts(
    dose.zones.map((zone) => zone.amount),
    dose.amount,
    units,
    bulk,
  );
  const rows = dose.zones.map((zone, index) => [
    keys.get(zone.zoneId) ?? '',
    groundName(zone.name),
    areas.parts[index] ?? '',
    amounts.parts[index] ?? '',
  ]);
  rows.push(['', 'All zones', formatAreaPm(dose.areaM2, dose.areaSigmaM2, units), amounts.total ?? '']);
  const factor = dose.dose.rateFactor;
  const rate = `Rate ${amountRateWords(product, dose.rate.perM2, units)}${factor === 1 ? '' : ` (${formatPercent(factor)} of the label rate)`}.`;
  const water =
    dose.carrierL === null ? '' : ` Water to mix in: ${formatVolume(dose.carrierL, units)} in all.`;
  const blocks: Block[] = [
    { type: 'heading', text: `Product ${index + 1}: ${dosedName(product)}` },
    { type: 'text', strong: true, text: `${rate}${water}` },
    table(
      `Amounts of ${dosedName(product)}`,
      [
        column('Key', 0.08),
        column('Zone', 0.4),
        column('Area', 0.27, 'right'),
        column('Amount', 0.25, 'right'),
      ],
      rows,
      true,
    ),
  ];
  if (areas.isOff) blocks.push({ type: 'text', strong: false, text: ROUNDED_APART });
  const laid = laidRows(dose, units).map(({ what, rate: laidRate }) => `${what} ${laidRate}`);
  if (laid.length > 0)
    blocks.push({
      type: 'text',
      strong: false,
      text: `${visit.figures.visit.doneOn !== null ? 'By the plan' : 'Laid down'}: ${laid.join('; ')}.`,
    });
  if (stock !== '') blocks.push({ type: 'text', strong: true, text: stock });
  if (dose.containers.length > 0) blocks.push(containerTable(dose, units, stock !== ''));
  if (dose.tank) {
    const volume = (litres: number) => formatVolumeLike(litres, dose.carrierL ?? litres, units);
    const mix = (words: string, m: TankMix) => [
      words,
      amountWords(product, m.product, units),
      volume(m.waterL),
      volume(m.totalL),
      formatArea(m.areaM2, units),
    ];
    const { full, last, fullLoads, tankL } = dose.tank;
    const loads: string[][] = [];
    if (full && fullLoads > 0) loads.push(mix(`${fullLoads} × full tank`, full));
    if (last) loads.push(mix(fullLoads > 0 ? 'Last load' : 'One part load', last));
    blocks.push(
      table(
        `Mix card, tank of ${formatVolume(tankL, units)}`,
        [
          column('Load', 0.22),
          column('Product', 0.2, 'right'),
          column('Water', 0.2, 'right'),
          column('In the tank', 0.19, 'right'),
          column('Covers', 0.19, 'right'),
        ],
        loads,
      ),
    );
  }
  for (const issue of dose.issues) {
    if (issue.severity !== 'note')
      blocks.push({ type: 'text', strong: true, text: `Take care: ${issue.message}` });
  }
  return blocks;
}

function containerTable(dose: DoseFigures, units: UnitSystem, isBesideStock: boolean): Block {
  const rows = dose.containers.map((count) => [
    amountWords(dose.product, count.packContent, units),
    String(count.open),
    lastWords(count),
    changeWords(count) ?? 'no other count',
  ]);
  return table(
    `Packs to open${isBesideStock ? ' without the shelf' : ''}${dose.containers.length > 1 ? ', of one of these sizes' : ''}`,
    [
      column('Pack holds', 0.18),
      column('Open', 0.1, 'right'),
      column('What stays', 0.32),
      column('Within the ± of the area', 0.4),
    ],
    rows,
  );
}

function orderBlocks(yard: Yard, visit: DerivedVisit): Block[] {
  const items = workOrder(visit, yard.settings.units, yard);
  if (items.length === 0) return [];
  const note = visit.figures.visit.note.trim();
  return [
    { type: 'heading', text: 'Order of work' },
    ...(note ? [{ type: 'text', strong: false, text: `Note: ${note}` } as const] : []),
    { type: 'list', ticks: true, items },
  ];
}

function cautionBlocks(visit: DerivedVisit, season: readonly Issue[]): Block[] {
  const items = [...CAUTIONS];
  const own = [...visit.issues, ...visit.figures.issues, ...season].filter(
    (issue) => issue.severity !== 'note',
  );
  for (const issue of own) if (!items.includes(issue.message)) items.push(issue.message);
  return [
    { type: 'heading', text: 'Read this first' },
    { type: 'list', ticks: false, items },
  ];
}

function recordBlocks(visit: DerivedVisit): Block[] {
  const used = visit.figures.doses.map((dose) => `${dosedName(dose.product)}: used`);
  return [
    { type: 'heading', text: 'Write down when done' },
    {
      type: 'write',
      fields: [
        'Name',
        'Date',
        'Start time',
        'Finish time',
        'Weather, air temperature',
        'Wind',
        ...used,
        'What was different',
      ],
    },
  ];
}
