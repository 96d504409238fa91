import type { UnitChoice } from '../units/choices';
import type { Issue, Product } from '../yard/types';
import { type CellValue, type HeadingRead, type LabelColumn, readHeading } from './labelColumns';
import { type LabelLine, labelFromRows, rowFault } from './labelFromRows';
import { commaOf, splitTable } from './readCsv';
import { FORMULA } from './writeLabelsCsv';

/** Labels that were read, and what was wrong; what an error names was left out. */
export interface LabelsRead {
  readonly products: readonly Product[];
  readonly issues: readonly Issue[];
}

interface Heading {
  readonly title: string;
  readonly column: LabelColumn;
  readonly unit: UnitChoice | null;
}

/** Columns without which no label can be read. */
const NEEDED = ['name', 'form'];

/**
 * Reads a table of labels (columns in `labelColumns.ts`, in any order; comma, semicolon or tab between the
 * cells). Units are those of the headings, US and metric alike. A row that cannot be read is left out and
 * told with its line and column; where it is the first of its product, the whole product is. Ids are
 * `label-1`, `pack-1`, `use-2` and so on: unlike within one product, and to be made anew on a shelf.
 */
export function readLabelsCsv(text: string): LabelsRead {
  const plain = text.replace(/^\uFEFF/, '');
  const comma = commaOf(plain);
  const [first, ...rows] = splitTable(plain, comma);
  if (first === undefined) return refused('labels-empty', 'The file is empty.', 1);
  const issues: Issue[] = [];
  const known = first.cells.map((title) => readHeading(title));
  const headings = first.cells.map((title, i) => {
    const isTwice = known.some((other, j) => j !== i && other !== null && other.column === known[i]?.column);
    return headingOf(title, known[i] ?? null, isTwice, first.line, issues);
  });
  const missing = NEEDED.filter((key) => !headings.some((heading) => heading?.column.key === key));
  if (missing.length > 0) {
    const names = missing.map((key) => (key === 'name' ? '“Product”' : '“Form”')).join(' and ');
    const message = `Line ${first.line} must be the headings of a table of labels; it has no column ${names}. It reads: ${first.cells.join(', ').slice(0, 120)}`;
    return refused('labels-no-columns', message, first.line);
  }
  if (issues.some((issue) => issue.severity === 'error')) return { products: [], issues };

  const lines: LabelLine[] = [];
  for (const { line, cells, isOpen } of rows) {
    const faults: Issue[] = [];
    const row: Record<string, CellValue> = {};
    const titles: Record<string, string> = {};
    if (isOpen) faults.push(rowFault(line, '', 'a quotation mark is opened and never closed'));
    const extra = cells.slice(headings.length).find((cell) => cell !== '');
    if (extra !== undefined)
      faults.push(rowFault(line, '', `“${short(extra)}” stands beyond the last heading`));
    headings.forEach((heading, i) => {
      const cell = cells[i] ?? '';
      if (heading === null || cell === '' || isOpen) return;
      const read = readCell(cell, heading, comma !== ',');
      titles[heading.column.key] = heading.title;
      if ('fault' in read) faults.push(rowFault(line, heading.title, read.fault));
      else row[heading.column.key] = read.value;
    });
    lines.push({ line, row, titles, faults });
  }
  const products: Product[] = [];
  for (const group of groupLines(lines, issues)) {
    const { product, faults } = labelFromRows(`label-${products.length + 1}`, group);
    issues.push(...faults);
    if (product) products.push(product);
  }
  if (products.length === 0 && issues.length === 0)
    issues.push({
      code: 'labels-none',
      severity: 'error',
      message: 'The table has headings but no labels under them.',
      place: { line: first.line },
    });
  return { products, issues };
}

function headingOf(
  title: string,
  read: HeadingRead,
  isTwice: boolean,
  line: number,
  issues: Issue[],
): Heading | null {
  if (title === '') return null;
  const tell = (severity: Issue['severity'], what: string) =>
    issues.push(rowFault(line, title, what, severity));
  if (read === null) {
    tell('note', 'this heading is not known, so the column was passed over');
    return null;
  }
  if ('units' in read) {
    tell('error', `its unit must stand in brackets and be one of ${read.units.join(', ')}`);
    return null;
  }
  if (isTwice) tell('error', 'the same figure has two columns; take one out');
  return { title, ...read };
}

/** The rows of each product, by "No." where there is one, else by name. */
function groupLines(lines: readonly LabelLine[], issues: Issue[]): readonly (readonly LabelLine[])[] {
  const groups = new Map<string, LabelLine[]>();
  for (const each of lines) {
    const { no, name } = each.row;
    const key = no !== undefined ? `no ${no}` : name !== undefined ? `name ${name}` : null;
    if (key === null || ('no' in each.titles && no === undefined)) {
      issues.push(...each.faults);
      if (each.faults.length === 0)
        issues.push(rowFault(each.line, 'Product', 'the row names no product, so it was left out'));
      continue;
    }
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()];
}

function short(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}

type CellRead = { readonly value: CellValue } | { readonly fault: string };

function readCell(cell: string, { column, unit }: Heading, isDecimalComma: boolean): CellRead {
  switch (column.kind) {
    case 'text':
      return { value: cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell };
    case 'yes-no': {
      const word = cell.toLowerCase();
      if (['yes', 'y', 'true', '1'].includes(word)) return { value: true };
      if (['no', 'n', 'false', '0'].includes(word)) return { value: false };
      return { fault: `“${short(cell)}” must be yes or no` };
    }
    case 'choice': {
      const word = cell
        .normalize('NFKC')
        .toLowerCase()
        .replace(/[\s_]+/g, '-');
      const value = column.values.find((each) => each.toLowerCase() === word);
      return value === undefined
        ? { fault: `“${short(cell)}” must be one of ${column.values.join(', ')}` }
        : { value };
    }
    case 'packs': {
      if (cell.toLowerCase() === 'none') return { value: [] };
      const words = cell.split(/[\s;,]+/).filter((word) => word !== '');
      const bad = words.find((word) => !/^[1-9]\d*$/.test(word));
      return bad === undefined
        ? { value: words.map(Number) }
        : { fault: `“${short(bad)}” is not the number of a pack; count the packs of the product from 1` };
    }
    case 'number': {
      const read = readNumber(cell, isDecimalComma);
      if ('fault' in read) return read;
      const value = unit ? unit.toSI(read.value) : read.value;
      const show = (si: number) => `${unit ? unit.fromSI(si) : si}${unit ? ` ${unit.label}` : ''}`;
      if (column.least !== null && value < column.least)
        return { fault: `${short(cell)} is too small; it must be ${show(column.least)} or more` };
      if (column.most !== null && value > column.most)
        return { fault: `${short(cell)} is too large; it must be ${show(column.most)} or less` };
      if (column.isWhole && !Number.isInteger(value))
        return { fault: `${short(cell)} must be a whole number` };
      return { value };
    }
  }
}

/** A plain number, with commas between its thousands, or with a decimal comma where commas do not part the cells. */
function readNumber(
  cell: string,
  isDecimalComma: boolean,
): { readonly value: number } | { readonly fault: string } {
  const isGrouped = /^[+-]?[1-9]\d{0,2}(,\d{3})+(\.\d*)?$/.test(cell);
  if (isDecimalComma && /^[+-]?[1-9]\d{0,2},\d{3}$/.test(cell))
    return { fault: `“${cell}” can be read in two ways; write it without the comma` };
  const text = isGrouped
    ? cell.replaceAll(',', '')
    : isDecimalComma && /^[^.]*,[^.,]*$/.test(cell)
      ? cell.replace(',', '.')
      : cell;
  const value = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
  return Number.isFinite(value) ? { value: value + 0 } : { fault: `“${short(cell)}” is not a number` };
}

function refused(code: string, message: string, line: number): LabelsRead {
  return { products: [], issues: [{ code, severity: 'error', message, place: { line } }] };
}
