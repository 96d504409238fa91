import type { BuiltBatch, DeskContext, DeskFilter, DeskOverview, DeskRow } from './deskTypes';
import { ImportDesk } from './importDesk';

/** For tests: everything of a file. */
export const ALL: DeskFilter = { text: '', layer: null, show: 'all', near: null };

export const NO_YARD: DeskContext = {
  units: 'metric',
  yardBox: null,
  zones: [],
  outlines: [],
  view: null,
  checksTwins: true,
};

/** For tests: files read as the worker does. */
export async function openFiles(
  files: Readonly<Record<string, string | Uint8Array>>,
  context: Partial<DeskContext> = {},
): Promise<{ desk: ImportDesk; overview: DeskOverview; rows: readonly DeskRow[] }> {
  const desk = new ImportDesk({ ...NO_YARD, ...context }, () => undefined);
  const named = Object.entries(files).map(([name, content]) => ({
    name,
    blob: new Blob([typeof content === 'string' ? content : content.slice()]),
  }));
  const overview = await desk.open(named);
  return { desk, overview, rows: desk.list(ALL, 0, 1000).rows };
}

/** For tests: all that is ticked, built. */
export function buildAll(desk: ImportDesk, keepOthers = false): Omit<BuiltBatch, 'isLast'> {
  const options = { vertexSigmaM: 0.3, source: 'test', keepOthers };
  const batches: BuiltBatch[] = [];
  desk.startBuild();
  do batches.push(desk.nextBatch(options));
  while (!batches.at(-1)?.isLast);
  return {
    zones: batches.flatMap((batch) => batch.zones),
    marks: batches.flatMap((batch) => batch.marks),
    parcel: batches.find((batch) => batch.parcel)?.parcel ?? null,
    kept: batches.flatMap((batch) => batch.kept),
    yard: batches.at(-1)?.yard ?? null,
  };
}

export const codesOf = (row: DeskRow | undefined) => row?.notes.map((note) => note.code);

/** For tests: a GeoJSON file of polygons by name. */
export function polygonFile(rings: Readonly<Record<string, readonly (readonly number[])[]>>): string {
  const features = Object.entries(rings).map(([name, ring]) => ({
    type: 'Feature',
    properties: { name },
    geometry: { type: 'Polygon', coordinates: [ring] },
  }));
  return JSON.stringify({ type: 'FeatureCollection', features });
}
