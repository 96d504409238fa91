/**
 * One standard deviation of a figure that is computed from independent readings: sqrt(Σ (∂f/∂xᵢ · sᵢ)²),
 * the derivatives by central differences. To first order, so it fails where the figure bends sharply
 * within one sigma (a triangle almost flat).
 * Source: JCGM 100:2008 (GUM) sect. 5.1.2, eq. 10.
 * @param figure of the readings, in the same order @param readings in their units
 * @param sigmas standard deviation of each reading, same units; 0 or more
 * @param steps how far the readings are moved for the differences, same units; by default a share of each
 * @returns in the figure's unit; NaN where the figure is not defined beside the readings
 */
export function propagateSigma(
  figure: (readings: readonly number[]) => number,
  readings: readonly number[],
  sigmas: readonly number[],
  steps?: readonly number[],
): number {
  let variance = 0;
  readings.forEach((reading, i) => {
    const sigma = sigmas[i] ?? 0;
    if (sigma === 0) return;
    const step = steps?.[i] ?? 1e-5 * Math.max(Math.abs(reading), 1e-2);
    const slope =
      (figure(readings.with(i, reading + step)) - figure(readings.with(i, reading - step))) / (2 * step);
    variance += (slope * sigma) ** 2;
  });
  return Math.sqrt(variance);
}
