declare module 'shapefile' {
  /** Reads a whole shapefile as GeoJSON. */
  export function read(
    shp: ArrayBuffer,
    dbf: ArrayBuffer,
    options: { readonly encoding: string },
  ): Promise<import('geojson').FeatureCollection>;
}
