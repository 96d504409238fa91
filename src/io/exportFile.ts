import type { MeasuredYard } from '../measure/types';
import type { Issue, Yard } from '../yard/types';
import type { ExportFormat } from './exportFormats';
import { type ExportOptions, exportShapes } from './exportShapes';
import { areasCsv } from './writeAreasCsv';
import { fileNameOf } from './writeGeoJson';
import { geoJsonText } from './writeShapes';

/** A file ready to be saved. */
export interface ExportedFile {
  readonly name: string;
  readonly mediaType: string;
  readonly content: string | Uint8Array;
  /** zones written. */
  readonly count: number;
  /** what was left out, and what to know. */
  readonly issues: readonly Issue[];
}

/**
 * Writes zones (and marks) in a format. What writes it is loaded when first needed.
 * @param today date that goes into the tables of a shapefile
 */
export async function exportFile(
  yard: Yard,
  measured: MeasuredYard,
  format: ExportFormat,
  options: ExportOptions,
  today: Date,
): Promise<ExportedFile> {
  const stem = fileNameOf(yard).replace(/\.geojson$/, '');
  const chosen = exportShapes(yard, measured, options);
  const made = (ending: string, mediaType: string, content: ExportedFile['content']): ExportedFile => ({
    name: `${stem}${ending}`,
    mediaType,
    content,
    count: chosen.shapes.length,
    issues: chosen.issues,
  });
  switch (format) {
    case 'kml': {
      const { kmlText } = await import('./writeKml');
      return made('.kml', 'application/vnd.google-earth.kml+xml', kmlText(chosen));
    }
    case 'kmz': {
      const { kmzBytes } = await import('./writeKml');
      return made('.kmz', 'application/vnd.google-earth.kmz', kmzBytes(chosen));
    }
    case 'gpx': {
      const { gpxText } = await import('./writeGpx');
      return made('.gpx', 'application/gpx+xml', gpxText(chosen));
    }
    case 'shapefile': {
      const { shapefileZip } = await import('./writeShapefile');
      return made('-shapefile.zip', 'application/zip', shapefileZip(chosen, stem, today));
    }
    case 'geojson':
      return made('-zones.geojson', 'application/geo+json', geoJsonText(chosen));
    case 'csv': {
      const count = yard.zones.filter(
        (zone) => options.zoneIds === null || options.zoneIds.includes(zone.id),
      ).length;
      const content = areasCsv(yard, measured, options.zoneIds, yard.settings.units);
      return { ...made('-areas.csv', 'text/csv;charset=utf-8', content), count, issues: [] };
    }
  }
}
