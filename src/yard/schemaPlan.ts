import * as v from 'valibot';
import { DEFAULT_CAPS } from './defaults';
import { checkShape, date, finite, id, notNegative, positive, text } from './shapes';
import {
  APPLICATORS,
  CALIBRATIONS,
  type Climate,
  ELEMENTS,
  type Equipment,
  EXTRACTANTS,
  GRASS_SEASONS,
  type LocalRule,
  NUTRIENTS,
  type NutrientCaps,
  type NutrientNeed,
  type Override,
  PRODUCT_FORMS,
  type Product,
  type Program,
  SOIL_LEVELS,
  SOIL_NUTRIENTS,
  type SoilTest,
  type Visit,
  ZONE_CLASSES,
} from './types';
import { dayOfYear } from './yearDay';

/*
 * Shapes of what is planned: products, visits, soil tests, needs, programs, rules. Objects are loose:
 * members that this program does not know stay on them. Only shape and hard bounds are checked here;
 * whether a label or a test makes sense is for plan, soil and season.
 */

const flag = v.boolean('must be true or false');
const oneOf = <const T extends readonly string[]>(list: T) =>
  v.picklist(list, `must be one of ${list.join(', ')}`);
const listOf = <T extends v.GenericSchema>(item: T) => v.array(item, 'must be a list');
/** null when missing. */
const orNull = <T extends v.GenericSchema>(schema: T) => v.optional(v.nullable(schema), null);
const percent = v.pipe(notNegative, v.maxValue(100, 'must be 100 or less'));
/** A day of every year that there is in one at least. */
const yearDay = v.pipe(
  text,
  v.check((day) => dayOfYear(day) !== null, 'must be a day such as 05-31'),
);
const wholeDays = v.pipe(notNegative, v.integer('must be whole days'));
const month = v.pipe(
  finite,
  v.integer('must be a month, 1 to 12'),
  v.minValue(1, 'must be a month, 1 to 12'),
  v.maxValue(12, 'must be a month, 1 to 12'),
);
const byKey = <const T extends readonly string[]>(keys: T, value: v.GenericSchema<unknown, unknown>) =>
  v.looseObject(Object.fromEntries(keys.map((key) => [key, v.optional(value)])));

const amount = v.looseObject({ unit: v.picklist(['L', 'kg'], 'must be L or kg'), value: notNegative });

const labelRate = v.variant(
  'basis',
  [
    v.looseObject({ basis: v.literal('area-per-container'), areaM2: notNegative, packId: text }),
    v.looseObject({ basis: v.literal('volume-per-area'), rateLPerM2: notNegative }),
    v.looseObject({ basis: v.literal('mass-per-area'), rateKgPerM2: notNegative }),
    v.looseObject({
      basis: v.literal('nutrient-per-area'),
      nutrient: oneOf(NUTRIENTS),
      rateKgPerM2: notNegative,
    }),
    v.looseObject({ basis: v.literal('pure-live-seed'), rateKgPerM2: notNegative }),
    v.looseObject({ basis: v.literal('effective-lime'), rateKgPerM2: notNegative }),
    v.looseObject({ basis: v.literal('depth'), depthM: notNegative }),
  ],
  'must have a basis: area-per-container, volume-per-area, mass-per-area, nutrient-per-area, pure-live-seed, effective-lime or depth',
);

/** What a label says of each use. */
const useMembers = {
  applicator: orNull(oneOf(APPLICATORS)),
  rate: labelRate,
  carrierLPerM2: orNull(notNegative),
  carrierIsTotal: v.optional(flag, false),
  spreadDistanceM: v.optional(notNegative, 0),
  waterIn: v.optional(flag, false),
  packIds: orNull(listOf(text)),
};

const analysis = v.looseObject({
  nPct: notNegative,
  p2o5Pct: notNegative,
  k2oPct: notNegative,
  slowNPctOfN: orNull(notNegative),
  elementsPct: v.optional(byKey(ELEMENTS, notNegative), {}),
});

const productSchema = v.looseObject({
  id,
  name: text,
  form: oneOf(PRODUCT_FORMS),
  analysis,
  ingredients: v.optional(listOf(v.looseObject({ name: text, pct: notNegative })), []),
  densityKgPerL: orNull(notNegative),
  seed: orNull(v.looseObject({ purityPct: percent, germinationPct: percent })),
  limePct: orNull(notNegative),
  saltIndex: orNull(notNegative),
  useName: v.optional(text, ''),
  ...useMembers,
  otherUses: v.optional(listOf(v.looseObject({ id, name: v.optional(text, ''), ...useMembers })), []),
  packs: listOf(v.looseObject({ id, content: amount, price: orNull(notNegative) })),
  canPour: v.optional(flag, false),
  rainfastS: orNull(notNegative),
  waterInDepthM: orNull(notNegative),
  shelfLifeDays: orNull(notNegative),
  openedLifeDays: orNull(notNegative),
  stainsHardscape: v.optional(flag, false),
  limits: v.optional(
    v.looseObject({
      maxPerDose: orNull(amount),
      maxPerYear: orNull(amount),
      minIntervalDays: orNull(notNegative),
      maxDosesPerYear: orNull(notNegative),
      maxAirTempC: orNull(finite),
    }),
    {},
  ),
  onHand: v.optional(v.record(text, notNegative), {}),
  note: v.optional(text, ''),
});

const choice = v.looseObject({
  classes: listOf(oneOf(ZONE_CLASSES)),
  include: listOf(text),
  exclude: listOf(text),
});

const share = v.pipe(notNegative, v.maxValue(1, 'must be 1 or less'));

const equipmentSchema = v.looseObject({
  id,
  name: v.optional(text, ''),
  applicator: oneOf(APPLICATORS),
  swathM: positive,
  overlapShare: v.optional(v.pipe(notNegative, v.maxValue(0.5, 'must be 0.5 or less')), 0),
  spreadDistanceM: orNull(notNegative),
  hasEdgeGuard: v.optional(flag, false),
  guardedSpreadM: orNull(notNegative),
  flowLPerS: orNull(positive),
  productShare: orNull(share),
  holds: orNull(amount),
  speedMPerS: orNull(positive),
  settings: v.optional(
    listOf(v.looseObject({ productId: text, words: v.optional(text, ''), rateKgPerM2: notNegative })),
    [],
  ),
  calibrations: v.optional(
    listOf(
      v.looseObject({
        id,
        kind: oneOf(CALIBRATIONS),
        on: date,
        productId: orNull(text),
        readings: v.optional(v.record(text, finite), {}),
        note: v.optional(text, ''),
      }),
    ),
    [],
  ),
  note: v.optional(text, ''),
});

const passesSchema = v.looseObject({
  equipmentId: orNull(text),
  headerLaps: orNull(
    v.pipe(notNegative, v.integer('must be a whole number'), v.maxValue(5, 'must be 5 or less')),
  ),
  coats: v.optional(v.picklist([1, 2], 'must be 1 or 2'), 1),
  isGuarded: v.optional(flag, false),
  headings: v.optional(v.record(text, v.pipe(notNegative, v.ltValue(180, 'must be less than 180'))), {}),
});

const doneRecord = v.looseObject({
  productName: text,
  useName: v.optional(text, ''),
  planned: amount,
  densityKgPerL: orNull(notNegative),
  analysis,
  zones: listOf(v.looseObject({ zoneId: text, name: v.optional(text, ''), areaM2: notNegative })),
});

const visitSchema = v.looseObject({
  id,
  name: text,
  date: orNull(date),
  zones: choice,
  doses: listOf(
    v.looseObject({
      id,
      productId: text,
      useId: orNull(text),
      rateFactor: v.optional(positive, 1),
      zones: orNull(choice),
      passes: v.optional(passesSchema, {}),
      actual: orNull(amount),
      taken: orNull(v.record(text, notNegative)),
      laid: orNull(doneRecord),
    }),
  ),
  tankL: orNull(positive),
  startMarkId: orNull(text),
  endMarkId: orNull(text),
  note: v.optional(text, ''),
  doneOn: orNull(date),
  program: orNull(v.looseObject({ id: text, date, asMade: v.optional(text) })),
});

const soilTestSchema = v.looseObject({
  id,
  name: v.optional(text, ''),
  zones: choice,
  date: orNull(date),
  lab: v.optional(text, ''),
  extractant: oneOf(EXTRACTANTS),
  labUnit: v.optional(v.picklist(['ppm', 'lb-per-acre'], 'must be ppm or lb-per-acre'), 'ppm'),
  mgPerKg: v.optional(byKey(SOIL_NUTRIENTS, notNegative), {}),
  ph: orNull(v.pipe(notNegative, v.maxValue(14, 'must be 14 or less'))),
  bufferPh: orNull(v.pipe(notNegative, v.maxValue(14, 'must be 14 or less'))),
  organicMatterPct: orNull(percent),
  cecCmolPerKg: orNull(notNegative),
  depthM: v.optional(positive, 0.1524),
  tableId: v.optional(text, ''),
  labLevels: v.optional(byKey(SOIL_NUTRIENTS, oneOf(SOIL_LEVELS)), {}),
  limeKgPerM2: orNull(notNegative),
  sulfurKgPerM2: orNull(notNegative),
  labAdvice: v.optional(text, ''),
  note: v.optional(text, ''),
});

const needSchema = v.looseObject({
  id,
  name: v.optional(text, ''),
  zones: choice,
  speciesId: v.optional(text, ''),
  season: oneOf(GRASS_SEASONS),
  guideId: v.optional(text, ''),
  nKgPerM2: notNegative,
  split: v.variant('kind', [
    v.looseObject({ kind: v.literal('even'), fromMonth: month, toMonth: month }),
    v.looseObject({ kind: v.literal('growth') }),
    v.looseObject({
      kind: v.literal('typed'),
      shares: v.pipe(listOf(notNegative), v.length(12, 'must be twelve shares')),
    }),
  ]),
  hold: orNull(v.looseObject({ from: yearDay, to: yearDay, maxNKgPerM2: notNegative })),
});

const programSchema = v.looseObject({
  id,
  name: text,
  from: date,
  to: date,
  pace: v.variant('kind', [
    v.looseObject({ kind: v.literal('every'), days: v.pipe(wholeDays, v.minValue(1, 'must be 1 or more')) }),
    v.looseObject({
      kind: v.literal('with'),
      programId: text,
      nth: v.pipe(wholeDays, v.minValue(1, 'must be 1 or more')),
      offsetDays: wholeDays,
    }),
  ]),
  zones: choice,
  doses: listOf(
    v.looseObject({
      id,
      productId: text,
      useId: orNull(text),
      amount: v.variant('kind', [
        v.looseObject({ kind: v.literal('label'), rateFactor: positive }),
        v.looseObject({ kind: v.literal('need'), share: notNegative, maxFactor: positive }),
      ]),
      zones: orNull(choice),
    }),
  ),
  tankL: orNull(positive),
  skips: v.optional(listOf(date)),
});

const ruleSchema = v.looseObject({
  id,
  name: text,
  isOn: v.optional(flag, true),
  terms: v.variant('kind', [
    v.looseObject({
      kind: v.literal('no-phosphorus'),
      unlessSoilTest: flag,
      testYears: orNull(positive),
      unlessNewLawn: flag,
    }),
    v.looseObject({
      kind: v.literal('blackout'),
      from: yearDay,
      to: yearDay,
      nutrients: listOf(oneOf(NUTRIENTS)),
    }),
    v.looseObject({
      kind: v.literal('buffer'),
      round: v.picklist(['water', 'storm-drain', 'well'], 'must be water, storm-drain or well'),
      widthM: notNegative,
    }),
    v.looseObject({
      kind: v.literal('cap'),
      nutrient: oneOf(NUTRIENTS),
      per: v.picklist(['dose', 'year'], 'must be dose or year'),
      isSolubleOnly: v.optional(flag, false),
      maxKgPerM2: notNegative,
    }),
    v.looseObject({ kind: v.literal('slow-share'), minPct: percent }),
  ]),
  source: v.optional(text, ''),
  readOn: orNull(date),
});

const overrideSchema = v.looseObject({
  id,
  on: date,
  code: text,
  visitId: text,
  doseId: text,
  productId: text,
  reason: text,
  zoneIds: v.optional(listOf(text), []),
  useId: orNull(text),
  rateFactor: v.optional(positive, 1),
  soilTests: v.optional(listOf(v.looseObject({ id: text, pMgPerKg: orNull(notNegative) })), []),
});

const climateSchema = v.looseObject({
  monthlyMeanC: v.nullable(v.pipe(listOf(finite), v.length(12, 'must be twelve temperatures'))),
  source: v.optional(text, ''),
});

const capsSchema = v.looseObject(
  Object.fromEntries(
    Object.entries(DEFAULT_CAPS).map(([key, usual]) => [key, v.optional(v.nullable(notNegative), usual)]),
  ),
);

/** A schema taken at its word: it holds every member of `T`, filled in where missing. */
function shapeOf<T>(schema: v.GenericSchema<unknown, unknown>) {
  return (value: unknown) => checkShape<T>(schema as v.GenericSchema<unknown, T>, value);
}

/** A product of the file. */
export const checkProductShape = shapeOf<Product>(productSchema);
/** A piece of equipment of the file. */
export const checkEquipmentShape = shapeOf<Equipment>(equipmentSchema);
/** A visit of the file. */
export const checkVisitShape = shapeOf<Visit>(visitSchema);
/** A soil test of the file. */
export const checkSoilTestShape = shapeOf<SoilTest>(soilTestSchema);
/** A need of the file. */
export const checkNeedShape = shapeOf<NutrientNeed>(needSchema);
/** A program of the file. */
export const checkProgramShape = shapeOf<Program>(programSchema);
/** A rule of the file. */
export const checkRuleShape = shapeOf<LocalRule>(ruleSchema);
/** An override of the file. */
export const checkOverrideShape = shapeOf<Override>(overrideSchema);
/** The climate of the file. */
export const checkClimateShape = shapeOf<Climate>(climateSchema);
/** The caps of the file. */
export const checkCapsShape = shapeOf<NutrientCaps>(capsSchema);
