import { bearingOf, formatBearing } from './bearing';
import { callVector, computeTraverse } from './traverse';
import type { PlatCall } from './types';

/** One mistake that would explain why the calls do not close. */
export interface LikelyMistake {
  readonly kind: 'reversed' | 'east-west' | 'north-south' | 'length' | 'direction' | 'turn' | 'missing';
  /** the call it is in, from 0; for a missing one the number of calls. */
  readonly index: number;
  /** the call as it would have to be. */
  readonly call: PlatCall;
  /** the gap that would be left, m. */
  readonly gapM: number;
}

/** Calls that close better than this are not searched: 1:n. */
const SEARCH_BELOW_RATIO = 1000;
/** A mistake explains the gap when what is left is this share of the length walked, and of the gap, or less. */
const LEFT_OF_LENGTH = 1 / 2000;
const LEFT_OF_GAP = 1 / 10;
/** A changed length must differ by this share, or it is no mistake but spread. */
const LEAST_CHANGE = 0.002;
const MOST_TOLD = 3;
/** A gap of more than this share of the calls may be a call left out: 1:n. */
const MISSING_BELOW_RATIO = 100;

/**
 * Looks for one mistake in reading or typing that would explain a bad closure: a call the other way round,
 * east for west, north for south, a curve that turns the other way, one wrong length (its call runs along
 * the gap), one wrong direction (the call as long as it should be, but turned), or a call left out.
 * Source of the rules: Engineering Aid training manual NAVEDTRA 14071, ch. 7, mistakes in traverses.
 * @returns best first, three at most; empty when the calls close at 1:1,000 or better, or there are fewer than 3
 */
export function findMistakes(calls: readonly PlatCall[]): LikelyMistake[] {
  const { closure } = computeTraverse(calls);
  if (calls.length < 3 || closure.ratio >= SEARCH_BELOW_RATIO) return [];
  const { departureM, latitudeM } = closure;
  const enough = Math.min(closure.lengthM * LEFT_OF_LENGTH, closure.gapM * LEFT_OF_GAP);
  const found: LikelyMistake[] = [];
  const tried = (kind: LikelyMistake['kind'], index: number, call: PlatCall) => {
    const [was, is] = [calls[index], callVector(call)];
    const [x, y] = was ? callVector(was) : [0, 0];
    const gapM = Math.hypot(departureM - x + is[0], latitudeM - y + is[1]);
    if (gapM <= enough) found.push({ kind, index, call, gapM });
  };
  for (const [index, call] of calls.entries()) {
    if (call.kind === 'arc') {
      tried('turn', index, { ...call, turn: call.turn === 'right' ? 'left' : 'right' });
      continue;
    }
    const { bearingDeg, lengthM } = call;
    tried('reversed', index, { ...call, bearingDeg: (bearingDeg + 180) % 360 });
    tried('east-west', index, { ...call, bearingDeg: (360 - bearingDeg) % 360 });
    tried('north-south', index, { ...call, bearingDeg: (540 - bearingDeg) % 360 });
    const [x, y] = callVector(call);
    const along = (departureM * x + latitudeM * y) / lengthM;
    if (lengthM - along > 0 && Math.abs(along) > LEAST_CHANGE * lengthM)
      tried('length', index, { ...call, lengthM: lengthM - along });
    const known = found.some((each) => each.index === index && each.kind !== 'length');
    if (!known) tried('direction', index, { ...call, bearingDeg: bearingOf(x - departureM, y - latitudeM) });
  }
  const best = found.sort((a, b) => rank(a) - rank(b) || a.gapM - b.gapM).slice(0, MOST_TOLD);
  if (best.length > 0 || closure.ratio >= MISSING_BELOW_RATIO) return best;
  const missing: PlatCall = {
    kind: 'line',
    bearingDeg: bearingOf(-departureM, -latitudeM),
    lengthM: closure.gapM,
  };
  return [{ kind: 'missing', index: calls.length, call: missing, gapM: 0 }];
}

/** A slip of one letter before a figure that is wrong altogether. */
function rank({ kind }: LikelyMistake): number {
  return kind === 'length' ? 1 : kind === 'direction' ? 2 : 0;
}

/** The mistake in a sentence. @param number of the call as shown @param sayLength lengths in the reader's units */
export function mistakeWords(
  mistake: LikelyMistake,
  number: number,
  sayLength: (m: number) => string,
): string {
  const { kind, call, gapM } = mistake;
  const closes = `would close it to ${sayLength(gapM)}`;
  if (kind === 'missing')
    return call.kind === 'line'
      ? `No single call explains it. A call may be missing: ${formatBearing(call.bearingDeg)} ${sayLength(call.lengthM)} would close it.`
      : '';
  if (call.kind === 'arc') return `Call ${number} turning ${call.turn} ${closes}.`;
  const bearing = formatBearing(call.bearingDeg);
  switch (kind) {
    case 'reversed':
      return `Call ${number} the other way round (${bearing}) ${closes}.`;
    case 'east-west':
      return `Call ${number} with east and west exchanged (${bearing}) ${closes}.`;
    case 'north-south':
      return `Call ${number} with north and south exchanged (${bearing}) ${closes}.`;
    case 'length':
      return `Call ${number} with a length of ${sayLength(call.lengthM)} ${closes}.`;
    default:
      return `Call ${number} in the direction ${bearing} ${closes}.`;
  }
}
