import { outsetOfArc } from '../../measure/flattenCurve';
import type { XY } from '../../measure/types';

/** A side of a ring strays from its arc by this at most, m. */
const TOLERANCE_M = 0.005;
/** Fewest and most sides of a full circle, as in `makeCircle`. */
const FEWEST = 24;
const MOST = 360;

/** How many sides an arc gets. @param turnRad the angle it spans, rad */
export function sidesOfArc(radiusM: number, turnRad: number): number {
  const whole = radiusM > TOLERANCE_M ? Math.PI / Math.acos(1 - TOLERANCE_M / radiusM) : 0;
  const perCircle = Math.min(MOST, Math.max(FEWEST, whole));
  return Math.max(4, 2 * Math.ceil((perCircle * turnRad) / (4 * Math.PI)));
}

/**
 * Corners along an arc whose chords enclose, with the centre, just the sector's own area r²·turn/2: the
 * ends lie on the arc and the corners between on a slightly larger radius.
 * @param startRad direction of the first corner from the centre, rad counter-clockwise from x
 * @param turnRad more than 0 and less than 2π
 * @returns both ends included; an even number of sides, so that one corner stands in the middle
 */
export function cornersOfArc(centre: XY, radiusM: number, startRad: number, turnRad: number): XY[] {
  const count = sidesOfArc(radiusM, turnRad);
  const step = turnRad / count;
  const reach = radiusM * outsetOfArc(count, step);
  return Array.from({ length: count + 1 }, (_, i): XY => {
    const out = i === 0 || i === count ? radiusM : reach;
    const angle = startRad + i * step;
    return [centre[0] + out * Math.cos(angle), centre[1] + out * Math.sin(angle)];
  });
}

/** Where an arc is halfway. As for `cornersOfArc`. */
export function middleOfArc(centre: XY, radiusM: number, startRad: number, turnRad: number): XY {
  const angle = startRad + turnRad / 2;
  return [centre[0] + radiusM * Math.cos(angle), centre[1] + radiusM * Math.sin(angle)];
}
