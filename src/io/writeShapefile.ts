import { strToU8, zipSync } from 'fflate';
import type { Position, Ring } from '../yard/types';
import { classOf, type ExportShapes } from './exportShapes';
import { type DbfField, writeDbf } from './writeDbf';

/** WGS 84 in degrees as Esri's well-known text. */
const PRJ =
  'GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]]';

const POINT = 1;
const POLYGON = 5;
const HEADER_BYTES = 100;

const ZONE_FIELDS: readonly DbfField[] = [
  { name: 'NAME', length: 120, decimals: null },
  { name: 'KIND', length: 12, decimals: null },
  { name: 'CLASS', length: 12, decimals: null },
  { name: 'GROSS_M2', length: 16, decimals: 6 },
  { name: 'NET_M2', length: 16, decimals: 6 },
  { name: 'PLUSMIN_M2', length: 16, decimals: 6 },
  { name: 'PERIM_M', length: 16, decimals: 6 },
  { name: 'NOTE', length: 254, decimals: null },
];
const MARK_FIELDS: readonly DbfField[] = [
  { name: 'NAME', length: 120, decimals: null },
  { name: 'KIND', length: 12, decimals: null },
];

/**
 * The shapes as a zipped shapefile (ESRI Shapefile Technical Description, 1998): zones as polygons, and
 * marks as a second shapefile of points. Written here because the known writer puts one-part and
 * many-part zones in two files and garbles names outside of Latin-1.
 * @param stem name of the files
 * @param today for the tables' date
 */
export function shapefileZip({ shapes, marks }: ExportShapes, stem: string, today: Date): Uint8Array {
  const zones = shapes.map(({ parts }) =>
    // outer rings clockwise, holes counter-clockwise (p. 8): the turn of RFC 7946 the other way round
    polygonRecord(parts.flatMap((rings) => rings.map((ring) => ring.toReversed()))),
  );
  const rows = shapes.map(({ zone, grossM2, netM2, plusMinusM2, perimeterM }) => [
    zone.name,
    zone.kind,
    classOf(zone),
    grossM2,
    netM2,
    plusMinusM2,
    perimeterM,
    zone.note,
  ]);
  const files: Record<string, Uint8Array> = {};
  const put = (
    name: string,
    shp: ShapeFiles,
    fields: readonly DbfField[],
    cells: readonly (readonly (string | number)[])[],
  ) => {
    files[`${name}.shp`] = shp.shp;
    files[`${name}.shx`] = shp.shx;
    files[`${name}.dbf`] = writeDbf(fields, cells, today);
    files[`${name}.prj`] = strToU8(PRJ);
    files[`${name}.cpg`] = strToU8('UTF-8');
  };
  if (shapes.length > 0 || marks.length === 0) {
    const outer = shapes.flatMap(({ parts }) => parts.flatMap((rings) => rings[0] ?? []));
    put(stem, shapeFiles(POLYGON, zones, outer), ZONE_FIELDS, rows);
  }
  if (marks.length > 0) {
    const records = marks.map(({ position }) => pointRecord(position));
    put(
      `${stem}-marks`,
      shapeFiles(
        POINT,
        records,
        marks.map((mark) => mark.position),
      ),
      MARK_FIELDS,
      marks.map((mark) => [mark.name, mark.kind]),
    );
  }
  return zipSync(files);
}

interface ShapeFiles {
  readonly shp: Uint8Array;
  readonly shx: Uint8Array;
}

/** Main file and index (pp. 2-5, 23-24). @param records contents without their headers */
function shapeFiles(
  type: number,
  records: readonly Uint8Array[],
  positions: readonly Position[],
): ShapeFiles {
  const bytes = records.reduce((sum, record) => sum + 8 + record.length, HEADER_BYTES);
  const shp = new Uint8Array(bytes);
  const shx = new Uint8Array(HEADER_BYTES + 8 * records.length);
  writeHeader(shp, type, positions);
  writeHeader(shx, type, positions);
  const [main, index] = [new DataView(shp.buffer), new DataView(shx.buffer)];
  let at = HEADER_BYTES;
  records.forEach((record, i) => {
    index.setInt32(HEADER_BYTES + 8 * i, at / 2);
    index.setInt32(HEADER_BYTES + 8 * i + 4, record.length / 2);
    main.setInt32(at, i + 1);
    main.setInt32(at + 4, record.length / 2);
    shp.set(record, at + 8);
    at += 8 + record.length;
  });
  return { shp, shx };
}

function writeHeader(file: Uint8Array, type: number, positions: readonly Position[]): void {
  const view = new DataView(file.buffer);
  view.setInt32(0, 9994);
  view.setInt32(24, file.length / 2);
  view.setInt32(28, 1000, true);
  view.setInt32(32, type, true);
  boxOf(positions).forEach((value, i) => {
    view.setFloat64(36 + 8 * i, value, true);
  });
}

/** p. 8: shape type, box, number of parts and points, first point of each part, points. */
function polygonRecord(rings: readonly Ring[]): Uint8Array {
  const count = rings.reduce((sum, ring) => sum + ring.length, 0);
  const record = new Uint8Array(44 + 4 * rings.length + 16 * count);
  const view = new DataView(record.buffer);
  view.setInt32(0, POLYGON, true);
  boxOf(rings.flat()).forEach((value, i) => {
    view.setFloat64(4 + 8 * i, value, true);
  });
  view.setInt32(36, rings.length, true);
  view.setInt32(40, count, true);
  let first = 0;
  let at = 44 + 4 * rings.length;
  rings.forEach((ring, i) => {
    view.setInt32(44 + 4 * i, first, true);
    first += ring.length;
    for (const [lon, lat] of ring) {
      view.setFloat64(at, lon, true);
      view.setFloat64(at + 8, lat, true);
      at += 16;
    }
  });
  return record;
}

function pointRecord([lon, lat]: Position): Uint8Array {
  const record = new Uint8Array(20);
  const view = new DataView(record.buffer);
  view.setInt32(0, POINT, true);
  view.setFloat64(4, lon, true);
  view.setFloat64(12, lat, true);
  return record;
}

function boxOf(positions: readonly Position[]): readonly number[] {
  if (positions.length === 0) return [0, 0, 0, 0];
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [lon, lat] of positions) {
    west = Math.min(west, lon);
    south = Math.min(south, lat);
    east = Math.max(east, lon);
    north = Math.max(north, lat);
  }
  return [west, south, east, north];
}
