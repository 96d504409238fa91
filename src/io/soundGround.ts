import { planeAreaOf } from '../measure/clip';
import { createCornerBook } from '../measure/corners';
import { checkRing } from '../measure/crossings';
import { createPlane } from '../measure/plane';
import type { PlaneRings, XY } from '../measure/types';
import type { Position, Ring } from '../yard/types';
import { type FillChoice, MOST_CORNERS_OF_ZONE } from './importTypes';
import { mendRings } from './mendRing';
import { thinRing } from './thinRing';

/** What was changed on the way to a sound zone. */
export type GroundChange =
  | { readonly type: 'closed' }
  | {
      readonly type: 'mended';
      readonly at: Position;
      readonly parts: number;
      /** signed sum of the outline as drawn, m²: lobes of opposite turn take from each other. */
      readonly beforeM2: number;
      readonly afterM2: number;
    }
  | {
      readonly type: 'thinned';
      readonly before: number;
      readonly after: number;
      readonly toleranceM: number;
      readonly beforeM2: number;
      readonly afterM2: number;
    };

/** Polygons made sound: closed rings that do not cross themselves. */
export interface SoundGround {
  readonly parts: readonly (readonly Ring[])[];
  readonly areaM2: number;
  readonly corners: number;
  readonly changes: readonly GroundChange[];
  readonly fault: { readonly code: string; readonly message: string } | null;
}

/** The finest tolerance of thinning, m; doubled until the corners are few enough. */
const FIRST_TOLERANCE_M = 0.02;
const LAST_TOLERANCE_M = 2;
/** An outline of less ground is a line or a point, m². */
const LEAST_M2 = 1e-3;

/**
 * Closes open rings, thins rings of very many corners and mends those that cross themselves. Rings that
 * need none of it keep their corners exactly.
 * @param polygons degrees; outer rings first, then holes; not changed
 * @param near a place near them, for the plane
 */
export function soundGround(
  polygons: readonly (readonly Ring[])[],
  fill: FillChoice,
  near: Position,
): SoundGround {
  const changes: GroundChange[] = [];
  const fail = (code: string, message: string): SoundGround => ({
    parts: [],
    areaM2: 0,
    corners: 0,
    changes,
    fault: { code, message },
  });
  if (Math.abs(near[1]) > 89.9) return fail('out-of-range', 'it lies at a pole.');
  const plane = createPlane(near);
  const parts: (readonly Ring[])[] = [];
  let areaM2 = 0;
  for (const polygon of polygons) {
    const rings = polygon.map((ring) => closed(ring, changes));
    const outer = rings[0];
    if (!outer) continue;
    const corners = cornersOf(outer);
    if (corners < 3) {
      return fail('too-few-corners', `a shape needs at least 3 different corners; this one has ${corners}.`);
    }
    const kept = [outer, ...rings.slice(1).filter((ring) => cornersOf(ring) >= 3)];
    const few = thinned(kept, plane, changes);
    const fault = few.flatMap((ring) => checkRing(ring)).find((issue) => issue.code === 'ring-self-crossing');
    if (fault === undefined) {
      parts.push(few);
      areaM2 += areaOf(few.map((ring) => ring.map(plane.toPlane)));
      continue;
    }
    const flat = few.map((ring) => ring.map(plane.toPlane));
    const mended = mendRings(flat, fill);
    const afterM2 = mended.reduce((sum, part) => sum + areaOf(part), 0);
    changes.push({
      type: 'mended',
      at: fault.place.position ?? near,
      parts: mended.length,
      beforeM2: areaOf(flat),
      afterM2,
    });
    areaM2 += afterM2;
    parts.push(...createCornerBook([], plane, few).toRings(mended));
  }
  if (areaM2 < LEAST_M2) return fail('no-ground', 'its outline encloses no ground.');
  const corners = parts.flat().reduce((sum, ring) => sum + ring.length - 1, 0);
  return { parts, areaM2, corners, changes, fault: null };
}

function closed(ring: Ring, changes: GroundChange[]): Ring {
  const open = ring.filter((p, i) => i === 0 || p[0] !== ring[i - 1]?.[0] || p[1] !== ring[i - 1]?.[1]);
  const [first, last] = [open[0], open.at(-1)];
  if (!first || !last || (first[0] === last[0] && first[1] === last[1])) return open;
  if (!changes.some((change) => change.type === 'closed')) changes.push({ type: 'closed' });
  return [...open, first];
}

function cornersOf(ring: Ring): number {
  return new Set(ring.map((p) => `${p[0]},${p[1]}`)).size;
}

function thinned(
  rings: readonly Ring[],
  plane: { toPlane(p: Position): XY },
  changes: GroundChange[],
): readonly Ring[] {
  const before = rings.reduce((sum, ring) => sum + ring.length - 1, 0);
  if (before <= MOST_CORNERS_OF_ZONE) return rings;
  const flat = rings.map((ring) => ring.map((p) => plane.toPlane(p)));
  for (let toleranceM = FIRST_TOLERANCE_M; ; toleranceM *= 2) {
    const kept = flat.map((ring) => thinRing(ring, toleranceM));
    const after = kept.reduce((sum, ring) => sum + ring.length - 1, 0);
    if (after > MOST_CORNERS_OF_ZONE && toleranceM < LAST_TOLERANCE_M) continue;
    changes.push({
      type: 'thinned',
      before,
      after,
      toleranceM,
      beforeM2: areaOf(flat),
      afterM2: areaOf(kept),
    });
    return rings.map((ring, i) => {
      const places = new Map(flat[i]?.map((p, k) => [p, ring[k] as Position]));
      return (kept[i] ?? []).map((p) => places.get(p) as Position);
    });
  }
}

/** Of one polygon; holes that reach outside take no more than there is. */
function areaOf(rings: PlaneRings): number {
  return Math.max(0, planeAreaOf([rings]));
}
