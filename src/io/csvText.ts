/** Text that a spreadsheet would take for a formula (OWASP, "CSV Injection"). */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * Rows as a table of text (RFC 4180: CRLF, cells in quotes where needed). Begins with a byte-order mark, by
 * which spreadsheets know UTF-8.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return `\uFEFF${rows.map((row) => row.map(quoted).join(',')).join('\r\n')}\r\n`;
}

/** Text of a person's own as a cell: what a spreadsheet would run as a formula gets an apostrophe before it. */
export function safeText(text: string): string {
  return FORMULA.test(text) ? `'${text}` : text;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
