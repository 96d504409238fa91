import * as v from 'valibot';
import { DEFAULT_SETTINGS } from './defaults';
import {
  checkShape,
  date,
  type Fault,
  finite,
  id,
  notNegative,
  pair,
  position,
  positive,
  text,
} from './shapes';
import { MATERIALS, MOWING_CLASSES, type Settings, SURVEY_METHODS } from './types';

/*
 * Shapes of what a file may hold, for valibot. Objects are loose: members that this program does not
 * know stay on them. Only shape and hard bounds are checked here; whether a label makes sense is
 * for plan/check.
 */

/** Whether a measurement is left out of a fit. */
const left = v.optional(v.boolean('must be true or false'));

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
  hose: v.looseObject({
    lengthM: v.optional(v.nullable(positive), null),
    flowLPerS: v.optional(v.nullable(positive), null),
  }),
  stepM: v.nullable(positive),
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
  downhillDeg: v.pipe(notNegative, v.ltValue(360, 'must be less than 360')),
  plantedOn: date,
};

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
