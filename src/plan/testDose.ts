import { KG_PER_LB, L_PER_FLOZ, L_PER_GAL, M2_PER_1000_SQFT, M2_PER_SQFT } from '../units/factors';
import { emptyYard, newDose, newProduct, newVisit, newZone } from '../yard/defaults';
import type { Amount, LabelRate, Product, ProductUse, Visit, VisitDose, Yard } from '../yard/types';
import { holdVisit } from './holdVisit';
import type { DoseFigures, TreatableZone } from './types';
import { planVisit } from './visit';

/*
 * Invented products, visits and yards for the tests of planning.
 */

/** An area in m². @param count sq ft */
export const sqft = (count: number) => count * M2_PER_SQFT;
/** A rate in kg/m². @param count lb per 1,000 sq ft */
export const lbPer1000 = (count: number) => (count * KG_PER_LB) / M2_PER_1000_SQFT;
/** A rate in L/m². @param count fl oz per 1,000 sq ft */
export const flozPer1000 = (count: number) => (count * L_PER_FLOZ) / M2_PER_1000_SQFT;
/** An amount in L. @param count fl oz */
export const fluidOunces = (count: number): Amount => ({ unit: 'L', value: count * L_PER_FLOZ });

/** A plain granule, 10 kg in a bag; change what the test is about. */
export function testProduct(fields: Partial<Product> = {}): Product {
  return newProduct('p-1', {
    name: 'Test granules',
    rate: { basis: 'mass-per-area', rateKgPerM2: 0.02 },
    packs: [testPack({ unit: 'kg', value: 10 })],
    spreadDistanceM: 1,
    ...fields,
  });
}

/** A granular label without any fault: 20-5-10 at 1 lb N per 1,000 sq ft, bags of 50 lb. */
export function testLabel(fields: Partial<Product> = {}): Product {
  return testProduct({
    id: 'label',
    name: 'Plain granules',
    analysis: testAnalysis(20, 5, 10),
    rate: nitrogenRate(1),
    packs: [testPack({ unit: 'kg', value: 50 * KG_PER_LB }, 'bag')],
    ...fields,
  });
}

/** Label rate by nitrogen. @param lb pounds per 1,000 sq ft */
export function nitrogenRate(lb: number): LabelRate {
  return { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2: lbPer1000(lb) };
}

/** A label that states no limit but those given. */
export function testLimits(fields: Partial<Product['limits']>): Product['limits'] {
  return { ...testProduct().limits, ...fields };
}

/** A pack without a price. @param content what one full pack holds, L or kg */
export function testPack(content: Amount, id = 'pack-1'): Product['packs'][number] {
  return { id, content, price: null };
}

/** A further use of a label at 0.01 kg/m²; change what the test is about. */
export function testUse(fields: Partial<ProductUse> = {}): ProductUse {
  return {
    id: 'u-1',
    name: 'Light rate',
    applicator: null,
    rate: { basis: 'mass-per-area', rateKgPerM2: 0.01 },
    carrierLPerM2: null,
    carrierIsTotal: false,
    spreadDistanceM: 1,
    waterIn: false,
    packIds: null,
    ...fields,
  };
}

/**
 * A liquid with two uses: a hose-end bottle of 32 fl oz that covers 3,200 sq ft, and the same liquid from a
 * 1 gal jug at 5 fl oz in 1 gal of water on 1,000 sq ft; 1.2 kg/L, 8-0-2.
 */
export function testHoseLiquid(fields: Partial<Product> = {}): Product {
  return testProduct({
    id: 'hose',
    name: 'Lawn liquid',
    form: 'liquid-concentrate',
    analysis: testAnalysis(8, 0, 2),
    densityKgPerL: 1.2,
    useName: 'From the bottle',
    applicator: 'hose-end',
    rate: { basis: 'area-per-container', areaM2: sqft(3200), packId: 'bottle' },
    spreadDistanceM: 1.5,
    packIds: ['bottle'],
    packs: [testPack(fluidOunces(32), 'bottle'), testPack(fluidOunces(128), 'jug')],
    otherUses: [
      testUse({
        id: 'tank',
        name: 'Backpack',
        applicator: 'tank-sprayer',
        rate: { basis: 'volume-per-area', rateLPerM2: flozPer1000(5) },
        carrierLPerM2: L_PER_GAL / M2_PER_1000_SQFT,
        spreadDistanceM: 0.6,
        packIds: ['jug'],
      }),
    ],
    ...fields,
  });
}

/** A label analysis in percent by weight; `slowNPctOfN` in percent of the nitrogen. */
export function testAnalysis(nPct: number, p2o5Pct = 0, k2oPct = 0, slowNPctOfN: number | null = null) {
  return { nPct, p2o5Pct, k2oPct, slowNPctOfN, elementsPct: {} };
}

/** A visit of one dose, or of the doses given. */
export function testVisit(fields: Partial<Visit> = {}): Visit {
  return newVisit('v-1', { name: 'First visit', doses: [testDose()], ...fields });
}

/** A dose of the plain granule at the label rate on the zones of its visit; change what the test is about. */
export function testDose(fields: Partial<VisitDose> = {}): VisitDose {
  return { ...newDose('d-1', 'p-1'), ...fields };
}

/** A visit on all regular turf, with doses of the plain label unless said otherwise. */
export function turfVisit(id: string, date: string | null, doses: readonly Partial<VisitDose>[]): Visit {
  return testVisit({
    id,
    name: `Visit ${id}`,
    date,
    zones: { classes: ['turf-regular'], include: [], exclude: [] },
    doses: doses.map((dose, i) => testDose({ id: `${id}-${i}`, productId: 'label', ...dose })),
  });
}

/** Ground of one zone, m²: what is treated, and what a strip took off. */
export function testZone(areaM2: number, zoneId = 'z-1', stripM2 = 0): TreatableZone {
  return { zoneId, name: `Zone ${zoneId}`, areaM2, stripM2 };
}

/** A yard of products and visits without zones. */
export function yardOf(products: readonly Product[], visits: readonly Visit[]): Yard {
  return { ...emptyYard('y-1', 'Test yard'), products, visits };
}

/** A yard with turf zones `front` and `back` (shapes do not matter here). */
export function turfYard(products: readonly Product[], visits: readonly Visit[]): Yard {
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
  const zones = [
    newZone('front', 'turf', parts, { name: 'Front' }),
    newZone('back', 'turf', parts, { name: 'Back' }),
  ];
  return { ...yardOf(products, visits), zones };
}

/** Ground of 1,000 sq ft for each zone id. */
export function ground(...ids: string[]): TreatableZone[] {
  return ids.map((id) => testZone(M2_PER_1000_SQFT, id));
}

/** Plans a visit whose doses all treat the same zones, and holds it together with other visits to them. */
export function planOn(
  products: readonly Product[],
  visit: Visit,
  zones: readonly TreatableZone[],
  sigmaM2 = 0,
  otherVisits: readonly Visit[] = [],
) {
  const yard = yardOf(products, [visit, ...otherVisits]);
  const planned = (one: Visit) =>
    planVisit({
      yard,
      visit: one,
      zonesByDose: new Map(one.doses.map((dose) => [dose.id, zones])),
      sigmaByDose: new Map(one.doses.map((dose) => [dose.id, sigmaM2])),
    });
  return holdVisit(yard, planned(visit), otherVisits.map(planned));
}

/** The figures of one product on one area; fails loudly when it cannot be planned. */
export function planOne(
  product: Product,
  areaM2: number,
  options: {
    readonly factor?: number;
    readonly tankL?: number;
    readonly sigmaM2?: number;
    readonly useId?: string;
  } = {},
): DoseFigures {
  const { factor = 1, useId = null } = options;
  const dose = testDose({ productId: product.id, rateFactor: factor, useId });
  const visit = testVisit({ doses: [dose], tankL: options.tankL ?? null });
  const plan = planOn([product], visit, [testZone(areaM2)], options.sigmaM2 ?? 0);
  const figures = plan.doses[0];
  if (figures === undefined) throw new Error(plan.issues.map((issue) => issue.message).join(' '));
  return figures;
}

/** No cap at all. */
export const NO_CAPS: Yard['caps'] = {
  totalNPerDose: null,
  solubleNPerDose: null,
  p2o5PerDose: null,
  nPerYear: null,
  p2o5PerYear: null,
  k2oPerYear: null,
};
