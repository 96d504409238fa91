/**
 * Lime or sulfur for a piece of ground by the lab's recommendation: rate times ground, over the share of
 * the product that works. Lime: effective calcium carbonate equivalent, so that
 * lime = recommended effective lime / (percent / 100); Penn State Agronomy Guide, lime quality (from memory).
 * @param rateKgPerM2 as the lab has it, kg/m² of pure effective material
 * @param areaM2 m²
 * @param effectivePct percent of the product that counts, more than 0; 100 for the pure material
 * @returns kg of product; null when a figure is not a number or the percent is not more than zero
 */
export function amendmentNeed(rateKgPerM2: number, areaM2: number, effectivePct = 100): number | null {
  const kg = (rateKgPerM2 * areaM2) / (effectivePct / 100);
  return effectivePct > 0 && rateKgPerM2 >= 0 && areaM2 >= 0 && Number.isFinite(kg) ? kg : null;
}
