import type { XY } from '../../measure/types';

/** A point of a line and the heading there, degrees clockwise from the plane's north, 0 to <360. */
export interface LinePoint {
  readonly at: XY;
  readonly headingDeg: number;
  /** the corner before it, from 0. */
  readonly segment: number;
}

/**
 * The point so far along a line. Beyond its ends: the end.
 * @param line two points or more
 * @param share of its length, 0 to 1
 */
export function pointAlong(line: readonly XY[], share: number): LinePoint {
  const lengths = line.slice(1).map((b, i) => distance(line[i] as XY, b));
  const total = lengths.reduce((sum, length) => sum + length, 0);
  let rest = Math.min(1, Math.max(0, share)) * total;
  for (let i = 0; i < lengths.length; i += 1) {
    const length = lengths[i] ?? 0;
    if (rest <= length && length > 0) {
      const [a, b] = [line[i] as XY, line[i + 1] as XY];
      const part = rest / length;
      const at = [a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1])] as const;
      return { at, headingDeg: headingOf(a, b), segment: i };
    }
    rest -= length;
  }
  const last = lengths.findLastIndex((length) => length > 0);
  const end = line.at(-1) ?? [0, 0];
  if (last < 0) return { at: end, headingDeg: 0, segment: Math.max(0, line.length - 2) };
  return { at: end, headingDeg: headingOf(line[last] as XY, line[last + 1] as XY), segment: line.length - 2 };
}

/** The part of a line between two shares of its length, corners kept; two points or more. */
export function partOfLine(line: readonly XY[], from: number, to: number): XY[] {
  const [start, end] = [pointAlong(line, from), pointAlong(line, to)];
  return [start.at, ...line.slice(start.segment + 1, end.segment + 1), end.at];
}

function distance(a: XY, b: XY): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

function headingOf(a: XY, b: XY): number {
  return ((Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI + 360) % 360;
}
