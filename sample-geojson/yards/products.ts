import {
  KG_PER_LB,
  L_PER_CUFT,
  L_PER_FLOZ,
  L_PER_GAL,
  L_PER_QT,
  M_PER_FT,
  M_PER_IN,
  M2_PER_1000_SQFT,
  M2_PER_SQFT,
} from '../../src/units/factors';
import { NO_LIMITS, newProduct } from '../../src/yard/defaults';
import type { Amount, Analysis, Pack, Product } from '../../src/yard/types';

const PER_1000 = 1 / M2_PER_1000_SQFT;
const YEARS_3 = 3 * 365;

/** Invented products: no label of the market stands behind a name, a figure or a price here. */

const litres = (value: number): Amount => ({ unit: 'L', value });
const kilograms = (value: number): Amount => ({ unit: 'kg', value });
const pack = (id: string, content: Amount, price: number | null): Pack => ({ id, content, price });

function analysis(
  nPct: number,
  p2o5Pct: number,
  k2oPct: number,
  slowNPctOfN: number | null = null,
  elementsPct: Analysis['elementsPct'] = {},
): Analysis {
  return { nPct, p2o5Pct, k2oPct, slowNPctOfN, elementsPct };
}

const SILENT = NO_LIMITS;
/** 85 °F, as labels of this sample print it. */
const HOT_C = ((85 - 32) * 5) / 9;

const lightLiquid = newProduct('p-light', {
  name: 'Light Liquid 8-0-2',
  form: 'ready-to-use',
  analysis: analysis(8, 0, 2, 25),
  densityKgPerL: 1.12,
  rate: { basis: 'area-per-container', areaM2: 3200 * M2_PER_SQFT, packId: 'bottle' },
  useName: 'Hose-end bottle',
  applicator: 'hose-end',
  otherUses: [
    {
      id: 'tank',
      name: 'From a tank',
      applicator: 'tank-sprayer',
      rate: { basis: 'volume-per-area', rateLPerM2: 24 * L_PER_FLOZ * PER_1000 },
      carrierLPerM2: L_PER_GAL * PER_1000,
      carrierIsTotal: false,
      spreadDistanceM: 2 * M_PER_FT,
      waterIn: false,
      packIds: ['jug'],
    },
  ],
  packIds: ['bottle'],
  canPour: false,
  saltIndex: 21,
  rainfastS: 4 * 3600,
  shelfLifeDays: YEARS_3,
  openedLifeDays: 365,
  packs: [pack('bottle', litres(L_PER_QT), 17.5), pack('jug', litres(L_PER_GAL), 54)],
  spreadDistanceM: 3 * M_PER_FT,
  limits: { ...SILENT, minIntervalDays: 14, maxAirTempC: HOT_C },
  onHand: { bottle: 1.4 },
  note: 'Hose-end bottle: tap fully open. The jug is for the tank alone.',
});

const concentrate = newProduct('p-concentrate', {
  name: 'Foliar Concentrate 12-0-4',
  form: 'liquid-concentrate',
  analysis: analysis(12, 0, 4, 50),
  densityKgPerL: 1.18,
  rate: { basis: 'volume-per-area', rateLPerM2: (5 * L_PER_FLOZ) / M2_PER_1000_SQFT },
  packs: [
    pack('quart', litres(L_PER_QT), 21),
    pack('gallon', litres(L_PER_GAL), 64),
    pack('drum', litres(2.5 * L_PER_GAL), 142),
  ],
  applicator: 'tank-sprayer',
  canPour: true,
  saltIndex: 26,
  rainfastS: 4 * 3600,
  shelfLifeDays: YEARS_3,
  carrierLPerM2: L_PER_GAL / M2_PER_1000_SQFT,
  spreadDistanceM: 2 * M_PER_FT,
  limits: { ...SILENT, maxPerDose: litres((9 * L_PER_FLOZ) / M2_PER_1000_SQFT), minIntervalDays: 14 },
});

const iron = newProduct('p-iron', {
  name: 'Liquid Iron 6-0-0 with 5 % Fe',
  form: 'liquid-concentrate',
  analysis: analysis(6, 0, 0, null, { S: 3, Fe: 5 }),
  densityKgPerL: 1.24,
  applicator: 'tank-sprayer',
  canPour: true,
  saltIndex: 33,
  openedLifeDays: 365,
  rate: { basis: 'volume-per-area', rateLPerM2: (4 * L_PER_FLOZ) / M2_PER_1000_SQFT },
  packs: [pack('quart', litres(L_PER_QT), 19), pack('gallon', litres(L_PER_GAL), 55)],
  carrierLPerM2: L_PER_GAL / M2_PER_1000_SQFT,
  carrierIsTotal: true,
  spreadDistanceM: 2 * M_PER_FT,
  stainsHardscape: true,
  limits: { ...SILENT, minIntervalDays: 21, maxDosesPerYear: 5, maxAirTempC: HOT_C },
  onHand: { quart: 0.5 },
  note: 'Stains concrete and stone; rinse at once, toward the turf.',
});

const granules = newProduct('p-granules', {
  name: 'Slow Granules 24-0-6',
  form: 'granular',
  analysis: analysis(24, 0, 6, 60),
  rate: { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2: (0.75 * KG_PER_LB) / M2_PER_1000_SQFT },
  packs: [pack('small-bag', kilograms(16 * KG_PER_LB), 24), pack('large-bag', kilograms(48 * KG_PER_LB), 59)],
  useName: 'Full rate',
  applicator: 'broadcast-spreader',
  otherUses: [
    {
      id: 'light',
      name: 'Light rate',
      applicator: 'broadcast-spreader',
      rate: { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2: 0.4 * KG_PER_LB * PER_1000 },
      carrierLPerM2: null,
      carrierIsTotal: false,
      spreadDistanceM: 6 * M_PER_FT,
      waterIn: true,
      packIds: null,
    },
  ],
  canPour: true,
  saltIndex: 48,
  waterInDepthM: M_PER_IN / 4,
  shelfLifeDays: YEARS_3,
  onHand: { 'small-bag': 1, 'large-bag': 0.35 },
  spreadDistanceM: 6 * M_PER_FT,
  waterIn: true,
  limits: {
    ...SILENT,
    maxPerDose: kilograms((4.2 * KG_PER_LB) / M2_PER_1000_SQFT),
    maxPerYear: kilograms((13 * KG_PER_LB) / M2_PER_1000_SQFT),
    minIntervalDays: 42,
  },
});

const powder = newProduct('p-powder', {
  name: 'Soluble Powder 20-5-20',
  form: 'soluble-powder',
  analysis: analysis(20, 5, 20),
  rate: { basis: 'mass-per-area', rateKgPerM2: (0.5 * KG_PER_LB) / M2_PER_1000_SQFT },
  packs: [pack('tub', kilograms(5 * KG_PER_LB), 28), pack('bag', kilograms(25 * KG_PER_LB), 98)],
  carrierLPerM2: (2 * L_PER_GAL) / M2_PER_1000_SQFT,
  applicator: 'tank-sprayer',
  canPour: true,
  saltIndex: 71,
  limits: { ...SILENT, minIntervalDays: 14 },
});

const humic = newProduct('p-humic', {
  name: 'Humic Liquid',
  form: 'soil-amendment',
  analysis: analysis(0, 0, 0),
  ingredients: [{ name: 'Humic acid', pct: 12 }],
  densityKgPerL: 1.08,
  applicator: 'tank-sprayer',
  canPour: true,
  rate: { basis: 'volume-per-area', rateLPerM2: (6 * L_PER_FLOZ) / M2_PER_1000_SQFT },
  packs: [pack('half-gallon', litres(L_PER_GAL / 2), 23), pack('gallon', litres(L_PER_GAL), 39)],
  onHand: { 'half-gallon': 0.6 },
  carrierLPerM2: L_PER_GAL / M2_PER_1000_SQFT,
  stainsHardscape: true,
  waterIn: true,
  note: 'Dark: rinse light stone soon.',
});

const topdressing = newProduct('p-topdressing', {
  name: 'Screened Compost and Sand',
  form: 'topdressing',
  analysis: analysis(0, 0, 0),
  densityKgPerL: 1.1,
  rate: { basis: 'depth', depthM: M_PER_IN / 4 },
  packs: [pack('bag', litres(L_PER_CUFT), 6.5), pack('tote', litres(27 * L_PER_CUFT), 78)],
  spreadDistanceM: 0.3,
});

const seed = newProduct('p-seed', {
  name: 'Fescue Overseeding Mix',
  form: 'seed',
  analysis: analysis(0, 0, 0),
  applicator: 'broadcast-spreader',
  seed: { purityPct: 97.6, germinationPct: 88 },
  rate: { basis: 'pure-live-seed', rateKgPerM2: (3.5 * KG_PER_LB) / M2_PER_1000_SQFT },
  shelfLifeDays: 365,
  packs: [pack('bag-10', kilograms(10 * KG_PER_LB), 42), pack('bag-25', kilograms(25 * KG_PER_LB), 92)],
  spreadDistanceM: 6 * M_PER_FT,
  waterIn: true,
});

const lime = newProduct('p-lime', {
  name: 'Fine Ground Limestone',
  form: 'soil-amendment',
  analysis: analysis(0, 0, 0, null, { Ca: 34, Mg: 2 }),
  limePct: 88,
  applicator: 'drop-spreader',
  rate: { basis: 'effective-lime', rateKgPerM2: 25 * KG_PER_LB * PER_1000 },
  packs: [pack('bag', kilograms(40 * KG_PER_LB), 7.25)],
  spreadDistanceM: 0.3,
  waterIn: true,
  limits: { ...SILENT, maxPerDose: kilograms(50 * KG_PER_LB * PER_1000) },
  note: 'Only as much as a laboratory recommends.',
});

export const cornerLotProducts: readonly Product[] = [
  lightLiquid,
  concentrate,
  iron,
  granules,
  powder,
  humic,
  topdressing,
  seed,
  lime,
];

/** The townhouse shelf, in round metric figures. */
export const townhouseProducts: readonly Product[] = [
  newProduct('p-lawn-liquid', {
    name: 'Lawn Liquid 10-0-5',
    form: 'liquid-concentrate',
    analysis: analysis(10, 0, 5, 40),
    densityKgPerL: 1.15,
    applicator: 'tank-sprayer',
    canPour: true,
    saltIndex: 24,
    rate: { basis: 'volume-per-area', rateLPerM2: 0.0015 },
    packs: [pack('half-litre', litres(0.5), 11.9), pack('litre', litres(1), 19.9)],
    carrierLPerM2: 0.04,
    spreadDistanceM: 0.5,
  }),
  newProduct('p-fine-granules', {
    name: 'Fine Granules 18-0-9',
    form: 'granular',
    analysis: analysis(18, 0, 9, 70),
    applicator: 'drop-spreader',
    canPour: true,
    saltIndex: 40,
    rate: { basis: 'mass-per-area', rateKgPerM2: 0.02 },
    onHand: { box: 0.5 },
    packs: [pack('box', kilograms(2), 14.5), pack('sack', kilograms(10), 48)],
    spreadDistanceM: 1,
    waterIn: true,
  }),
];

/** The acre's shelf. */
export const longAcreProducts: readonly Product[] = [granules, concentrate, iron];
