import type { ProductMeaning } from '../pace/calibrate/meaning';
import { panReadings, type Readings, readingList } from '../pace/calibrate/readings';
import type { CalibrationFigure, CalibrationResult, FigureKey } from '../pace/calibrate/types';
import { L_PER_GAL, M2_PER_ACRE, M2_PER_HA } from '../units/factors';
import {
  formatAmount,
  formatAmountRate,
  formatArea,
  formatLength,
  formatMass,
  formatNumber,
  formatPercent,
  formatVolume,
} from '../units/format';
import { formatDay } from '../units/formatDay';
import { formatFlow, formatReading, formatSpeed } from '../units/formatPace';
import { daysBetween } from '../yard/calendar';
import type { Applicator, Calibration, CalibrationKind, Equipment, Product, UnitSystem } from '../yard/types';
import { lotWords } from './paceWords';
import { APPLICATOR_WORDS, productName } from './productWords';

/** What each way of calibrating is called. */
export const CALIBRATION_WORDS: Readonly<Record<CalibrationKind, string>> = {
  bucket: 'Bucket test',
  course: 'Measured course',
  'small-plot': 'Small plot (1/128 acre)',
  catch: 'Catch test',
  pans: 'Pans across the path',
  walk: 'Walk and steps',
};

/** What each finds out. */
export const CALIBRATION_FINDS: Readonly<Record<CalibrationKind, string>> = {
  bucket: 'what comes out, by the time to fill a known volume',
  course: 'what goes on known ground, and how fast you walk',
  'small-plot': 'spray per area, from what you catch in the time of a small plot',
  catch: 'what a setting puts out, by weight over a known run',
  pans: 'how wide it really spreads',
  walk: 'your walking speed with it, and the length of your step',
};

/** Ways of calibrating that fit an applicator, the most telling first. */
export const CALIBRATIONS_OF: Readonly<Record<Applicator, readonly CalibrationKind[]>> = {
  'hose-end': ['bucket', 'course', 'walk'],
  'tank-sprayer': ['bucket', 'small-plot', 'course', 'walk'],
  'broadcast-spreader': ['pans', 'catch', 'course', 'walk'],
  'drop-spreader': ['catch', 'course', 'walk'],
  'by-hand': ['course', 'walk'],
};

/** The equipment's name, or words for none. */
export function equipmentName(equipment: Pick<Equipment, 'name' | 'applicator'>): string {
  return equipment.name.trim() || `${APPLICATOR_WORDS[equipment.applicator]} without a name`;
}

/** "swath 6.0 ft; 0.52 gal/min, 6.3 % of it product; walk 2.1 mph; 2 settings". */
export function equipmentLine(equipment: Equipment, units: UnitSystem): string {
  const { swathM, overlapShare, flowLPerS, productShare, speedMPerS, settings } = equipment;
  const known = settings.filter(({ rateKgPerM2 }) => rateKgPerM2 > 0).length;
  const overlap = overlapShare > 0 ? `, ${formatPercent(overlapShare)} overlap` : '';
  const share = productShare === null ? '' : `, ${formatPercent(productShare)} of it product`;
  return [
    `swath ${formatLength(swathM, units)}${overlap}`,
    flowLPerS === null ? '' : `${formatFlow(flowLPerS, units)}${share}`,
    speedMPerS === null ? '' : `walk ${formatSpeed(speedMPerS, units)}`,
    known === 0 ? '' : `${known} ${known === 1 ? 'setting' : 'settings'}`,
  ]
    .filter((part) => part !== '')
    .join('; ');
}

export const FIGURE_WORDS: Readonly<Record<FigureKey, string>> = {
  flow: 'Comes out',
  'product-flow': 'Product in it',
  'product-share': 'Share of product',
  'spray-rate': 'Spray on the ground',
  'product-rate': 'Product on the ground',
  'product-volume-rate': 'Product on the ground',
  speed: 'Walk',
  swath: 'Swath',
  'left-reach': 'Half of the middle, to the left',
  'right-reach': 'Half of the middle, to the right',
  step: 'Your step',
};

/** A figure of a calibration as text. @param value SI, as the figure has it */
export function figureText(key: FigureKey, value: number, units: UnitSystem): string {
  switch (key) {
    case 'flow':
    case 'product-flow':
      return formatFlow(value, units);
    case 'product-share':
      return value >= 1
        ? 'all of it'
        : `${formatPercent(value)} (1 to ${formatNumber(1 / value - 1)} of water)`;
    case 'spray-rate':
      return `${formatAmountRate({ unit: 'L', value }, units)} (${perLargeArea(value, units)})`;
    case 'product-volume-rate':
      return formatAmountRate({ unit: 'L', value }, units);
    case 'product-rate':
      return formatAmountRate({ unit: 'kg', value }, units);
    case 'speed':
      return formatSpeed(value, units);
    default:
      return formatLength(value, units);
  }
}

/** "25.5 gal an acre", "240 L/ha": as labels of fields and nozzles say it. */
function perLargeArea(lPerM2: number, units: UnitSystem): string {
  return units === 'us'
    ? `${formatNumber((lPerM2 * M2_PER_ACRE) / L_PER_GAL)}\u00a0gal an acre`
    : `${formatNumber(lPerM2 * M2_PER_HA)}\u00a0L/ha`;
}

/** "0.50 gal/min to 0.54 gal/min by single readings"; null for a single one. */
export function spreadWords(figure: CalibrationFigure, units: UnitSystem): string | null {
  if (figure.low === null || figure.high === null) return null;
  const [low, high] = [figureText(figure.key, figure.low, units), figureText(figure.key, figure.high, units)];
  return low === high ? 'the readings agree' : `${low} to ${high} by single readings`;
}

/** A season: older calibrations are worth doing again, days; common practice, no source. */
const SEASON_DAYS = 300;

/** The newest day of any of its calibrations, or of one kind; null: none. */
export function lastCalibrated(
  equipment: Pick<Equipment, 'calibrations'>,
  kind?: CalibrationKind,
): string | null {
  const days = equipment.calibrations
    .filter((each) => kind === undefined || each.kind === kind)
    .map((each) => each.on);
  return days.sort().at(-1) ?? null;
}

/** What reminds of calibrating: never done, or longer ago than a season; null: done lately. @param today YYYY-MM-DD */
export function calibrationReminder(
  equipment: Pick<Equipment, 'calibrations'>,
  today: string,
): string | null {
  const last = lastCalibrated(equipment);
  if (last === null) return 'No calibration on record yet.';
  const days = daysBetween(last, today);
  return days !== null && days > SEASON_DAYS
    ? `Last calibrated ${formatDay(last, true)}: do it again before this season’s work.`
    : null;
}

const TAKEN_WORDS: Readonly<Record<keyof CalibrationResult['change'], string>> = {
  flowLPerS: 'what comes out',
  productShare: 'the share of product',
  speedMPerS: 'your walk',
  swathM: 'the swath',
};

/** What of a calibration goes into the equipment: "what comes out, the share of product"; empty where nothing does. */
export function takenWords(result: CalibrationResult, hasProduct: boolean): string {
  return [
    ...(Object.keys(result.change) as (keyof CalibrationResult['change'])[]).map((key) => TAKEN_WORDS[key]),
    ...(result.settingKgPerM2 !== null && hasProduct ? ['the setting'] : []),
    ...(result.stepM === null ? [] : ['your step']),
  ].join(', ');
}

/** All that was read, in short: "5 gal in 17.0 s, 18.2 s; 1 part to 32 of water". */
export function readingsWords(
  calibration: Pick<Calibration, 'kind' | 'readings'>,
  units: UnitSystem,
): string {
  const { readings } = calibration;
  const times = readingList(readings, 'timeS').map(formatReading);
  const pans = panReadings(readings).map((held) => formatNumber(held));
  const steps = readingList(readings, 'steps').map((count) => formatNumber(count));
  const { volumeL } = readings;
  const filled = volumeL === undefined ? '' : formatVolume(volumeL, units);
  return [
    lengthsWords(readings, units),
    filled !== '' && times.length > 0 ? `${filled} in ${times.join(', ')}` : filled || times.join(', '),
    drawWords(readings, units),
    amountsWords(readings, units),
    steps.length > 0 ? `${steps.join(', ')} steps` : '',
    pans.length > 0 ? `pans ${pans.join(' – ')}` : '',
  ]
    .filter((part) => part !== '')
    .join('; ');
}

/** How the share of product was read. */
function drawWords(readings: Readings, units: UnitSystem): string {
  const { waterParts, emptiedL, emptiedS, goneL, goneS } = readings;
  if (waterParts === 0) return 'undiluted';
  if (waterParts !== undefined) return `1 part to ${formatNumber(waterParts)} of water`;
  const gone = (volumeL: number | undefined, timeS: number | undefined, words: string) =>
    [
      volumeL === undefined ? '' : formatVolume(volumeL, units),
      words,
      timeS === undefined ? '' : `in ${formatReading(timeS)}`,
    ]
      .filter((part) => part !== '')
      .join(' ');
  if (emptiedL !== undefined || emptiedS !== undefined) return gone(emptiedL, emptiedS, 'emptied');
  return goneL !== undefined || goneS !== undefined ? gone(goneL, goneS, 'gone') : '';
}

/** What was caught or used. */
function amountsWords(readings: Readings, units: UnitSystem): string {
  const { usedL, usedKg } = readings;
  const caught = [
    ...readingList(readings, 'caughtL').map((value) => formatVolume(value, units)),
    ...readingList(readings, 'caughtKg').map((value) => formatMass(value, units)),
  ];
  return [
    caught.length > 0 ? `caught ${caught.join(', ')}` : '',
    usedL === undefined ? '' : `used ${formatVolume(usedL, units)}`,
    usedKg === undefined ? '' : `used ${formatMass(usedKg, units)}`,
  ]
    .filter((part) => part !== '')
    .join('; ');
}

function lengthsWords(readings: Readings, units: UnitSystem): string {
  const show = (name: string) => {
    const value = readings[name];
    return value === undefined ? null : formatLength(value, units);
  };
  const [length, width, distance, apart] = ['lengthM', 'widthM', 'distanceM', 'apartM'].map(show);
  if (length && width) return `${length} by ${width}`;
  return distance ?? (apart ? `${apart} apart` : '');
}

/** Cautions of a calibration with that applicator; common practice, no source. */
export function calibrationCautions(applicator: Applicator): readonly string[] {
  const isWet = applicator === 'hose-end' || applicator === 'tank-sprayer';
  return [
    'The product’s label and the maker’s instructions come first.',
    isWet
      ? 'Plain water only. What was in it before is rinsed out onto ground that may have it.'
      : 'Over a tarp or into a pan, on dry ground; sweep up what lies there and put it back. On a lawn, what is spread counts as spread.',
    `Never toward a drain, a well or water: neither ${isWet ? 'spray nor rinse water' : 'granules nor sweepings'}.`,
    isWet
      ? 'Gloves and eye protection, with a rinsed sprayer too.'
      : 'Gloves; keep the dust out of eyes and lungs.',
  ];
}

/** What a calibration of a sprayer means for one product, as sentences. */
export function meaningWords(meaning: ProductMeaning, use: Product, units: UnitSystem): readonly string[] {
  const { walk, fill, labelSprayLPerM2 } = meaning;
  const words: string[] = [];
  if (walk !== null) {
    const lot = lotWords(walk, units);
    words.push(
      `${productName(use)} at its label rate: walk ${formatSpeed(walk.speedMPerS, units)}, ${lot}, one coat.`,
    );
  }
  if (fill !== null) {
    const asked =
      labelSprayLPerM2 === null
        ? ''
        : ` The label’s own water makes ${formatAmountRate({ unit: 'L', value: labelSprayLPerM2 }, units)}.`;
    words.push(
      `At the walk just done, a fill of ${formatAmount(fill.spray, units)} takes ${formatAmount(fill.product, units)} of ${productName(use)} and does ${formatArea(fill.areaM2, units)}.${asked}`,
    );
  }
  return words;
}
