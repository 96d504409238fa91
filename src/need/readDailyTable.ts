import type { Issue } from '../yard/types';
import { splitCells } from './readTemperatures';

/** What a list of days comes to, in the unit of the text. */
export type DailyRead =
  | { readonly ok: true; readonly values: readonly number[]; readonly notes: readonly string[] }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Fewest days with a date for a text to be taken for a list of days. */
const FEWEST_DAYS = 3;
const MISSING = /^(|m|t|na|n\/a|nan|null|-|--|-?9999?(\.\d+)?)$/i;
/** A list begins with at most so many lines of another kind. */
const MOST_HEAD_LINES = 60;

interface Columns {
  readonly date: number;
  readonly mean: number | null;
  readonly high: number | null;
  readonly low: number | null;
}

/**
 * A table of days with a date and temperatures: its daily mean, or the middle of highest and lowest (the daily
 * mean of the US climate normals, NOAA NCEI). Days of all years are averaged month by month. Marks of a missing
 * value (empty, M, NA, 9999 and the like) are passed over.
 * @returns null when the text is no list of days
 */
export function readDailyTable(lines: readonly string[]): DailyRead | null {
  const rows = lines
    .map((line, index) => ({ cells: splitCells(line), line: index + 1 }))
    .filter(({ cells }) => cells.length > 1);
  const head = rows.slice(0, MOST_HEAD_LINES).findIndex(({ cells }) => cells.some(isDateHead));
  const headCells = rows[head]?.cells ?? [];
  const body = rows.slice(head + 1);
  const dateColumn = head >= 0 ? headCells.findIndex(isDateHead) : dateColumnOf(body);
  const dated = body.filter(({ cells }) => isDate(cells[dateColumn] ?? ''));
  if (dateColumn < 0 || dated.length < FEWEST_DAYS) return null;
  const columns = head >= 0 ? columnsOf(headCells, dateColumn) : guessColumns(dated, dateColumn);
  if (typeof columns === 'string') return fault(columns, rows[head]?.line);
  return average(dated, columns, isDayFirst(dated.map(({ cells }) => cells[dateColumn] ?? '')));
}

const isDateHead = (cell: string): boolean => /^(date|day|datetime|time|valid|obs\.? date)\b/i.test(cell);
const DATE = /^(\d{4})-?(\d{1,2})-?(\d{1,2})(?:[T ].*)?$|^(\d{1,2})[/.](\d{1,2})[/.](\d{2}|\d{4})$/;
const isDate = (cell: string): boolean =>
  DATE.test(cell) && (/[-/.]/.test(cell) || /^(1[89]|20)\d{6}$/.test(cell));

function dateColumnOf(rows: readonly { readonly cells: readonly string[] }[]): number {
  return rows.find(({ cells }) => cells.some(isDate))?.cells.findIndex(isDate) ?? -1;
}

/** Where highest, lowest and mean stand, or what is wrong in words. */
function columnsOf(heads: readonly string[], date: number): Columns | string {
  const at = (words: RegExp, not?: RegExp) => {
    const index = heads.findIndex((cell, i) => i !== date && words.test(cell) && !(not?.test(cell) ?? false));
    return index < 0 ? null : index;
  };
  const other = /precip|rain|snow|wind|humid|dew|depart|normal|record|soil|cdd|hdd/i;
  const high = at(/max|high/i, other);
  const low = at(/min|low/i, other);
  const mean = at(
    /avg|average|mean|^temp(erature)?\b|^tobs$|^t$/i,
    /max|min|high|low|precip|rain|snow|wind|humid|dew|depart|normal|soil/i,
  );
  if (mean === null && (high === null || low === null))
    return 'The list of days wants a column of daily means, or two named max and min.';
  return { date, mean, high, low };
}

/** Without a head: one column of temperatures is the mean, two are highest and lowest. */
function guessColumns(
  rows: readonly { readonly cells: readonly string[] }[],
  date: number,
): Columns | string {
  const width = Math.max(...rows.map(({ cells }) => cells.length));
  const numeric = Array.from({ length: width }, (_, index) => index).filter(
    (index) => index !== date && rows.some(({ cells }) => isTemperature(cells[index] ?? '')),
  );
  const [first, second, third] = numeric;
  if (first === undefined || third !== undefined)
    return 'Name the columns of the list of days in its first line, such as date, max, min.';
  return { date, mean: second === undefined ? first : null, high: first, low: second ?? null };
}

const isTemperature = (cell: string): boolean => /^[-+−]?\d+(\.\d*)?$/.test(cell) && !MISSING.test(cell);

function average(
  rows: readonly { readonly cells: readonly string[]; readonly line: number }[],
  columns: Columns,
  dayFirst: boolean,
): DailyRead {
  const sums = Array.from({ length: 12 }, () => ({ sum: 0, days: 0 }));
  let skipped = 0;
  for (const { cells, line } of rows) {
    const month = monthOf(cells[columns.date] ?? '', dayFirst);
    if (month === null) return fault(`“${cells[columns.date]}” in line ${line} is no date.`, line);
    const mean = meanOf(cells, columns);
    if (typeof mean === 'string') return fault(`“${mean}” in line ${line} is not a temperature.`, line);
    const own = sums[month];
    if (mean === null || own === undefined) skipped++;
    else {
      own.sum += mean;
      own.days++;
    }
  }
  const bare = sums.flatMap(({ days }, month) => (days === 0 ? [month + 1] : []));
  if (bare.length > 0)
    return fault(
      `No temperature of ${bare.length === 1 ? 'month' : 'months'} ${bare.join(', ')} is in the list; every month of the year wants at least one day.`,
    );
  const used = sums.reduce((total, { days }) => total + days, 0);
  const fewest = Math.min(...sums.map(({ days }) => days));
  const notes = [
    `${used} days averaged by month${skipped > 0 ? `, ${skipped} without a temperature passed over` : ''}.`,
    ...(fewest < 28 ? [`One month has ${fewest} ${fewest === 1 ? 'day' : 'days'} only.`] : []),
    ...(columns.mean === null ? ['The mean of a day is the middle of its highest and lowest.'] : []),
  ];
  return { ok: true, values: sums.map(({ sum, days }) => sum / days), notes };
}

/** The mean of a day; null where it is missing; the cell itself where it is no number. */
function meanOf(cells: readonly string[], { mean, high, low }: Columns): number | string | null {
  const read = (column: number | null): number | string | null => {
    const cell = column === null ? '' : (cells[column] ?? '').replace(/^−/, '-');
    if (MISSING.test(cell)) return null;
    const value = Number(cell.replace(/[°º]?\s?[FC]?$/i, ''));
    return Number.isFinite(value) ? value : cell;
  };
  const own = read(mean);
  if (own !== null || high === null || low === null) return own;
  const [top, bottom] = [read(high), read(low)];
  if (typeof top === 'string') return top;
  if (typeof bottom === 'string') return bottom;
  return top === null || bottom === null ? null : (top + bottom) / 2;
}

/** 3/14/2024 is March; where some first number is over 12 the day stands first. */
function isDayFirst(dates: readonly string[]): boolean {
  return dates.some((date) => date.includes('.') || Number(/^(\d{1,2})\//.exec(date)?.[1]) > 12);
}

/** @returns 0 to 11; null where month or day do not exist */
function monthOf(date: string, dayFirst: boolean): number | null {
  const match = DATE.exec(date);
  if (match === null) return null;
  const [first, second] = [Number(match[4]), Number(match[5])];
  const [month, day] =
    match[1] !== undefined
      ? [Number(match[2]), Number(match[3])]
      : dayFirst
        ? [second, first]
        : [first, second];
  return month >= 1 && month <= 12 && day >= 1 && day <= 31 ? month - 1 : null;
}

function fault(message: string, line?: number): DailyRead {
  return {
    ok: false,
    issues: [
      { code: 'monthly-means', severity: 'error', message, place: line === undefined ? {} : { line } },
    ],
  };
}
