/** How fast an edge is walked with the hose running: 3 m in 10 s; common practice, no source. */
export const RINSE_PACE_M_PER_S = 0.3;
/** Water over the splash band, L/m² (mm): enough to carry a film off, common practice, no source. */
export const RINSE_DEPTH_L_PER_M2 = 1;

/**
 * Time and water to rinse a stretch: as long as the walk along it takes, or until the splash band behind it
 * has 1 mm of water, whichever is longer.
 * @param lengthM of the stretch @param bandM2 hardscape within reach behind it
 * @param flowLPerS of the hose with plain water, more than 0
 * @returns seconds and litres
 */
export function rinseWater(
  lengthM: number,
  bandM2: number,
  flowLPerS: number,
): { readonly seconds: number; readonly litres: number } {
  const seconds = Math.max(lengthM / RINSE_PACE_M_PER_S, (RINSE_DEPTH_L_PER_M2 * bandM2) / flowLPerS);
  return { seconds, litres: flowLPerS * seconds };
}
