import type { RunOutMark, Vessel, WalkNote } from '../cover/passTypes';
import { isLiquid } from '../plan/rate';
import { formatArea, formatPercent } from '../units/format';
import type { Applicator, Product, UnitSystem } from '../yard/types';
import { amountWords } from './productWords';
import { groundName } from './zoneWords';

/** What a dose is put out with, for the words of its vessels. */
export interface DoseWay {
  /** as the dose's use has it. */
  readonly product: Product;
  /** of the equipment it goes out with. */
  readonly applicator: Applicator;
  /** 2: two coats at half the rate, so that the dose's ground is walked over twice; absent: one. */
  readonly coats?: 1 | 2;
}

/** A line of the list of marks: after how much ground, where, and what is seen there. */
export interface NoteLine {
  /** "after 1,240 sq ft". */
  readonly after: string;
  /** "in “Back lawn”, pass 7" or "at the end of “Oak bed”". */
  readonly where: string;
  /** "bottle 2 at one half". */
  readonly what: string;
  /** all of it, as one line. */
  readonly line: string;
  readonly isZoneEnd: boolean;
  /** null: what should be left at the end of a zone. */
  readonly mark: RunOutMark | null;
}

/** Below this share nobody reads a level: what is there is nearly nothing. */
const NEARLY = 0.05;
/** A share within this of one that has a word is called by it: nobody reads a level closer. */
const NEAR = 0.005;
/** A third is said of what is within this of it, with the percent beside it. */
const NEAR_THIRD = 0.025;
const QUARTERS: readonly (readonly [number, string])[] = [
  [1, 'full'],
  [0.75, 'three quarters'],
  [0.5, 'one half'],
  [0.25, 'one quarter'],
];
const THIRDS: readonly (readonly [number, string])[] = [
  [2 / 3, 'two thirds'],
  [1 / 3, 'one third'],
];

/** What a vessel is called in the trade: a bottle on the hose, a bag, a tank load, a fill of the hopper or jar. */
export function vesselNoun(kind: Vessel['kind'], { product, applicator }: DoseWay): string {
  if (kind === 'tank-load') return 'tank load';
  if (kind === 'hopper-fill') return applicator === 'hose-end' ? 'jar' : 'hopper fill';
  if (applicator === 'hose-end') return 'bottle';
  return isLiquid(product) ? 'container' : 'bag';
}

/** "bottle 2". */
export function vesselName({ kind, number }: Pick<Vessel, 'kind' | 'number'>, way: DoseWay): string {
  return `${vesselNoun(kind, way)} ${number}`;
}

/** A share of a full vessel: "one half", "about two thirds (69 %)", "45 %", "nearly nothing (2 %)", "empty". @param left 0 to 1 */
export function levelWords(left: number): string {
  if (left < NEAR) return 'empty';
  const quarter = QUARTERS.find(([share]) => Math.abs(share - left) < NEAR);
  if (quarter) return quarter[1];
  if (left < NEARLY) return `nearly nothing (${formatPercent(left)})`;
  const third = THIRDS.find(([share]) => Math.abs(share - left) <= NEAR_THIRD);
  return third ? `about ${third[1]} (${formatPercent(left)})` : formatPercent(left);
}

/** "bottle 2 at one half", "bottle 2 runs out", "bottle 3 still full". */
export function standWords(vessel: Pick<Vessel, 'kind' | 'number'>, left: number, way: DoseWay): string {
  const name = vesselName(vessel, way);
  if (left < NEAR) return `${name} runs out`;
  return left > 1 - NEAR ? `${name} still full` : `${name} at ${levelWords(left)}`;
}

/** A mark in a few signs, for map and margins: "2 ½", "2 out". */
export function markSign({ number, left }: Pick<RunOutMark, 'number' | 'left'>): string {
  const sign = left === 0.75 ? '¾' : left === 0.5 ? '½' : left === 0.25 ? '¼' : 'out';
  return `${number} ${sign}`;
}

/** Ground as it is walked: in two coats at half the rate the dose's ground is walked over twice. @param areaM2 m² of the dose */
function groundWords(areaM2: number, coats: 1 | 2, units: UnitSystem): string {
  return coats === 1 ? formatArea(areaM2, units) : `${formatArea(2 * areaM2, units)} at half the rate`;
}

/**
 * One line of the list beside a walk. Of two coats the ground of both is counted.
 * @param zoneNames names as typed, by zone id
 * @param vessels those of the dose
 */
export function noteLine(
  note: WalkNote,
  vessels: readonly Vessel[],
  zoneNames: ReadonlyMap<string, string>,
  way: DoseWay,
  units: UnitSystem,
): NoteLine {
  const coats = way.coats ?? 1;
  const { mark, isZoneEnd, zoneId, coat, legKind, legNumber, doneM2, left } = note;
  const name = `“${groundName(zoneNames.get(zoneId) ?? '')}”`;
  const turn = coats === 2 ? `, ${coat === 1 ? 'first' : 'second'} coat` : '';
  const stretch = legKind === 'lap' || legKind === 'pass' ? `, ${legKind} ${legNumber}` : '';
  const after = `after ${groundWords(doneM2, coats, units)}`;
  const where = isZoneEnd ? `at the end of ${name}${turn}` : `in ${name}${turn}${stretch}`;
  const vessel = note.vessel === null ? undefined : vessels[note.vessel];
  const what = vessel && left !== null ? standWords(vessel, left, way) : 'nothing to read off';
  const line = isZoneEnd ? `${where} (${after}): ${what}` : `${after}, ${where}: ${what}`;
  return { after, where, what, line, isZoneEnd, mark };
}

/** The whole list beside a walk, in walking order (see `walkNotes`). */
export function markLines(
  notes: readonly WalkNote[],
  vessels: readonly Vessel[],
  zoneNames: ReadonlyMap<string, string>,
  way: DoseWay,
  units: UnitSystem,
): readonly NoteLine[] {
  const coats = notes.some(({ coat }) => coat === 2) ? 2 : (way.coats ?? 1);
  return notes.map((note) => noteLine(note, vessels, zoneNames, { ...way, coats }, units));
}

/**
 * What a vessel is and does: "bottle 1, opened: 12 fl oz in it, does 1,200 sq ft", "tank load 2: 4 gal, does
 * 4,000 sq ft", "hopper fill 3 (bags 1 and 2): 6.25 lb, starts at 63 % of a full hopper, does 1,250 sq ft", "bag 2: 50 lb, does
 * 5,000 sq ft, one half is left".
 */
export function vesselWords(vessel: Vessel, way: DoseWay, units: UnitSystem): string {
  const { kind, full, start, taken, areaM2, from: packs = [] } = vessel;
  const isPart = start.value < full.value * (1 - NEAR);
  const isOpened = kind === 'container' && isPart;
  const noun = vesselNoun('container', way);
  const from = packs.length === 0 ? '' : ` (${noun}${packs.length === 1 ? '' : 's'} ${andList(packs)})`;
  const name = `${vesselName(vessel, way)}${from}${isOpened ? ', opened' : ''}`;
  const amount = `${amountWords(way.product, start, units)}${isOpened ? ' in it' : ''}`;
  // levels are shares of what it holds: "one half" is read off wrongly by whoever takes the fill for full
  const begin =
    isPart && !isOpened
      ? `, starts at ${levelWords(start.value / full.value)} of a full ${way.applicator === 'hose-end' ? 'jar' : kind === 'tank-load' ? 'tank' : 'hopper'}`
      : '';
  const left = (start.value - taken.value) / full.value;
  const rest = left < NEAR ? '' : `, ${levelWords(left)} is left`;
  return `${name}: ${amount}${begin}, does ${groundWords(areaM2, way.coats ?? 1, units)}${rest}`;
}

/** "1", "1 and 2", "1, 2 and 3". */
function andList(numbers: readonly number[]): string {
  return [numbers.slice(0, -1).join(', '), String(numbers.at(-1))]
    .filter((part) => part !== '')
    .join(' and ');
}
