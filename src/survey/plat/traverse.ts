import { signedArea } from '../../measure/signedArea';
import type { XY } from '../../measure/types';
import { segmentArea } from '../segmentArea';
import { bearingOf, chordBearing } from './bearing';
import { curveElements } from './curve';
import type { PlatCall, Traverse, TraverseClosure } from './types';

const RAD = Math.PI / 180;
/** Calls that end this near their beginning close, m. */
const CLOSED_M = 1e-9;

/** The straight line from the beginning of a call to its end, metres east and north. */
export function callVector(call: PlatCall): XY {
  const [deg, lengthM] =
    call.kind === 'line'
      ? [call.bearingDeg, call.lengthM]
      : [chordBearing(call), curveElements(call.radiusM, call.deltaDeg).chordM];
  return [lengthM * Math.sin(deg * RAD), lengthM * Math.cos(deg * RAD)];
}

/** Length along a call, m. */
export function callLength(call: PlatCall): number {
  return call.kind === 'line' ? call.lengthM : call.radiusM * call.deltaDeg * RAD;
}

/**
 * Works out calls in the plane: latitude L·cos, departure L·sin of each (arcs by their chord), the gap
 * between their end and their beginning, the precision ratio length over gap, and the area by
 * coordinates, with the segments of arcs added or taken off exactly.
 * Source: Mahun, Open Access Surveying Library, Traverse Computations ch. D, E and G, COGO ch. H.
 */
export function computeTraverse(calls: readonly PlatCall[]): Traverse {
  const points: XY[] = [[0, 0]];
  let [x, y] = [0, 0];
  let lengthM = 0;
  let twist = 0;
  for (const call of calls) {
    const [dx, dy] = callVector(call);
    x += dx;
    y += dy;
    points.push([x, y]);
    lengthM += callLength(call);
    if (call.kind === 'arc')
      twist += (call.turn === 'left' ? 1 : -1) * segmentArea(call.radiusM, call.deltaDeg * RAD);
  }
  const signed = signedArea([...points, [0, 0]]) + twist;
  return {
    calls,
    points,
    closure: closureOf(x, y, lengthM),
    areaM2: Math.abs(signed),
    isClockwise: signed < 0,
  };
}

function closureOf(departureM: number, latitudeM: number, lengthM: number): TraverseClosure {
  const gapM = Math.hypot(departureM, latitudeM);
  const isClosed = gapM <= CLOSED_M;
  return {
    latitudeM,
    departureM,
    gapM,
    bearingDeg: isClosed ? 0 : bearingOf(departureM, latitudeM),
    lengthM,
    ratio: isClosed ? Infinity : lengthM / gapM,
  };
}
