import { createPlane } from '../measure/plane';
import type { Position, Ring } from '../yard/types';
import { CLOSE_SHARE } from './importTypes';

/** Where a line did not end where it began. */
export interface LineGap {
  readonly gapM: number;
  /** within the rule: closed without asking. */
  readonly isSmall: boolean;
}

/** Lines made into rings. */
export interface ClosedLines {
  readonly rings: readonly Ring[];
  readonly gaps: readonly LineGap[];
}

/**
 * Closes lines to rings. A line is closed without asking when its ends are within `closeGapM` metres or
 * 2 % of its length; else the gap is told. Lines of fewer than three different corners enclose nothing.
 * @param lines degrees
 */
export function ringsOfLines(lines: readonly (readonly Position[])[], closeGapM: number): ClosedLines {
  const rings: Ring[] = [];
  const gaps: LineGap[] = [];
  for (const line of lines) {
    const [first, last] = [line[0], line.at(-1)];
    const corners = new Set(line.map((p) => `${p[0]},${p[1]}`)).size;
    if (!first || !last || corners < 3 || Math.abs(first[1]) >= 90) continue;
    if (first[0] === last[0] && first[1] === last[1]) {
      rings.push(line);
      continue;
    }
    const plane = createPlane(first);
    const flat = line.map((p) => plane.toPlane(p));
    let lengthM = 0;
    for (let i = 1; i < flat.length; i++) {
      const [a, b] = [flat[i - 1], flat[i]];
      if (a && b) lengthM += Math.hypot(b[0] - a[0], b[1] - a[1]);
    }
    const [x, y] = flat.at(-1) ?? [0, 0];
    const gapM = Math.hypot(x, y);
    gaps.push({ gapM, isSmall: gapM <= closeGapM || gapM <= CLOSE_SHARE * lengthM });
    rings.push([...line, first]);
  }
  return { rings, gaps };
}
