import type { PlaneFix } from './fixNoise';

/** The start can be met again only in this last share of the way. */
const LAST_SHARE = 0.3;
/** The start is met again within this many sigmas and metres; and the end lies farther off by as many sigmas. */
const NEAR = 3;
const NEAR_M = 2;

export interface Loop {
  /** fixes up to where the start was met again. */
  readonly fixes: readonly PlaneFix[];
  /** from the last of them to the first, metres. */
  readonly gapM: number;
  /** length walked after that and left off, metres. */
  readonly overlapM: number;
}

/**
 * Cuts off what was walked a second time beyond the start, and tells what the closing side must bridge.
 * @param fixes in order of time, one or more
 */
export function closeLoop(fixes: readonly PlaneFix[]): Loop {
  const first = fixes[0];
  const count = fixes.length;
  if (!first) return { fixes, gapM: 0, overlapM: 0 };
  const gapAt = (index: number) => distance(fixes[index] ?? first, first);
  let end = count - 1;
  for (let i = Math.ceil(count * (1 - LAST_SHARE)); i < count - 1; i++) if (gapAt(i) < gapAt(end)) end = i;
  const isMet = gapAt(end) <= NEAR * first.sigmaM + NEAR_M;
  if (!isMet || gapAt(count - 1) - gapAt(end) < NEAR * first.sigmaM) end = count - 1;
  let overlapM = 0;
  for (let i = end + 1; i < count; i++) overlapM += distance(fixes[i - 1] ?? first, fixes[i] ?? first);
  return { fixes: fixes.slice(0, end + 1), gapM: gapAt(end), overlapM };
}

function distance(a: PlaneFix, b: PlaneFix): number {
  return Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
}
