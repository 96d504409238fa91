import { parseDbf, parseShp } from 'shpjs';
import { decodeText } from './decodeText';
import { type FeatureSink, importIssue } from './importTypes';

/** The files that together make one shapefile; only the first is needed. */
export interface ShapefileParts {
  readonly name: string;
  readonly shp: Uint8Array;
  readonly dbf: Uint8Array | null;
  readonly prj: Uint8Array | null;
  readonly cpg: Uint8Array | null;
}

const HEADER_BYTES = 100;

/**
 * Reads a shapefile (ESRI Shapefile Technical Description, 1998) by the shpjs library. Coordinates stay
 * in the file's own reference system: the text of its .prj goes to the sink.
 */
export function readShapefile(parts: ShapefileParts, layer: string, sink: FeatureSink): void {
  const { name, shp } = parts;
  const who = `Shapefile “${name}”`;
  const tell = (code: string, severity: 'error' | 'warning' | 'note', message: string) =>
    sink.tell(importIssue(code, severity, `${who}: ${message}`));
  const view = new DataView(shp.buffer, shp.byteOffset, shp.byteLength);
  if (shp.byteLength < HEADER_BYTES) {
    tell('shp-cut-off', 'error', 'its .shp file is too short to be one.');
    return;
  }
  const saidBytes = 2 * view.getInt32(24);
  const isShort = saidBytes > shp.byteLength;
  let geometries: unknown[];
  try {
    geometries = parseShp(view);
  } catch (error) {
    tell(
      'bad-shp',
      'error',
      `its .shp file cannot be read (${error instanceof Error ? error.message : error}).`,
    );
    return;
  }
  if (isShort) {
    tell(
      'shp-cut-off',
      'warning',
      `its .shp file says ${saidBytes} bytes and has ${shp.byteLength}; only the ${geometries.length} whole shapes are read.`,
    );
  }
  const rows = readRows(parts, tell);
  if (rows !== null && rows.length !== geometries.length) {
    tell(
      'dbf-count',
      'warning',
      `it has ${geometries.length} shapes but ${rows.length} rows of attributes; the names may stand with the wrong shapes.`,
    );
  }
  const prj = parts.prj === null ? '' : decodeText(parts.prj).trim();
  if (prj !== '') sink.setCrs(prj);
  else
    tell(
      'no-prj',
      'warning',
      'it has no .prj file, so its reference system is not known. Check the place on the map.',
    );
  geometries.forEach((geometry, i) => {
    sink.add({
      text: JSON.stringify({ type: 'Feature', properties: plain(rows?.[i]), geometry: geometry ?? null }),
      layer,
      place: `Record ${i + 1}`,
    });
  });
}

function readRows(
  { dbf, cpg }: ShapefileParts,
  tell: (code: string, severity: 'error' | 'warning' | 'note', message: string) => void,
): Record<string, unknown>[] | null {
  if (dbf === null) {
    tell('no-dbf', 'note', 'it has no .dbf file, so its shapes have no names.');
    return null;
  }
  try {
    const view = new DataView(dbf.slice().buffer);
    const recordBytes = view.getUint16(10, true);
    const fitting = Math.floor((dbf.byteLength - view.getUint16(8, true)) / recordBytes);
    if (!(fitting >= 0)) throw new RangeError('no records');
    if (view.getUint32(4, true) > fitting) {
      tell('dbf-cut-off', 'warning', 'its .dbf file is cut off; the shapes after that have no names.');
      view.setUint32(4, fitting, true);
    }
    const coding = cpg === null ? '' : decodeText(cpg).trim();
    return parseDbf(view, coding === '' ? undefined : coding);
  } catch {
    tell('bad-dbf', 'warning', 'its .dbf file cannot be read, so its shapes have no names.');
    return null;
  }
}

/** Attributes that JSON can carry. */
function plain(row: Record<string, unknown> | undefined): Record<string, unknown> {
  const entries = Object.entries(row ?? {}).filter(([, value]) => value !== '' && !Number.isNaN(value));
  return Object.fromEntries(entries);
}
