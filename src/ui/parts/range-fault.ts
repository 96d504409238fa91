import { formatNumber, placeOf } from '../../units/format';

/** A least so small stands for "more than nothing". */
const NOTHING = 1e-3;
/** Digits of a limit in its words. */
const DIGITS = 3;

/**
 * What is wrong with a figure outside its limits, in round words that are themselves allowed; empty: nothing.
 * @param value of the entry, @param min and @param max of its limits, all three in the unit shown; null: no limit
 * @param label of that unit
 */
export function rangeFault(value: number, min: number | null, max: number | null, label: string): string {
  if (!Number.isFinite(value)) return 'Type a number.';
  if (min !== null && value < min)
    return min > 0 && min < NOTHING
      ? 'Must be more than 0.'
      : `Must be ${round(min, Math.ceil)} ${label} or more.`;
  if (max !== null && value > max) return `Must be ${round(max, Math.floor)} ${label} or less.`;
  return '';
}

/** To three digits, to the side that is allowed; a limit converted from another unit may be off by its last bits. */
function round(limit: number, toSide: (value: number) => number): string {
  const step = 10 ** -placeOf(limit, DIGITS);
  const near = Math.round(limit / step) * step;
  const isNear = Math.abs(near - limit) <= 1e-9 * Math.abs(limit);
  return formatNumber(isNear ? near : toSide(limit / step) * step, DIGITS + 1);
}
