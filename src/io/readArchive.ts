import { decodeText } from './decodeText';
import { type FeatureSink, type ImportRules, importIssue } from './importTypes';
import { readXmlText } from './readAnyFile';
import { readCsv } from './readCsv';
import { readGeoJsonStream } from './readGeoJsonStream';
import { readShapefile } from './readShapefile';
import { readZip, type ZipEntry } from './readZip';

const READ = /\.(kml|gpx|shp|dbf|prj|cpg|geojson|json|csv)$/i;

/** Reads a KMZ (OGC 12-007r2, annex C), a zipped shapefile, or an archive of other files that are read. */
export async function readArchive(
  bytes: Uint8Array,
  name: string,
  layer: string,
  rules: Pick<ImportRules, 'csvRows'>,
  sink: FeatureSink,
): Promise<void> {
  const unpacked = readZip(bytes, (entry) => READ.test(entry));
  if (!unpacked.ok) return sink.tell(unpacked.issue);
  const { entries } = unpacked;
  const mains = entries.filter((entry) => /\.(kml|gpx|shp|geojson|json|csv)$/i.test(entry.name));
  if (mains.length === 0) {
    return sink.tell(
      importIssue(
        'zip-empty',
        'error',
        `The archive “${name}” holds no file that can be read (KML, GPX, GeoJSON, shapefile, CSV).`,
      ),
    );
  }
  for (const entry of mains) {
    const own =
      mains.length === 1 ? layer : [layer, entry.name.replace(/^.*\//, '')].filter(Boolean).join(' / ');
    if (/\.shp$/i.test(entry.name)) {
      const beside = (ending: string) => findBeside(entries, entry, ending);
      const shapefile = {
        name: entry.name.replace(/^.*\//, '').replace(/\.shp$/i, ''),
        shp: entry.bytes,
        dbf: beside('.dbf'),
        prj: beside('.prj'),
        cpg: beside('.cpg'),
      };
      readShapefile(shapefile, own, sink);
    } else if (/\.(kml|gpx)$/i.test(entry.name)) await readXmlText(decodeText(entry.bytes), own, sink);
    else if (/\.csv$/i.test(entry.name)) readCsv(decodeText(entry.bytes), own, sink, rules.csvRows);
    else await readGeoJsonStream(new Blob([entry.bytes.slice()]), false, own, sink);
  }
}

function findBeside(entries: readonly ZipEntry[], shp: ZipEntry, ending: string): Uint8Array | null {
  const wanted = shp.name.replace(/\.shp$/i, ending).toLowerCase();
  return entries.find((entry) => entry.name.toLowerCase() === wanted)?.bytes ?? null;
}
