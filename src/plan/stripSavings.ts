import type { Amount, Product } from '../yard/types';
import type { DoseFigures } from './types';

/** What the strips spare in one zone. */
export interface StripSaving {
  readonly zoneId: string;
  readonly name: string;
  /** ground left alone, each square metre once, m². */
  readonly stripM2: number;
  /** product that the dose would have put on it, dose by dose, kg or L. */
  readonly saved: readonly { readonly doseId: string; readonly product: Product; readonly amount: Amount }[];
}

/** Ground left alone as no-apply strip in each zone of a visit that has any, with the product not put down there at the doses' rates. */
export function stripSavings(doses: readonly DoseFigures[]): StripSaving[] {
  const byZone = new Map<string, StripSaving>();
  for (const { dose, product, rate, zones } of doses) {
    for (const { zoneId, name, stripM2 } of zones) {
      if (!(stripM2 > 0)) continue;
      const amount: Amount = { unit: rate.perM2.unit, value: rate.perM2.value * stripM2 };
      const one = { doseId: dose.id, product, amount };
      const known = byZone.get(zoneId);
      byZone.set(zoneId, { zoneId, name, stripM2, saved: [...(known?.saved ?? []), one] });
    }
  }
  return [...byZone.values()];
}
