declare module 'shpjs' {
  /** @param transform proj4 converter whose inverse is applied to every coordinate; without it they stay as they are */
  export function parseShp(shp: DataView, transform?: string | false): (object | null)[];
  /** @param coding as in the .cpg file */
  export function parseDbf(dbf: DataView, coding?: string): Record<string, unknown>[];
}
