import { replaceZone } from '../yard/edits';
import type { Position, Ring, Yard, Zone } from '../yard/types';
import { ribbonOf } from './band';
import { differenceOf, intersectionOf, planeAreaOf, unionOf } from './clip';
import { createCornerBook } from './corners';
import { dropStaleCurves } from './curves';
import { nameInText } from './nameInText';
import { layZone } from './planeZone';
import { matchCorners, notNoise, refuse, type ShapeResult, withZone } from './shapeResult';
import { cutParts, layOnZone } from './shapes';
import { signedArea } from './signedArea';
import type { LocalPlane, PlaneRings, XY } from './types';

/** What is done with the ground along a stretch of an outline. */
export type OffsetWay = 'strip' | 'inward' | 'outward';

const SAME_M = 1e-4;
/** A side beside the stretch that turns off it by less than this ends a strip square across. */
const LEAST_TURN = Math.tan((30 * Math.PI) / 180);

interface Stretch {
  readonly line: readonly XY[];
  /** corner of the ring before its first and after its last; null for a whole ring. */
  readonly before: XY | null;
  readonly after: XY | null;
  /** the zone's ground lies at its left. */
  readonly isInsideLeft: boolean;
}

/** Finds the stretch in a ring of the zone, so that what lies beside it is known. */
function findStretch(parts: readonly PlaneRings[], line: readonly XY[]): Stretch | null {
  const [first, second, last, beforeLast] = [line[0], line[1], line.at(-1), line.at(-2)];
  if (!first || !second || !last || !beforeLast) return null;
  const isAt = (a: XY | undefined, b: XY) => !!a && Math.hypot(a[0] - b[0], a[1] - b[1]) <= SAME_M;
  for (const rings of parts) {
    for (const [r, closed] of rings.entries()) {
      const ring = closed.slice(0, -1);
      const n = ring.length;
      const start = ring.findIndex((p) => isAt(p, first));
      if (start < 0) continue;
      const step = isAt(ring[(start + 1) % n], second) ? 1 : isAt(ring[(start + n - 1) % n], second) ? -1 : 0;
      if (step === 0) continue;
      const end = ring.findIndex((p, i) => isAt(p, last) && isAt(ring[(i + n - step) % n], beforeLast));
      if (end < 0) continue;
      const isLeft = signedArea(closed) > 0 === (r === 0);
      const isWhole = isAt(first, last);
      return {
        line,
        before: isWhole ? null : (ring[(start + n - step) % n] ?? null),
        after: isWhole ? null : (ring[(end + n + step) % n] ?? null),
        isInsideLeft: isLeft === (step === 1),
      };
    }
  }
  return null;
}

/** The end of a line carried on so that a strip of this width ends at the side beside it, not square across. */
function carriedEnd(from: XY, end: XY, beside: XY | null, widthM: number, isStripLeft: boolean): XY {
  if (!beside) return end;
  const length = Math.hypot(end[0] - from[0], end[1] - from[1]);
  const [ux, uy] = [(end[0] - from[0]) / length, (end[1] - from[1]) / length];
  const [bx, by] = [beside[0] - end[0], beside[1] - end[1]];
  const along = bx * ux + by * uy;
  const across = (isStripLeft ? 1 : -1) * (ux * by - uy * bx);
  // The side beside leans outward on the strip's side: the strip runs on below it.
  if (along <= 0 || across < along * LEAST_TURN) return end;
  const carry = (widthM * along) / across;
  return [end[0] + ux * carry, end[1] + uy * carry];
}

/**
 * Ground within a width of a stretch of a zone's outline, at its inner or its outer side, mitred at
 * bends; it ends at the sides beside it.
 */
function groundBeside(
  parts: readonly PlaneRings[],
  stretch: Stretch,
  widthM: number,
  isInside: boolean,
): PlaneRings[] {
  const { line, before, after, isInsideLeft } = stretch;
  const isLeft = isInside === isInsideLeft;
  const [first, second, last, beforeLast] = [line[0], line[1], line.at(-1), line.at(-2)];
  if (!first || !second || !last || !beforeLast) return [];
  const carried = before
    ? [
        carriedEnd(second, first, before, widthM, !isLeft),
        ...line.slice(1, -1),
        carriedEnd(beforeLast, last, after, widthM, isLeft),
      ]
    : line;
  const ribbon = ribbonOf(carried, 2 * widthM, 'mitred');
  const taken = isInside ? intersectionOf(parts, ribbon) : differenceOf(ribbon, parts);
  const touches = (rings: PlaneRings) =>
    rings.some((ring) => ring.some(([x, y]) => line.some((p) => Math.hypot(p[0] - x, p[1] - y) <= SAME_M)));
  return notNoise(taken).filter(touches);
}

/**
 * Does something with the ground within a width of a stretch of a zone's outline: `strip` makes it a
 * zone of its own (a mowing strip, a bed's edge); `inward` takes it off the zone; `outward` adds as much outside.
 * @param stretch corners in the order of the outline; first equal to last: a whole ring
 * @param made for `strip`: the new zone, its parts not yet set
 */
export function offsetEdge(
  yard: Yard,
  zoneId: string,
  stretch: readonly Position[],
  widthM: number,
  way: OffsetWay,
  made: Zone | null,
  plane: LocalPlane,
): ShapeResult {
  if (!(widthM > 0)) return refuse('offset-no-width', 'Type a width of more than nothing.', zoneId);
  return withZone(yard, zoneId, plane, (zone, parts) => {
    const found = findStretch(
      parts,
      stretch.map((p) => plane.toPlane(p)),
    );
    if (!found)
      return refuse('offset-no-stretch', 'Pick the side again: the outline has changed since.', zoneId);
    const ground = groundBeside(parts, found, widthM, way !== 'outward');
    if (ground.length === 0)
      return refuse('offset-nothing', 'There is no ground beside this side.', zoneId, stretch[0]);
    if (way !== 'outward' && planeAreaOf(ground) >= planeAreaOf(parts) - SAME_M) {
      const message = `A width like that would take all of ${nameInText(zone)}. Type a smaller one.`;
      return refuse('offset-too-wide', message, zoneId, stretch[0]);
    }
    const book = createCornerBook(yard.zones, plane);
    if (way === 'outward') {
      const grown = dropStaleCurves({ ...zone, parts: book.toRings(unionOf([...parts, ...ground])) });
      return { ok: true, yard: matchCorners(replaceZone(yard, grown), book.added(), plane, [zoneId]) };
    }
    const rings = book.toRings(ground);
    if (way === 'inward') return cutParts(yard, zoneId, rings, [], plane);
    if (!made) throw new Error('A strip needs the zone it becomes.');
    return layOnZone(yard, zoneId, dropStaleCurves({ ...made, parts: rings, curves: zone.curves }), plane);
  });
}

/** The new lines that an offset would draw, for a preview: outlines of the ground it moves. Empty when it cannot be. */
export function offsetOutlines(
  zone: Zone,
  stretch: readonly Position[],
  widthM: number,
  way: OffsetWay,
  plane: LocalPlane,
): Ring[] {
  const parts = layZone(zone, plane).parts;
  const found = findStretch(
    parts,
    stretch.map((p) => plane.toPlane(p)),
  );
  if (!found || !(widthM > 0)) return [];
  return groundBeside(parts, found, widthM, way !== 'outward').flatMap((rings) =>
    rings.map((ring) => ring.map((p) => plane.toLonLat(p))),
  );
}
