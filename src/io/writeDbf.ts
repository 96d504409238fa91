/** One column of a dBASE table: text, or a number where `decimals` is given. */
export interface DbfField {
  /** at most 10 ASCII characters. */
  readonly name: string;
  /** bytes of each cell, at most 254. */
  readonly length: number;
  /** null: text. */
  readonly decimals: number | null;
}

const HEADER_BYTES = 32;
const FIELD_BYTES = 32;
const SPACE = 0x20;

/**
 * A dBASE III table, as a shapefile has beside it: text in UTF-8, cut at whole characters where it is
 * longer than its column; numbers right-aligned. A number too long for its column is left blank.
 * @param today date of the table
 */
export function writeDbf(
  fields: readonly DbfField[],
  rows: readonly (readonly (string | number)[])[],
  today: Date,
): Uint8Array {
  const headBytes = HEADER_BYTES + FIELD_BYTES * fields.length + 1;
  const rowBytes = fields.reduce((sum, field) => sum + field.length, 1);
  const file = new Uint8Array(headBytes + rowBytes * rows.length + 1);
  const view = new DataView(file.buffer);
  file[0] = 0x03;
  file[1] = today.getFullYear() - 1900;
  file[2] = today.getMonth() + 1;
  file[3] = today.getDate();
  view.setUint32(4, rows.length, true);
  view.setUint16(8, headBytes, true);
  view.setUint16(10, rowBytes, true);
  fields.forEach((field, i) => {
    const at = HEADER_BYTES + FIELD_BYTES * i;
    file.set(new TextEncoder().encode(field.name).subarray(0, 10), at);
    file[at + 11] = (field.decimals === null ? 'C' : 'N').charCodeAt(0);
    file[at + 16] = field.length;
    file[at + 17] = field.decimals ?? 0;
  });
  file[headBytes - 1] = 0x0d;
  rows.forEach((row, r) => {
    let at = headBytes + r * rowBytes;
    file.fill(SPACE, at, at + rowBytes);
    at += 1;
    fields.forEach((field, i) => {
      const bytes = cellBytes(row[i] ?? '', field);
      file.set(bytes, field.decimals === null ? at : at + field.length - bytes.length);
      at += field.length;
    });
  });
  file[file.length - 1] = 0x1a;
  return file;
}

function cellBytes(value: string | number, { length, decimals }: DbfField): Uint8Array {
  if (decimals !== null) {
    const text = typeof value === 'number' && Number.isFinite(value) ? value.toFixed(decimals) : '';
    return new TextEncoder().encode(text.length <= length ? text : '');
  }
  const bytes = new TextEncoder().encode(String(value).replace(/\p{Cc}+/gu, ' '));
  if (bytes.length <= length) return bytes;
  let end = length;
  // a byte 10xxxxxx goes on with the character before it
  while (end > 0 && ((bytes[end] ?? 0) & 0xc0) === 0x80) end -= 1;
  return bytes.subarray(0, end);
}
