import { SHORT_MONTH_NAMES } from '../yard/yearDay';

/*
 * Small parts of reading pasted temperatures: units, months, numbers, cells of a line.
 */

/** Fahrenheit or Celsius. */
export type TemperatureUnit = 'F' | 'C';

/** @param value a temperature in `unit` @returns °C; the unit by its definition, (F - 32) · 5 / 9 */
export function toCelsius(value: number, unit: TemperatureUnit): number {
  return unit === 'F' ? ((value - 32) * 5) / 9 : value;
}

/** The unit a text names, such as °F, (C), deg F, Celsius; null when none, `both` when it names the two. */
export function unitInText(text: string): TemperatureUnit | 'both' | null {
  const plain = text.replace(/\u2109/g, '°F').replace(/\u2103/g, '°C');
  const names = (letter: string, word: string) =>
    new RegExp(
      `[°º]\\s*${letter}(?![a-z])|\\bdeg(rees?)?\\.?\\s*${letter}\\b|[([]\\s*${letter}\\s*[)\\]]|\\d\\s?${letter}\\b|\\b${word}`,
      'i',
    ).test(plain);
  const isF = names('F', 'fahrenheit');
  const isC = names('C', '(celsius|centigrade)');
  if (isF && isC) return 'both';
  return isF ? 'F' : isC ? 'C' : null;
}

const MONTH_WORD =
  /^(jan(uary)?|feb(ruary)?|mar(ch)?|apr(il)?|may|june?|july?|aug(ust)?|sept?(ember)?|oct(ober)?|nov(ember)?|dec(ember)?)\.?:?$/i;

/** @returns 0 to 11 for an English month's name, whole or short; null for anything else */
export function monthOfWord(cell: string): number | null {
  const word = cell.trim();
  if (!MONTH_WORD.test(word)) return null;
  const stem = word.slice(0, 3).toLowerCase();
  return SHORT_MONTH_NAMES.findIndex((name) => name.toLowerCase() === stem);
}

/** A decimal comma is one only where points are not used and numbers are parted by something else. */
function withPoints(text: string): string {
  if (text.includes('.') || !/\d,\d/.test(text)) return text;
  const words = text.split(/[\s;|]+/).filter((word) => /\d/.test(word));
  const isDecimal = words.length > 1 && words.every((word) => /^[^\d,]*-?\d+(,\d+)?[^\d,]*$/.test(word));
  return isDecimal ? text.replace(/(\d),(\d)/g, '$1.$2') : text;
}

/** Every number of a text, in order; a true minus sign and a decimal comma are understood. */
export function readNumbers(text: string): readonly number[] {
  const plain = withPoints(text.replace(/[−–](?=\s?[\d.])/g, '-'));
  return [...plain.matchAll(/(?<![\d.])[-+]?(\d+(\.\d*)?|\.\d+)/g)].map((match) => Number(match[0]));
}

/**
 * Cells of one line: parted by tab, semicolon, bar or comma where the line has them, else by spaces. Quotation
 * marks round a cell are taken off; a comma within them parts nothing.
 */
export function splitCells(line: string): readonly string[] {
  const mark = ['\t', ';', '|', ','].find((each) => line.includes(each));
  const cells = mark === undefined ? line.trim().split(/\s+/) : splitAt(line, mark);
  const clean = cells.map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );
  // bars often stand at both ends of a row
  return mark === '|'
    ? clean.filter((cell, index) => cell !== '' || (index > 0 && index < clean.length - 1))
    : clean.length === 1 && clean[0] === ''
      ? []
      : clean;
}

function splitAt(line: string, mark: string): readonly string[] {
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (const letter of line) {
    if (letter === '"') isQuoted = !isQuoted;
    if (letter === mark && !isQuoted) {
      cells.push(cell);
      cell = '';
    } else cell += letter;
  }
  return [...cells, cell];
}
