import * as v from 'valibot';

/*
 * Values that every schema of the file is made of, and the one way to check a shape.
 */

export const finite = v.pipe(v.number('must be a number'), v.finite('must be a finite number'));
export const notNegative = v.pipe(finite, v.minValue(0, 'must be 0 or more'));
export const positive = v.pipe(finite, v.gtValue(0, 'must be more than 0'));
export const text = v.string('must be text');
export const id = v.pipe(text, v.minLength(1, 'must not be empty'));
export const date = v.pipe(text, v.isoDate('must be a date such as 2026-05-01'));

/** Two numbers, and a longitude with a latitude. */
export const pair = v.tuple([finite, finite], 'must be two numbers');
export const position = v.tuple(
  [
    v.pipe(finite, v.minValue(-360, 'must be a longitude'), v.maxValue(360, 'must be a longitude')),
    v.pipe(finite, v.minValue(-90, 'must be a latitude'), v.maxValue(90, 'must be a latitude')),
  ],
  'must be a longitude and a latitude',
);

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
