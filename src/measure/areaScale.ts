/** Mean Earth radius R1, m. Source: IUGG 1980 (Moritz). */
const EARTH_RADIUS_M = 6371008.8;

/** Ground area at an elevation for each unit of area on the ellipsoid: (1 + h/R)². @param elevationM null counts as 0 */
export function areaScale(elevationM: number | null): number {
  return (1 + (elevationM ?? 0) / EARTH_RADIUS_M) ** 2;
}
