import type { Leg } from '../passTypes';

/** A leg among those of its kind in its zone and coat: "pass 7 of 18". */
export interface LegNumber {
  /** from 1. */
  readonly number: number;
  readonly of: number;
}

/** The number of each leg of its kind within its zone and coat, in walking order. @param legs of one dose */
export function legNumbers(legs: readonly Pick<Leg, 'kind' | 'zoneId' | 'coat'>[]): readonly LegNumber[] {
  const counts = new Map<string, number>();
  const keys = legs.map(({ kind, zoneId, coat }) => `${kind}:${coat}:${zoneId}`);
  const numbers = keys.map((key) => {
    const number = (counts.get(key) ?? 0) + 1;
    counts.set(key, number);
    return number;
  });
  return numbers.map((number, i) => ({ number, of: counts.get(keys[i] ?? '') ?? number }));
}
