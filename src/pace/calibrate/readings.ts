/** What was read, by name, in SI; readings taken again and again are numbered: `timeS1`, `timeS2`. */
export type Readings = Readonly<Record<string, number>>;

/** Repeated readings of one thing. */
export interface ReadingMean {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly count: number;
  /** (high - low) / mean; 0 for a single reading. */
  readonly spread: number;
}

/** Readings farther apart than this share of their mean are told: one more is wanted; common practice, no source. */
export const MOST_SPREAD = 0.1;

/** Most readings kept of one thing. */
export const MOST_READINGS = 9;

/** One reading by name; null where it was not taken, is not a number or is not more than zero. */
export function readingOf(readings: Readings, name: string): number | null {
  const value = readings[name];
  return value !== undefined && Number.isFinite(value) && value > 0 ? value : null;
}

/** Repeated readings of one name in their order; those not more than zero are left out. */
export function readingList(readings: Readings, name: string): readonly number[] {
  return Array.from({ length: MOST_READINGS }, (_, i) => readingOf(readings, `${name}${i + 1}`)).filter(
    (value) => value !== null,
  );
}

/** Readings with the list of one name put in anew. */
export function withReadingList(readings: Readings, name: string, values: readonly number[]): Readings {
  const isOfList = (key: string) => key.startsWith(name) && /^\d$/.test(key.slice(name.length));
  const others = Object.entries(readings).filter(([key]) => !isOfList(key));
  return Object.fromEntries([
    ...others,
    ...values.slice(0, MOST_READINGS).map((value, i) => [`${name}${i + 1}`, value]),
  ]);
}

/** Their mean, and how far apart they lie (the mean of several runs: NC State Extension worksheet, Oklahoma State). */
export function meanOfReadings(values: readonly number[]): ReadingMean | null {
  if (values.length === 0) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return { mean, low, high, count: values.length, spread: (high - low) / mean };
}

/** Most pans of a row. */
export const MOST_PANS = 15;

/** What the pans of a row hold, from left to right: `pan1`, `pan2`, … as far as they are read; an empty pan holds 0. */
export function panReadings(readings: Readings): readonly number[] {
  const held: number[] = [];
  for (let i = 1; i <= MOST_PANS; i++) {
    const value = readings[`pan${i}`];
    if (value === undefined || !Number.isFinite(value)) break;
    held.push(Math.max(0, value));
  }
  return held;
}
