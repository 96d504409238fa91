import { type FeatureSink, type ImportRules, importIssue } from './importTypes';

/** One row of a table and the line (from 1) on which it begins. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
  /** a quote was opened in it that nothing closes: the rest of the file stands in one cell. */
  readonly isOpen?: true;
}

/**
 * Splits text into rows and cells by RFC 4180: cells may stand in double quotes and then hold commas,
 * line ends and doubled quotes. Rows without any text are left out.
 * @param comma the character that parts the cells
 */
export function splitTable(text: string, comma: string): TableRow[] {
  const rows: TableRow[] = [];
  let cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  let line = 1;
  let rowLine = 1;
  const endRow = () => {
    cells.push(cell.trim());
    if (cells.some((each) => each !== ''))
      rows.push({ line: rowLine, cells, ...(isQuoted && { isOpen: true }) });
    cells = [];
    cell = '';
  };
  for (let i = 0; i < text.length; i++) {
    const c = text.charAt(i);
    if (isQuoted) {
      if (c === '\n') line += 1;
      if (c !== '"') cell += c;
      else if (text[i + 1] === '"') {
        cell += '"';
        i += 1;
      } else isQuoted = false;
    } else if (c === '"' && cell.trim() === '') {
      cell = '';
      isQuoted = true;
    } else if (c === comma) {
      cells.push(cell.trim());
      cell = '';
    } else if (c === '\n' || c === '\r') {
      if (c === '\r' && text[i + 1] === '\n') i += 1;
      endRow();
      line += 1;
      rowLine = line;
    } else cell += c;
  }
  endRow();
  return rows;
}

/** The character that parts the cells of a table: of comma, semicolon and tab the one its first line has most of. */
export function commaOf(text: string): string {
  const head = text.slice(0, 4000).split(/\r?\n|\r/, 1)[0] ?? '';
  return [',', ';', '\t'].sort((a, b) => head.split(b).length - head.split(a).length)[0] ?? ',';
}

const LAT = /^(lat(itude)?|y|ycoord|northing|north|lat_?dd|point_?y)\b/;
const LON = /^(lon(g|gitude)?|lng|x|xcoord|easting|east|lon_?dd|point_?x)\b/;
const SHAPE =
  /^(zone|shape|polygon|parcel|area|ring|part|lot|outline|bed|zone_?id|shape_?id|polygon_?id|name|id)\b/;
const ORDER = /^(order|seq(uence)?|corner|vertex|point|pt|no|nr|number|#)\b/;
const KIND = /^(kind|type|class|category|use)\b/;

/**
 * Reads a table of points or of the corners of shapes. Columns are found by their headings: latitude
 * and longitude (or northing and easting), one that names the shape, one that gives the order of its corners.
 * Rows that share a shape are its corners; without such a column the rows are the corners of one shape,
 * or single points where every row has a name of its own.
 */
export function readCsv(text: string, layer: string, sink: FeatureSink, mode: ImportRules['csvRows']): void {
  const comma = commaOf(text);
  const rows = splitTable(text, comma);
  const [first, ...body] = rows;
  const titles = (first?.cells ?? []).map((cell) => cell.toLowerCase().replace(/\s+/g, ' '));
  const find = (pattern: RegExp, not: readonly number[] = []) =>
    titles.findIndex((title, i) => !not.includes(i) && pattern.test(title));
  const [lat, lon] = [find(LAT), find(LON)];
  if (first === undefined || lat < 0 || lon < 0) {
    const message = `The first line of the table must name a column for latitude and one for longitude (lat, lon; or northing, easting). It reads: ${(first?.cells ?? []).join(', ').slice(0, 120)}`;
    sink.tell(importIssue('csv-no-columns', 'error', message, { line: 1 }));
    return;
  }
  const shape = find(SHAPE, [lat, lon]);
  const order = find(ORDER, [lat, lon, shape]);
  const kind = find(KIND, [lat, lon, shape, order]);
  const isDecimalComma = comma !== ',';
  const read = (cell: string | undefined) => readDegrees(cell ?? '', isDecimalComma);
  const points = body.map(({ line, cells }) => ({
    line,
    cells,
    lon: read(cells[lon]),
    lat: read(cells[lat]),
    shape: shape < 0 ? '' : (cells[shape] ?? ''),
    order: order < 0 ? Number.NaN : Number(cells[order]),
  }));
  type Point = (typeof points)[number];
  const groups = new Map<string, Point[]>();
  for (const point of points) groups.set(point.shape, [...(groups.get(point.shape) ?? []), point]);
  const isEachItsOwn =
    shape >= 0 && points.length > 2 && [...groups.values()].every((group) => group.length === 1);
  const asPoints = mode === 'points' || (mode === 'auto' && (isEachItsOwn || points.length < 3));
  const faultOf = (group: readonly Point[]) => {
    const bad = group.find((point) => !Number.isFinite(point.lon) || !Number.isFinite(point.lat));
    if (bad === undefined) return {};
    const which = Number.isFinite(bad.lat) ? lon : lat;
    const cell = (bad.cells[which] ?? '').slice(0, 40);
    return {
      fault: `line ${bad.line}: ${cell === '' ? 'nothing stands' : `“${cell}” stands`} in the column “${first.cells[which]}” where a number should be.`,
    };
  };
  const propertiesOf = ({ cells }: Point, name: string) => {
    const more = asPoints
      ? Object.fromEntries(cells.map((cell, i) => [first.cells[i] ?? `column ${i + 1}`, cell]))
      : {};
    return { ...more, ...(name !== '' && { name }), ...(kind >= 0 && { type: cells[kind] }) };
  };
  if (asPoints) {
    for (const point of points) {
      sink.add({
        text: JSON.stringify({
          type: 'Feature',
          properties: propertiesOf(point, point.shape),
          geometry: { type: 'Point', coordinates: [point.lon, point.lat] },
        }),
        layer,
        place: `Line ${point.line}`,
        ...faultOf([point]),
      });
    }
    return;
  }
  const all = isEachItsOwn ? [['', points] as const] : [...groups];
  for (const [name, group] of all) {
    const sorted = group.every((point) => Number.isFinite(point.order))
      ? group.toSorted((a, b) => a.order - b.order)
      : group;
    const ring = sorted.map((point) => [point.lon, point.lat]);
    const start = ring[0];
    const [from, to] = [group[0], group.at(-1)];
    if (!from || !to || !start) continue;
    sink.add({
      text: JSON.stringify({
        type: 'Feature',
        properties: propertiesOf(from, name),
        geometry: { type: 'Polygon', coordinates: [[...ring, start]] },
      }),
      layer,
      place: `Lines ${from.line} to ${to.line}`,
      ...faultOf(group),
    });
  }
}

/** "41.25", "41,25", "96.5 W"; NaN for anything else. */
function readDegrees(cell: string, isDecimalComma: boolean): number {
  const match = /^([-+]?[\d.,]+(?:[eE][-+]?\d+)?)\s*°?\s*([NSEW])?$/i.exec(cell.trim());
  if (match === null) return Number.NaN;
  const digits = isDecimalComma ? (match[1] ?? '').replace(',', '.') : (match[1] ?? '').replaceAll(',', '');
  const value = Number(digits);
  return /[SW]/i.test(match[2] ?? '') ? -value : value;
}
