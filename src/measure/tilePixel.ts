/** Equatorial radius of Web Mercator, m, and px of a tile's side (OGC 17-083r4, annex on WebMercatorQuad; from memory). */
const RADIUS_M = 6378137;
const TILE_PX = 256;

/** Ground width of one pixel of a web map at a zoom, m. @param latitudeDeg of the place */
export function tilePixelM(latitudeDeg: number, zoom: number): number {
  return (((2 * Math.PI * RADIUS_M) / TILE_PX) * Math.cos((latitudeDeg * Math.PI) / 180)) / 2 ** zoom;
}

/** The zoom, as a broken number, at which one pixel is so wide on the ground. @param pixelM more than 0 */
export function zoomOfPixel(latitudeDeg: number, pixelM: number): number {
  return Math.log2(tilePixelM(latitudeDeg, 0) / pixelM);
}
