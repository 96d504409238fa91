import type { Issue, UnitSystem } from '../yard/types';
import { MONTH_NAMES } from '../yard/yearDay';
import { readDailyTable } from './readDailyTable';
import {
  monthOfWord,
  readNumbers,
  splitCells,
  type TemperatureUnit,
  toCelsius,
  unitInText,
} from './readTemperatures';

/** Twelve monthly means, January first, °C, and how the text was understood, in sentences. */
export type MonthlyMeansRead =
  | { readonly ok: true; readonly monthlyMeanC: readonly number[]; readonly notes: readonly string[] }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Hottest and coldest monthly mean that any place on the Earth comes near, °C. */
const HOTTEST_C = 45;
const COLDEST_C = -60;
/** Most by which a printed mean of the year may differ from that of the twelve months, in the unit of the text. */
const YEAR_MEAN_SLACK = 1;

type Found =
  | { readonly ok: true; readonly values: readonly number[]; readonly notes: readonly string[] }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/**
 * Monthly mean air temperatures from pasted text: twelve numbers with anything between them (a thirteenth that is
 * their mean is passed over), a table with the names of months in its first column or its head (its mean, or the
 * middle of its highest and lowest), or a list of days with date and temperatures, averaged by month.
 * @param system decides the unit where the text names neither °F nor °C
 * @returns what is wrong in words, with its line where one is at fault
 */
export function readMonthlyMeans(text: string, system: UnitSystem): MonthlyMeansRead {
  if (text.trim() === '') return wrong('Nothing was pasted.');
  const named = unitInText(text);
  if (named === 'both') return wrong('The text names both °F and °C: leave one of them.');
  const unit: TemperatureUnit = named ?? (system === 'us' ? 'F' : 'C');
  const lines = text.split(/\r\n|\r|\n/);
  const found = readDailyTable(lines) ?? readMonthTable(lines) ?? readTwelve(text);
  if (!found.ok) return found;
  const monthlyMeanC = found.values.map((value) => toCelsius(value, unit));
  const odd = monthlyMeanC.findIndex((value) => value > HOTTEST_C || value < COLDEST_C);
  if (odd >= 0) {
    const other = unit === 'F' ? 'C' : 'F';
    return wrong(
      `${found.values[odd]} °${unit} as the mean of ${MONTH_NAMES[odd]} is not possible. If the figures are in °${other}, write °${other} beside them.`,
    );
  }
  const notes = named === null ? [`Read as °${unit}, since the text names no unit.`] : [];
  return { ok: true, monthlyMeanC, notes: [...notes, ...found.notes] };
}

function wrong(message: string, line?: number): { ok: false; issues: readonly Issue[] } {
  const place = line === undefined ? {} : { line };
  return { ok: false, issues: [{ code: 'monthly-means', severity: 'error', message, place }] };
}

/** Twelve numbers, whatever stands between them. */
function readTwelve(text: string): Found {
  const values = readNumbers(text);
  if (values.length === 12) return { ok: true, values, notes: [] };
  const months = values.slice(0, 12);
  const mean = months.reduce((sum, value) => sum + value, 0) / 12;
  if (values.length === 13 && Math.abs((values[12] ?? Number.NaN) - mean) <= YEAR_MEAN_SLACK)
    return {
      ok: true,
      values: months,
      notes: ['The thirteenth number is the mean of the year; it is passed over.'],
    };
  const count =
    values.length === 0
      ? 'No number was'
      : values.length === 1
        ? 'One number was'
        : `${values.length} numbers were`;
  return wrong(`${count} found; twelve are wanted, January first.`);
}

/** A table with the names of months down its first column, or along its head; null when it is none. */
function readMonthTable(lines: readonly string[]): Found | null {
  const rows = lines.map((line, index) => ({ cells: splitCells(line), line: index + 1 }));
  const head = rows.findIndex(({ cells }) => cells.filter((cell) => monthOfWord(cell) !== null).length >= 12);
  if (head >= 0) return readAcross(rows, head);
  const named = rows.filter(({ cells }) => cells.length > 0 && monthOfWord(cells[0] ?? '') !== null);
  if (named.length < 2 || !named.some(({ cells }) => cells.length > 1)) return null;
  return readDown(rows, named);
}

interface Row {
  readonly cells: readonly string[];
  readonly line: number;
}

function readAcross(rows: readonly Row[], head: number): Found {
  const heads = rows[head]?.cells ?? [];
  const columns = Array.from({ length: 12 }, (_, month) =>
    heads.findIndex((cell) => monthOfWord(cell) === month),
  );
  const missing = columns.findIndex((column) => column < 0);
  if (missing >= 0)
    return wrong(`The head of the table has no ${MONTH_NAMES[missing]}.`, rows[head]?.line ?? 0);
  const first = Math.min(...columns);
  const series = rows.slice(head + 1).flatMap(({ cells, line }) => {
    // a label of several words shifts nothing: numbers are counted from where they begin
    const start = cells.findIndex((cell) => readNumber(cell) !== null);
    if (start < 0 || cells.length - start < 12) return [];
    const shift = start - first;
    const label = cells.slice(0, start).join(' ');
    return [{ label, line, values: columns.map((column) => readNumber(cells[column + shift] ?? '')) }];
  });
  return pickSeries(series, rows[head]?.line ?? 0);
}

function readDown(rows: readonly Row[], named: readonly Row[]): Found {
  const seen = new Map<number, Row>();
  for (const row of named) {
    const month = monthOfWord(row.cells[0] ?? '') as number;
    const before = seen.get(month);
    if (before)
      return wrong(
        `${MONTH_NAMES[month]} stands in line ${before.line} and again in line ${row.line}.`,
        row.line,
      );
    seen.set(month, row);
  }
  const missing = MONTH_NAMES.filter((_, month) => !seen.has(month));
  if (missing.length > 0) return wrong(`No line for ${missing.join(', ')}.`);
  const ordered = Array.from({ length: 12 }, (_, month) => seen.get(month) as Row);
  const firstLine = Math.min(...named.map(({ line }) => line));
  const heads = rows.find(({ line, cells }) => line === firstLine - 1 && cells.length > 1)?.cells ?? [];
  const width = Math.max(...ordered.map(({ cells }) => cells.length));
  const series = Array.from({ length: width - 1 }, (_, index) => ({
    label: heads[index + 1] ?? '',
    line: firstLine,
    values: ordered.map(({ cells }) => readNumber(cells[index + 1] ?? '')),
  }));
  for (const [month, { cells, line }] of ordered.entries())
    if (cells.slice(1).every((cell) => readNumber(cell) === null))
      return wrong(`${MONTH_NAMES[month]} has no temperature in line ${line}.`, line);
  return pickSeries(series, firstLine);
}

interface Series {
  readonly label: string;
  readonly line: number;
  readonly values: readonly (number | null)[];
}

/** The mean of the series, or the middle of highest and lowest, or the only one there is. */
function pickSeries(series: readonly Series[], line: number): Found {
  const whole = series.filter(({ values }) => values.every((value) => value !== null));
  if (whole.length === 0) {
    const holed = series.find(({ values }) => values.some((value) => value !== null));
    const month = holed?.values.indexOf(null) ?? 0;
    return wrong(
      holed ? `${MONTH_NAMES[month]} has no temperature.` : 'No temperatures stand under the months.',
      holed?.line ?? line,
    );
  }
  const is = (label: string, words: RegExp) => words.test(label.toLowerCase());
  const extreme = /max|min|high|low|record|extreme|precip|rain|snow|degree|days|year/;
  const mean = whole.find(({ label }) => is(label, /mean|avg|average|tavg/) && !is(label, extreme));
  const high = whole.find(
    ({ label }) => is(label, /max|high/) && !is(label, /record|extreme|highest|lowest/),
  );
  const low = whole.find(({ label }) => is(label, /min|low/) && !is(label, /record|extreme|highest|lowest/));
  if (mean)
    return {
      ok: true,
      values: mean.values as number[],
      notes: whole.length > 1 ? [`Taken: “${mean.label}”.`] : [],
    };
  if (high && low)
    return {
      ok: true,
      values: high.values.map((value, month) => ((value as number) + (low.values[month] as number)) / 2),
      notes: [`Taken: the middle of “${high.label}” and “${low.label}”.`],
    };
  const [only, second] = whole;
  if (only && !second && !is(only.label, extreme))
    return { ok: true, values: only.values as number[], notes: [] };
  const labels = whole.map(({ label }) => `“${label || 'no name'}”`).join(', ');
  return wrong(
    `Which of ${labels} is the mean temperature is not clear: name its column or row “mean”.`,
    line,
  );
}

function readNumber(cell: string): number | null {
  const [value, second] = readNumbers(cell);
  return value !== undefined && second === undefined && !/[a-z]{2}/i.test(cell) ? value : null;
}
