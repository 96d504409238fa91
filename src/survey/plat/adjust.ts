import { bearingOf, normaliseBearing, turnBetween } from './bearing';
import { callVector, computeTraverse } from './traverse';
import type { PlatCall } from './types';

/** A gap smaller than this needs no last side, m. */
const CLOSED_M = 1e-6;

/**
 * Spreads the gap over the calls by the compass rule (Bowditch): each latitude and departure is changed by
 * the gap's, times the call's length over the length of all. An arc counts with its chord and keeps its
 * central angle; it is turned and scaled with the chord.
 * Source: Mahun, Open Access Surveying Library, Traverse Computations ch. E, eq. E-1 to E-6.
 * @returns calls that close; the same ones when they do already. Calls of no length at all stay.
 */
export function adjustByCompassRule(calls: readonly PlatCall[]): readonly PlatCall[] {
  let adjusted = calls;
  // the second round takes off what rounding left of the first
  for (let round = 0; round < 2; round++) {
    const { closure } = computeTraverse(adjusted);
    const vectors = adjusted.map(callVector);
    const total = vectors.reduce((sum, [dx, dy]) => sum + Math.hypot(dx, dy), 0);
    if (closure.gapM === 0 || total === 0) return adjusted;
    adjusted = adjusted.map((call, i) => {
      const [dx, dy] = vectors[i] ?? [0, 0];
      const share = Math.hypot(dx, dy) / total;
      return refit(call, dx, dy, dx - closure.departureM * share, dy - closure.latitudeM * share);
    });
  }
  return adjusted;
}

/** The call whose chord ran along (dx, dy) with its chord along (toX, toY). */
function refit(call: PlatCall, dx: number, dy: number, toX: number, toY: number): PlatCall {
  const [before, after] = [Math.hypot(dx, dy), Math.hypot(toX, toY)];
  if (before === 0) return call;
  if (call.kind === 'line') return { ...call, bearingDeg: bearingOf(toX, toY), lengthM: after };
  const turned = turnBetween(bearingOf(dx, dy), bearingOf(toX, toY));
  return {
    ...call,
    radiusM: (call.radiusM * after) / before,
    entryBearingDeg: normaliseBearing(call.entryBearingDeg + turned),
  };
}

/** The straight call from the end of the calls back to their beginning; null when they close. */
export function closingCall(calls: readonly PlatCall[]): PlatCall | null {
  const { closure } = computeTraverse(calls);
  if (closure.gapM <= CLOSED_M) return null;
  return {
    kind: 'line',
    bearingDeg: bearingOf(-closure.departureM, -closure.latitudeM),
    lengthM: closure.gapM,
  };
}
