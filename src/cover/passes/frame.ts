import { signedArea } from '../../measure/signedArea';
import type { PlaneRings, XY } from '../../measure/types';

/** Axes along and to the left of a heading. */
export interface Frame {
  readonly headingDeg: number;
  readonly to: (p: XY) => XY;
  readonly back: (p: XY) => XY;
}

/** @param headingDeg degrees clockwise from north: x of the frame runs along it, y to its left */
export function frameOf(headingDeg: number): Frame {
  const angle = (headingDeg * Math.PI) / 180;
  const [ux, uy] = [Math.sin(angle), Math.cos(angle)];
  return {
    headingDeg,
    to: ([x, y]) => [x * ux + y * uy, -x * uy + y * ux],
    back: ([x, y]) => [x * ux - y * uy, x * uy + y * ux],
  };
}

/** Outlines with the ground on their left: outer rings counter-clockwise, holes clockwise. */
export function orientedRings(parts: readonly PlaneRings[]): XY[][] {
  return parts.flatMap((rings) =>
    rings.map((ring, i) => (signedArea(ring) > 0 === (i === 0) ? [...ring] : ring.toReversed())),
  );
}

/** A frame's copy of rings. */
export function ringsInFrame(rings: readonly (readonly XY[])[], frame: Frame): XY[][] {
  return rings.map((ring) => ring.map(frame.to));
}

/** Length of a line, m. */
export function lengthOfLine(line: readonly XY[]): number {
  let sum = 0;
  for (let i = 1; i < line.length; i++) sum += distanceOf(line[i - 1] as XY, line[i] as XY);
  return sum;
}

/** Distance of two places, m. */
export function distanceOf(a: XY, b: XY): number {
  const [dx, dy] = [a[0] - b[0], a[1] - b[1]];
  // hypot minds overflow, at several times the cost
  return Math.sqrt(dx * dx + dy * dy);
}

/** The way between two places, straight, m; none where one of them is not told. */
export const gapOf = (a: XY | null | undefined, b: XY | null | undefined): number =>
  a && b ? distanceOf(a, b) : 0;
