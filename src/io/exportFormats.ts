/** Formats that zones are written in, beside the file of the whole yard. */
export const EXPORT_FORMATS = ['kml', 'kmz', 'gpx', 'shapefile', 'geojson', 'csv'] as const;
/** One of them. */
export type ExportFormat = (typeof EXPORT_FORMATS)[number];
