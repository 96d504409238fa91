import { KG_PER_LB, L_PER_FLOZ, M2_PER_1000_SQFT, M2_PER_SQFT } from '../units/factors';
import { emptyYard, newZone } from '../yard/defaults';
import type { Amount, LabelRate, Product, Visit, VisitDose, Yard } from '../yard/types';
import type { TreatableZone } from './types';

/* Invented labels and yards for tests of this folder. */

export const sqft = (count: number) => count * M2_PER_SQFT;
export const lbPer1000 = (count: number) => (count * KG_PER_LB) / M2_PER_1000_SQFT;
export const flozPer1000 = (count: number) => (count * L_PER_FLOZ) / M2_PER_1000_SQFT;
export const pounds = (count: number): Amount => ({ unit: 'kg', value: count * KG_PER_LB });
export const fluidOunces = (count: number): Amount => ({ unit: 'L', value: count * L_PER_FLOZ });

/** A granular label without any fault: 20-5-10 at 1 lb N per 1,000 sq ft, bags of 50 lb. */
export function makeLabel(fields: Partial<Product> = {}): Product {
  return {
    id: 'label',
    name: 'Plain granules',
    form: 'granular',
    analysis: { nPct: 20, p2o5Pct: 5, k2oPct: 10, slowNPctOfN: null },
    densityKgPerL: null,
    rate: nitrogenRate(1),
    packs: [{ id: 'bag', content: pounds(50), price: null }],
    carrierLPerM2: null,
    carrierIsTotal: false,
    spreadDistanceM: 1,
    stainsHardscape: false,
    waterIn: false,
    limits: {
      maxPerDose: null,
      maxPerYear: null,
      minIntervalDays: null,
      maxDosesPerYear: null,
      maxAirTempC: null,
    },
    onHand: {},
    note: '',
    ...fields,
  };
}

/** Label rate by nitrogen. @param lb pounds per 1,000 sq ft */
export function nitrogenRate(lb: number): LabelRate {
  return { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2: lbPer1000(lb) };
}

/** Analysis N-P2O5-K2O with nothing said on slow release. */
export function analysis(nPct: number, p2o5Pct = 0, k2oPct = 0): Product['analysis'] {
  return { nPct, p2o5Pct, k2oPct, slowNPctOfN: null };
}

export const ALL_TURF = { classes: ['turf-regular'], include: [], exclude: [] } as const;

export function makeVisit(id: string, date: string | null, doses: readonly Partial<VisitDose>[]): Visit {
  return {
    id,
    name: `Visit ${id}`,
    date,
    zones: ALL_TURF,
    doses: doses.map((dose, i) => ({
      id: `${id}-${i}`,
      productId: 'label',
      rateFactor: 1,
      zones: null,
      ...dose,
    })),
    tankL: null,
    note: '',
  };
}

/** A yard with turf zones `front` and `back` (shapes do not matter here). */
export function makeYard(products: readonly Product[], visits: readonly Visit[]): Yard {
  const parts = [
    [
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 0],
      ],
    ],
  ] as const;
  return {
    ...emptyYard('yard', 'Yard'),
    zones: [
      newZone('front', 'turf', parts, { name: 'Front' }),
      newZone('back', 'turf', parts, { name: 'Back' }),
    ],
    products,
    visits,
  };
}

/** Ground of 1,000 sq ft for each zone id. */
export function ground(...ids: string[]): TreatableZone[] {
  return ids.map((id) => ({ zoneId: id, name: id, areaM2: M2_PER_1000_SQFT, stripM2: 0 }));
}
