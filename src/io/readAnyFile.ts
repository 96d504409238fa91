import { codingOf, decodeText } from './decodeText';
import { type FeatureSink, type ImportRules, importIssue, type NamedFile } from './importTypes';
import { readShapefile, type ShapefileParts } from './readShapefile';
import { type FileSort, SNIFF_BYTES, sniffFile } from './sniffFile';

/** Files other than GeoJSON are read whole; larger ones are refused, bytes. */
const MOST_WHOLE_BYTES = 120 * 1024 * 1024;

/**
 * Reads files of any of the formats taken, known by their content, and puts their features in the sink.
 * The files of one shapefile are read together. Readers of each format are loaded when first needed.
 * Never throws for bad files: what is wrong is told to the sink.
 */
export async function readAnyFiles(
  files: readonly NamedFile[],
  rules: Pick<ImportRules, 'csvRows'>,
  sink: FeatureSink,
): Promise<void> {
  const sorts = await Promise.all(files.map(async (file) => ({ file, sort: await sortOf(file) })));
  const shapes = sorts.filter(({ sort }) => sort === 'shp');
  for (const [i, { file, sort }] of sorts.entries()) {
    const part: FeatureSink = {
      ...sink,
      tell: (issue) =>
        sink.tell(files.length > 1 ? { ...issue, message: `${file.name}: ${issue.message}` } : issue),
      progress: (share) => sink.progress((i + share) / files.length),
    };
    const layer = files.length > 1 ? file.name : '';
    if (isSidecar(file.name) && (shapes.length > 0 || sort === 'dbf')) {
      if (shapes.length === 0) {
        part.tell(
          importIssue(
            'no-shp',
            'error',
            'This is a part of a shapefile. Drop its .shp, .dbf and .prj together.',
          ),
        );
      }
      continue;
    }
    if (sort === 'shp') readShapefile(await looseShapefile(file, files), layer, part);
    else await readOne(file, sort, layer, rules, part);
    part.progress(1);
  }
}

async function sortOf({ name, blob }: NamedFile): Promise<FileSort> {
  return sniffFile(name, new Uint8Array(await blob.slice(0, SNIFF_BYTES).arrayBuffer()));
}

async function readOne(
  file: NamedFile,
  sort: FileSort,
  layer: string,
  rules: Pick<ImportRules, 'csvRows'>,
  sink: FeatureSink,
): Promise<void> {
  if (file.blob.size === 0) return sink.tell(importIssue('empty-file', 'error', 'The file is empty.'));
  if (sort !== 'json' && sort !== 'json-lines' && file.blob.size > MOST_WHOLE_BYTES) {
    return sink.tell(
      importIssue(
        'too-big',
        'error',
        'The file is larger than 120 MB. Cut out the part round the yard first.',
      ),
    );
  }
  switch (sort) {
    case 'json':
    case 'json-lines': {
      const { readGeoJsonStream } = await import('./readGeoJsonStream');
      return readGeoJsonStream(file.blob, sort === 'json-lines', layer, sink);
    }
    case 'zip': {
      const { readArchive } = await import('./readArchive');
      return readArchive(await bytesOf(file.blob), file.name, layer, rules, sink);
    }
    case 'xml':
      return readXmlText(decodeText(await bytesOf(file.blob)), layer, sink);
    case 'table': {
      const { readCsv } = await import('./readCsv');
      return readCsv(await textOf(file.blob), layer, sink, rules.csvRows);
    }
    case 'picture':
      return sink.tell(
        importIssue('picture', 'note', 'This is a picture: it goes under the drawing, not into it.'),
      );
    default:
      return sink.tell(
        importIssue(
          'unknown-file',
          'error',
          'This is none of the files that can be read: GeoJSON, KML, KMZ, GPX, zipped shapefile, or a table (CSV) with latitude and longitude.',
        ),
      );
  }
}

/** KML and GPX, by their root element. */
export async function readXmlText(text: string, layer: string, sink: FeatureSink): Promise<void> {
  const { parseXml } = await import('./readXml');
  const parsed = parseXml(
    /^[^<]*<(\?[^>]*>\s*<|!--[\s\S]*?-->\s*<)*kml:/.test(text) ? text.replace(/(<\/?)kml:/g, '$1') : text,
  );
  if (!parsed.ok) return sink.tell(parsed.issue);
  const root = parsed.document.documentElement?.localName?.toLowerCase();
  if (root === 'kml') {
    const { readKml } = await import('./readKml');
    return readKml(parsed.document, layer, sink);
  }
  if (root === 'gpx') {
    const { readGpx } = await import('./readGpx');
    return readGpx(parsed.document, layer, sink);
  }
  const message = `The file is XML, but neither KML nor GPX: its outermost element is “${root ?? ''}”.`;
  sink.tell(importIssue('unknown-xml', 'error', message));
}

function isSidecar(name: string): boolean {
  return /\.(dbf|prj|cpg|shx|qix|sbn|sbx|qmd|qpj|shp\.xml)$/i.test(name);
}

/** A .shp with the files of the same name beside it; with a single .shp any of them will do. */
async function looseShapefile(shp: NamedFile, files: readonly NamedFile[]): Promise<ShapefileParts> {
  const stem = stemOf(shp.name);
  const isOnly = files.filter((file) => /\.shp$/i.test(file.name)).length === 1;
  const find = async (ending: string) => {
    const fit = files.filter((file) => file.name.toLowerCase().endsWith(ending));
    const found =
      fit.find((file) => stemOf(file.name) === stem) ?? (isOnly && fit.length === 1 ? fit[0] : undefined);
    return found ? bytesOf(found.blob) : null;
  };
  return {
    name: shp.name.replace(/\.shp$/i, ''),
    shp: await bytesOf(shp.blob),
    dbf: await find('.dbf'),
    prj: await find('.prj'),
    cpg: await find('.cpg'),
  };
}

function stemOf(name: string): string {
  return name.replace(/\.[^.]*$/, '').toLowerCase();
}

async function bytesOf(blob: Blob): Promise<Uint8Array> {
  return new Uint8Array(await blob.arrayBuffer());
}

async function textOf(blob: Blob): Promise<string> {
  const bytes = await bytesOf(blob);
  if (codingOf(bytes) !== 'utf-8') return decodeText(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // tables of older programs
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
