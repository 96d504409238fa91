import type { SeedTag } from '../yard/types';

/**
 * Share of a bag that is pure live seed: purity times germination, 0 to 100 %. The seed to sow is the
 * wanted pure live seed over this share. Source: LSU AgCenter, "Pure Live Seed Calculation" (20 lb of
 * pure live seed at 48 % purity and 80 % germination: 52 lb of the bag).
 */
export function pureLivePct(seed: SeedTag): number {
  return (seed.purityPct * seed.germinationPct) / 100;
}
