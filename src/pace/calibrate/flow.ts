/*
 * What comes out of hose, nozzle or bottle, and how much of it is product. All arguments more than 0.
 */

/** Flow, L/s, by how long it takes to fill a known volume: GPM = fl oz a minute / 128 (UF/IFAS Marion County, 2017). */
export function flowOfFill(volumeL: number, timeS: number): number {
  return volumeL / timeS;
}

/**
 * Share of product in the spray by the ratio on bottle or dial: one part of product drawn into so many parts of
 * water is 1 / (1 + parts), undiluted (0 parts) 1; common practice, no source.
 */
export function shareOfRatio(waterParts: number): number {
  return 1 / (1 + waterParts);
}

/**
 * Share of product in the spray by how much product was gone after a measured time, or how long a full bottle
 * lasted: product flow / flow of the spray; common practice, no source.
 * @param flowLPerS spray (water and product) that leaves the nozzle
 * @returns null where more product would have gone than spray came out
 */
export function shareOfDraw(goneL: number, timeS: number, flowLPerS: number): number | null {
  const share = goneL / timeS / flowLPerS;
  return share <= 1 ? share : null;
}
