import { M_PER_FT } from '../../units/factors';
import { formatLength } from '../../units/format';
import { parseLength } from '../../units/parse';
import type { Issue, UnitSystem } from '../../yard/types';
import type { OffsetRow, OffsetSide } from './makeOffsets';

/** How the table is laid out. */
export interface OffsetLayout {
  readonly side: OffsetSide;
  /** distance from station to station when only offsets are written, m; null: each line begins with its station. */
  readonly spacingM: number | null;
  readonly system: UnitSystem;
}

export type OffsetsRead =
  | { readonly ok: true; readonly rows: readonly OffsetRow[] }
  /** `place.line` is the line of the text, from 1. */
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Longest table taken. */
const MOST_ROWS = 500;
/** The longest offset or station taken, m; a longer one is a slip of the finger or of the unit. */
const LONGEST_M = 10_000;
/** Stationing, a grouped number, a fraction, or a plain number with or without one; then a unit. */
const LENGTHS =
  /(\d+\+\d{2,3}(?:\.\d+)?|\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+\/\d+|(?:\d+\.?\d*|\.\d+)(?:\s+\d+\/\d+)?)\s*(''|['"′″’”]|[a-z]+\.?)?/gi;

/**
 * Reads a table of stations and offsets, one station a line, columns set apart by tabs, semicolons, commas
 * or spaces: `0 12' 6"`, `10 ft, 12 ft 6 in`, `1+25; 8.4`. A first line without a number is a heading.
 */
export function readOffsets(text: string, layout: OffsetLayout): OffsetsRead {
  const wanted = (layout.spacingM === null ? 1 : 0) + (layout.side === 'both' ? 2 : 1);
  const rows: OffsetRow[] = [];
  const issues: Issue[] = [];
  const fault = (line: number, message: string) =>
    issues.push({
      code: 'offsets-unreadable',
      severity: 'error',
      message: `Line ${line}: ${message}`,
      place: { line },
    });
  text.split(/\r?\n/).forEach((line, index) => {
    const isHeading = rows.length === 0 && issues.length === 0 && !/\d/.test(line);
    if (line.trim() === '' || isHeading) return;
    const fields = cutFields(line, wanted);
    if (fields.length !== wanted) {
      fault(index + 1, wrongCount(fields.length, wanted, layout));
      return;
    }
    const values: number[] = [];
    for (const field of fields) {
      const read = readField(field, layout.system, values.length === 0 && layout.spacingM === null);
      if (read.ok) values.push(read.value);
      else fault(index + 1, read.message);
    }
    if (values.length < wanted) return;
    const stationM = layout.spacingM === null ? (values.shift() ?? 0) : rows.length * layout.spacingM;
    const before = rows.at(-1);
    if (before && stationM <= before.stationM) {
      const [now, then] = [stationM, before.stationM].map((m) => formatLength(m, layout.system));
      fault(
        index + 1,
        `station ${now} does not lie beyond ${then} of line ${before.line}. Write the stations in order.`,
      );
      return;
    }
    rows.push({ stationM, offsetM: values[0] ?? 0, otherM: values[1] ?? 0, line: index + 1 });
  });
  if (rows.length > MOST_ROWS)
    fault(rows[MOST_ROWS]?.line ?? 0, `more than ${MOST_ROWS} stations; measure it in parts.`);
  return issues.length > 0 ? { ok: false, issues } : { ok: true, rows };
}

function wrongCount(found: number, wanted: number, layout: OffsetLayout): string {
  const names = [
    ...(layout.spacingM === null ? ['station'] : []),
    ...(layout.side === 'both'
      ? ['left offset', 'right offset']
      : [layout.side === 'across' ? 'width' : 'offset']),
  ].join(', ');
  const count = found === 1 ? 'one length' : `${found === 0 ? 'no' : found} lengths`;
  return `${count} where ${wanted === 1 ? 'one is' : `${wanted} are`} needed (${names}).`;
}

function readField(text: string, system: UnitSystem, isStation: boolean) {
  const plus = isStation ? /^(\d+)\+(\d{2,3}(?:\.\d+)?)$/.exec(text) : null;
  const read = plus
    ? { ok: true as const, value: readStationing(Number(plus[1]), Number(plus[2]), system) }
    : parseLength(text, system);
  if (read.ok && read.value > LONGEST_M)
    return { ok: false as const, message: `${text} is longer than 10 km (6.2 miles).` };
  return read;
}

/** Stationing of engineers: 1+25 is 125 ft, or with metres 0+125 is 125 m. */
function readStationing(full: number, rest: number, system: UnitSystem): number {
  return system === 'us' ? (100 * full + rest) * M_PER_FT : 1000 * full + rest;
}

/** The columns of a line: at tabs and semicolons, else at commas, else where one length ends and the next begins. */
function cutFields(line: string, wanted: number): string[] {
  const clean = (parts: readonly string[]) => parts.map((part) => part.trim()).filter((part) => part !== '');
  if (/[\t;|]/.test(line)) return clean(line.split(/[\t;|]/));
  const byComma = clean(line.split(/,(?!\d{3}(?!\d))|,\s+/));
  if (byComma.length === wanted && byComma.length > 1) return byComma;
  return cutLengths(line);
}

function cutLengths(line: string): string[] {
  const fields: string[] = [];
  let unitBefore: number | null = null;
  let end = 0;
  for (const match of line.matchAll(LENGTHS)) {
    const gap = line.slice(end, match.index).replace(/,/g, ' ').trim();
    const unit = match[2] === undefined ? null : unitM(match[2]);
    const goesOn = gap === '' && unit !== null && unitBefore !== null && unit < unitBefore;
    const text = gap + match[0].trim();
    if (goesOn) fields.push(`${fields.pop()} ${text}`);
    else fields.push(text);
    unitBefore = unit;
    end = match.index + match[0].length;
  }
  const rest = line.slice(end).trim();
  return rest === '' ? fields : [...fields, rest];
}

/** Metres in a unit: a shorter unit after a longer one goes on with the same length. Null for none known. */
function unitM(unit: string): number | null {
  const read = parseLength(`1 ${unit}`, 'metric');
  return read.ok ? read.value : null;
}
