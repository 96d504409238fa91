const NARROW = /[ijlI.,:;'|!ft() /·]/;
const WIDE = /[mwMW@%—]/;
const CAPITAL = /[A-Z&]/;

/**
 * Width of text in a sans face of Helvetica's widths, mm, slightly on the wide side.
 * Advance widths of Helvetica in thousandths of the size, grouped; from memory.
 */
export function textWidthMm(text: string, sizeMm: number, bold = false): number {
  let thousandths = 0;
  for (const c of text) {
    thousandths += NARROW.test(c) ? 300 : WIDE.test(c) ? 880 : CAPITAL.test(c) ? 710 : 556;
  }
  return ((thousandths * sizeMm) / 1000) * (bold ? 1.06 : 1);
}

/** How many lines text takes in a column: whole words, long words broken. */
export function countLines(text: string, widthMm: number, sizeMm: number, bold = false): number {
  let lines = 1;
  let used = 0;
  const space = textWidthMm(' ', sizeMm, bold);
  for (const word of text.split(/\s+/)) {
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
