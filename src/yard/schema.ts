import * as v from 'valibot';
import { DEFAULT_SETTINGS } from './defaults';
import {
  MATERIALS,
  MOWING_CLASSES,
  NUTRIENTS,
  PRODUCT_FORMS,
  type Product,
  type Settings,
  SURVEY_METHODS,
  type Visit,
  ZONE_CLASSES,
} from './types';

/*
 * Shapes of what a file may hold, for valibot. Objects are loose: members that this program does not
 * know stay on them. Only shape and hard bounds are checked here; whether a label makes sense is
 * for plan/check.
 */

const finite = v.pipe(v.number('must be a number'), v.finite('must be a finite number'));
const notNegative = v.pipe(finite, v.minValue(0, 'must be 0 or more'));
const positive = v.pipe(finite, v.gtValue(0, 'must be more than 0'));
const text = v.string('must be text');
const id = v.pipe(text, v.minLength(1, 'must not be empty'));
const date = v.pipe(text, v.isoDate('must be a date such as 2026-05-01'));

/** Two numbers, and a longitude with a latitude. */
const pair = v.tuple([finite, finite], 'must be two numbers');
const position = v.tuple(
  [
    v.pipe(finite, v.minValue(-360, 'must be a longitude'), v.maxValue(360, 'must be a longitude')),
    v.pipe(finite, v.minValue(-90, 'must be a latitude'), v.maxValue(90, 'must be a latitude')),
  ],
  'must be a longitude and a latitude',
);

/** Whether a measurement is left out of a fit. */
const left = v.optional(v.boolean('must be true or false'));

const amount = v.looseObject({ unit: v.picklist(['L', 'kg'], 'must be L or kg'), value: notNegative });

const labelRate = v.variant(
  'basis',
  [
    v.looseObject({ basis: v.literal('area-per-container'), areaM2: notNegative, packId: text }),
    v.looseObject({ basis: v.literal('volume-per-area'), rateLPerM2: notNegative }),
    v.looseObject({ basis: v.literal('mass-per-area'), rateKgPerM2: notNegative }),
    v.looseObject({
      basis: v.literal('nutrient-per-area'),
      nutrient: v.picklist(NUTRIENTS, `must be one of ${NUTRIENTS.join(', ')}`),
      rateKgPerM2: notNegative,
    }),
    v.looseObject({ basis: v.literal('depth'), depthM: notNegative }),
  ],
  'must have a basis: area-per-container, volume-per-area, mass-per-area, nutrient-per-area or depth',
);

const productSchema = v.looseObject({
  id,
  name: text,
  form: v.picklist(PRODUCT_FORMS, `must be one of ${PRODUCT_FORMS.join(', ')}`),
  analysis: v.looseObject({
    nPct: notNegative,
    p2o5Pct: notNegative,
    k2oPct: notNegative,
    slowNPctOfN: v.optional(v.nullable(notNegative), null),
  }),
  densityKgPerL: v.optional(v.nullable(notNegative), null),
  rate: labelRate,
  packs: v.array(
    v.looseObject({ id, content: amount, price: v.optional(v.nullable(notNegative), null) }),
    'must be a list',
  ),
  carrierLPerM2: v.optional(v.nullable(notNegative), null),
  carrierIsTotal: v.optional(v.boolean('must be true or false'), false),
  spreadDistanceM: v.optional(notNegative, 0),
  stainsHardscape: v.optional(v.boolean('must be true or false'), false),
  waterIn: v.optional(v.boolean('must be true or false'), false),
  limits: v.optional(
    v.looseObject({
      maxPerDose: v.optional(v.nullable(amount), null),
      maxPerYear: v.optional(v.nullable(amount), null),
      minIntervalDays: v.optional(v.nullable(notNegative), null),
      maxDosesPerYear: v.optional(v.nullable(notNegative), null),
      maxAirTempC: v.optional(v.nullable(finite), null),
    }),
    {},
  ),
  onHand: v.optional(v.record(text, notNegative), {}),
  note: v.optional(text, ''),
});

const choice = v.looseObject({
  classes: v.array(v.picklist(ZONE_CLASSES, `must be one of ${ZONE_CLASSES.join(', ')}`), 'must be a list'),
  include: v.array(text, 'must be a list'),
  exclude: v.array(text, 'must be a list'),
});

const visitSchema = v.looseObject({
  id,
  name: text,
  date: v.optional(v.nullable(date), null),
  zones: choice,
  doses: v.array(
    v.looseObject({
      id,
      productId: text,
      rateFactor: v.optional(positive, 1),
      zones: v.optional(v.nullable(choice), null),
    }),
    'must be a list',
  ),
  tankL: v.optional(v.nullable(positive), null),
  note: v.optional(text, ''),
});

/**
 * `sample:name` is a picture that comes with the program. Backslashes and control characters have no
 * place in an address (RFC 3986), yet browsers turn them into slashes or drop them: `/\host` is `//host`.
 */
const webAddress = v.pipe(
  text,
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is refused
  v.regex(/^[^\\\u0000-\u001f\u007f]*$/, 'must be a web address without backslash or control character'),
  v.regex(/^(https?:\/\/|blob:|data:image\/|sample:[\w-]+$|\.{0,2}\/|[\w./-]+$)/i, 'must be a web address'),
);
const layerNames = { id, name: text, url: webAddress, attribution: text };
const baseLayer = v.variant(
  'kind',
  [
    v.looseObject({ kind: v.literal('grid') }),
    v.looseObject({ kind: v.literal('xyz'), ...layerNames, maxNativeZoom: notNegative }),
    v.looseObject({
      kind: v.literal('wms'),
      ...layerNames,
      layers: text,
      version: v.picklist(['1.1.1', '1.3.0'], 'must be 1.1.1 or 1.3.0'),
    }),
    v.looseObject({
      kind: v.literal('picture'),
      ...layerNames,
      west: finite,
      south: finite,
      east: finite,
      north: finite,
    }),
    v.looseObject({
      kind: v.literal('own-picture'),
      id,
      name: text,
      attribution: text,
      pictureId: id,
      widthPx: positive,
      heightPx: positive,
      origin: position,
      toGround: v.tuple([finite, finite, finite, finite, finite, finite], 'must be six numbers'),
      opacity: v.pipe(notNegative, v.maxValue(1, 'must be 1 or less')),
      sigmaM: notNegative,
      scaleSigma: notNegative,
      underId: v.optional(text),
      fit: v.nullable(
        v.looseObject({
          kind: v.picklist(['similarity', 'affine'], 'must be similarity or affine'),
          points: v.array(v.looseObject({ pixel: pair, ground: position, isOut: left }), 'must be a list'),
          distances: v.array(
            v.looseObject({ from: pair, to: pair, lengthM: positive, isOut: left }),
            'must be a list',
          ),
          northDeg: v.nullable(finite),
        }),
      ),
    }),
  ],
  'must be a grid, xyz, wms, picture or own-picture layer',
);

/** Each setting by itself, so that one bad setting falls back alone. */
export const settingSchemas = {
  units: v.picklist(['us', 'metric'], 'must be us or metric'),
  currency: text,
  elevationM: v.nullable(finite),
  strips: v.looseObject({ stormDrainM: notNegative, wellM: notNegative, waterM: notNegative }),
  baseLayer,
  ownLayers: v.array(baseLayer, 'must be a list'),
  gapToleranceM: notNegative,
  isLocal: v.boolean('must be true or false'),
  showSurface: v.boolean('must be true or false'),
  doseBySurface: v.boolean('must be true or false'),
} satisfies Record<keyof Settings, v.GenericSchema>;

/** Each property of a zone by itself, with what stands in for a missing one. */
export const zonePropertySchemas = {
  name: text,
  mowing: v.picklist(MOWING_CLASSES, `must be ${MOWING_CLASSES.join(' or ')}`),
  material: v.picklist(MATERIALS, `must be one of ${MATERIALS.join(', ')}`),
  note: text,
  surveyMethod: v.picklist(SURVEY_METHODS, `must be one of ${SURVEY_METHODS.join(', ')}`),
  vertexSigmaM: notNegative,
  scaleSigma: notNegative,
  surveySource: text,
  curves: v.array(
    v.looseObject({
      kind: v.picklist(['arc', 'smooth'], 'must be arc or smooth'),
      points: v.pipe(v.array(position, 'must be a list'), v.minLength(3, 'must have three points or more')),
    }),
    'must be a list',
  ),
  cutsSameKind: v.boolean('must be true or false'),
  isLocked: v.boolean('must be true or false'),
  slope: notNegative,
};

/** What is wrong with a value: where in it and in what way. */
export interface Fault {
  /** such as `rate.areaM2` or `packs[0].content`; empty for the value itself. */
  readonly path: string;
  readonly message: string;
}

/** Checks one value; every fault is told, and missing optional members are filled in. */
export function checkShape<T>(
  schema: v.GenericSchema<unknown, T>,
  value: unknown,
): { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: readonly Fault[] } {
  const result = v.safeParse(schema, value);
  if (result.success) return { ok: true, value: result.output };
  return {
    ok: false,
    faults: result.issues.map((issue) => ({
      path: pathText(issue.path?.map((item) => item.key) ?? []),
      message: issue.received === 'undefined' ? 'is missing' : issue.message,
    })),
  };
}

function pathText(keys: readonly unknown[]): string {
  return keys
    .map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i === 0 ? '' : '.'}${String(key)}`))
    .join('');
}

/** A product of the file. Holds every member of `Product`, and members unknown to it. */
export function checkProductShape(value: unknown) {
  return checkShape<Product>(productSchema as unknown as v.GenericSchema<unknown, Product>, value);
}

/** A visit of the file. */
export function checkVisitShape(value: unknown) {
  return checkShape<Visit>(visitSchema as unknown as v.GenericSchema<unknown, Visit>, value);
}

/** Settings of the file over the defaults; a bad one is told and its default used. */
export function readSettings(value: unknown): {
  readonly settings: Settings;
  readonly faults: readonly Fault[];
} {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return {
      settings: DEFAULT_SETTINGS,
      faults: value === undefined ? [] : [{ path: '', message: 'must be an object' }],
    };
  }
  const given = value as Record<string, unknown>;
  const faults: Fault[] = [];
  const settings: Record<string, unknown> = { ...DEFAULT_SETTINGS, ...given };
  for (const [key, schema] of Object.entries(settingSchemas)) {
    if (given[key] === undefined) {
      settings[key] = DEFAULT_SETTINGS[key as keyof Settings];
      continue;
    }
    const result = checkShape(schema as v.GenericSchema, given[key]);
    if (result.ok) settings[key] = result.value;
    else {
      settings[key] = DEFAULT_SETTINGS[key as keyof Settings];
      for (const fault of result.faults) {
        const joint = fault.path === '' || fault.path.startsWith('[') ? '' : '.';
        faults.push({ path: `${key}${joint}${fault.path}`, message: fault.message });
      }
    }
  }
  return { settings: settings as unknown as Settings, faults };
}
