/*
 * Advance widths of Helvetica and Helvetica-Bold in thousandths of the size, code points 32 to 126. From
 * memory of Adobe's font metrics for the core fonts; Arial and Liberation Sans are drawn to the same widths.
 */
const REGULAR = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
  500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
  556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
  278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
const BOLD = [
  278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278,
  556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584,
  556, 333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556,
  333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
];
/** Signs beyond ASCII that the sheet writes itself; whatever else a person types counts as wide as it may be. */
const SIGNS: Readonly<Record<string, number>> = {
  '\u00a0': 278,
  '–': 556,
  '—': 1000,
  '…': 1000,
  '±': 549,
  '×': 584,
  '°': 400,
  '·': 278,
  '²': 333,
  '³': 333,
  '’': 278,
  '“': 500,
  '”': 500,
  '₂': 401,
  '₅': 401,
};
const LATIN = /^[\u00c0-\u024f]$/;
/** Kerning and rounding of the printer's own face. */
const SAFE = 1.01;

function advanceOf(character: string, widths: readonly number[]): number {
  const own = widths[character.charCodeAt(0) - 32] ?? SIGNS[character];
  return own ?? (LATIN.test(character) ? 780 : 1000);
}

/** Width of text in a sans face of Helvetica's widths, mm, slightly on the wide side. */
export function textWidthMm(text: string, sizeMm: number, bold = false): number {
  let thousandths = 0;
  for (const character of text) thousandths += advanceOf(character, bold ? BOLD : REGULAR);
  return ((thousandths * sizeMm) / 1000) * SAFE;
}

/** How many lines text takes in a column: whole words (no-break spaces hold), long words broken. */
export function countLines(text: string, widthMm: number, sizeMm: number, bold = false): number {
  let lines = 1;
  let used = 0;
  const space = textWidthMm(' ', sizeMm, bold);
  for (const word of text.split(/[^\S\u00a0]+/)) {
    let width = textWidthMm(word, sizeMm, bold);
    if (used > 0 && used + space + width <= widthMm) {
      used += space + width;
      continue;
    }
    if (used > 0) lines += 1;
    while (width > widthMm && widthMm > 0) {
      lines += 1;
      width -= widthMm;
    }
    used = width;
  }
  return lines;
}

/** Text shortened with an ellipsis to a width. */
export function fitText(text: string, widthMm: number, sizeMm: number, bold = false): string {
  if (textWidthMm(text, sizeMm, bold) <= widthMm) return text;
  let short = text;
  while (short.length > 1 && textWidthMm(`${short}…`, sizeMm, bold) > widthMm) short = short.slice(0, -1);
  return `${short.trimEnd()}…`;
}
