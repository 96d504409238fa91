/** A result with the objects it came from: good while every one of them is the same. */
export interface Kept<T> {
  readonly from: readonly unknown[];
  readonly value: T;
}

/** @returns `kept` itself while it came from the same objects, else what `make` gives, with its objects. */
export function keep<T>(kept: Kept<T> | null | undefined, from: readonly unknown[], make: () => T): Kept<T> {
  const same = kept?.from.length === from.length && kept.from.every((item, i) => item === from[i]);
  return kept && same ? kept : { from, value: make() };
}
