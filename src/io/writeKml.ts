import { toKML } from '@placemarkio/tokml';
import { strToU8, zipSync } from 'fflate';
import type { ExportShapes } from './exportShapes';
import { shapesToGeoJson, withoutControls } from './writeShapes';

/** The shapes as a KML document (OGC 12-007r2), by the tokml library. Media type: application/vnd.google-earth.kml+xml. */
export function kmlText(shapes: ExportShapes): string {
  const collection = shapesToGeoJson(shapes);
  const clean = collection.features.map((feature) => {
    const { note, ...properties } = feature.properties ?? {};
    const entries = Object.entries({ ...properties, ...(note !== undefined && { description: note }) });
    return {
      ...feature,
      properties: Object.fromEntries(
        entries.map(([key, value]) => [key, typeof value === 'string' ? withoutControls(value) : value]),
      ),
    };
  });
  return `<?xml version="1.0" encoding="UTF-8"?>\n${toKML({ ...collection, features: clean })}\n`;
}

/** The KML document zipped, as annex C of the standard has it: `doc.kml` comes first. */
export function kmzBytes(shapes: ExportShapes): Uint8Array {
  return zipSync({ 'doc.kml': strToU8(kmlText(shapes)) });
}
