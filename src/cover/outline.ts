import Flatbush from 'flatbush';
import { isInsideParts } from '../measure/isInsideParts';
import { type Box, boxesNear, boxOf } from '../measure/planeBox';
import type { PlaneRings, XY } from '../measure/types';
import { areNear, type Segment, sidesOf } from './segments';

/** With fewer sides than this, asking each one is quicker than an index. */
const LEAST_INDEXED = 16;

/** Shapes in the plane, made ready for many questions about what lies near. */
export interface Outline {
  readonly parts: readonly PlaneRings[];
  readonly box: Box;
  /** @returns the sides whose boxes come within `reachM` of the segment's box, in the outline's order. */
  sidesNear(segment: Segment, reachM: number): readonly Segment[];
  /** @returns whether a point lies in the shapes, holes excepted. */
  holds(p: XY): boolean;
}

const outlines = new WeakMap<readonly PlaneRings[], Outline>();

/**
 * The outline of shapes in the plane, metres; kept while `parts` is the same array.
 * @param parts closed rings, outer first, then holes; must not be changed afterwards
 */
export function outlineOf(parts: readonly PlaneRings[]): Outline {
  const kept = outlines.get(parts);
  if (kept) return kept;
  const sides = sidesOf(parts);
  const box = boxOf(parts);
  let index: Flatbush | undefined;
  const made: Outline = {
    parts,
    box,
    sidesNear(segment, reachM) {
      const around = boxOfSegment(segment);
      if (!boxesNear(around, box, reachM)) return [];
      if (sides.length < LEAST_INDEXED) return sides.filter((side) => areNear(segment, side, reachM));
      index ??= indexOf(sides);
      return index
        .search(around.minX - reachM, around.minY - reachM, around.maxX + reachM, around.maxY + reachM)
        .sort((i, j) => i - j)
        .map((i) => sides[i] as Segment);
    },
    holds: ([x, y]) =>
      x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY && isInsideParts([x, y], parts),
  };
  outlines.set(parts, made);
  return made;
}

function boxOfSegment([a, b]: Segment): Box {
  return {
    minX: Math.min(a[0], b[0]),
    minY: Math.min(a[1], b[1]),
    maxX: Math.max(a[0], b[0]),
    maxY: Math.max(a[1], b[1]),
  };
}

function indexOf(sides: readonly Segment[]): Flatbush {
  const index = new Flatbush(sides.length);
  for (const side of sides) {
    const { minX, minY, maxX, maxY } = boxOfSegment(side);
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  return index;
}
