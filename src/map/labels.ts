import polylabel from 'polylabel';
import { type Box, boxesMeet } from '../draft/placeTags';
import { isInsideParts } from '../measure/isInsideParts';
import type { PlaneRings, XY } from '../measure/types';

export interface LabelSpot {
  /** plane, m. */
  readonly at: XY;
  /** radius of the largest circle inside, m. */
  readonly roomM: number;
  readonly part: PlaneRings;
}

/**
 * Where a label sits best: the pole of inaccessibility (polylabel, ISC licence) of the roomiest part.
 * @param parts plane metres; @returns null when nothing is left to label
 */
export function labelSpot(parts: readonly PlaneRings[]): LabelSpot | null {
  let best: LabelSpot | null = null;
  for (const part of parts) {
    if ((part[0]?.length ?? 0) < 4) continue;
    const pole = polylabel(part, 0.05);
    if (Number.isFinite(pole.distance) && (!best || pole.distance > best.roomM)) {
      best = { at: [pole[0], pole[1]], roomM: pole.distance, part };
    }
  }
  return best;
}

function sideMeetsBox(a: XY, b: XY, left: number, bottom: number, right: number, top: number): boolean {
  let from = 0;
  let to = 1;
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  for (const [p, q] of [
    [-dx, a[0] - left],
    [dx, right - a[0]],
    [-dy, a[1] - bottom],
    [dy, top - a[1]],
  ] as const) {
    if (p === 0) {
      if (q < 0) return false;
      continue;
    }
    const t = q / p;
    if (p < 0) from = Math.max(from, t);
    else to = Math.min(to, t);
    if (from > to) return false;
  }
  return true;
}

/**
 * Whether a label box lies wholly inside the shape.
 * @param widthM, heightM the box as it is at the present scale, metres on the ground
 */
export function labelFits(spot: LabelSpot, widthM: number, heightM: number): boolean {
  const halfW = widthM / 2;
  const halfH = heightM / 2;
  if (Math.hypot(halfW, halfH) <= spot.roomM) return true;
  if (!isInsideParts(spot.at, [spot.part])) return false;
  const [x, y] = spot.at;
  for (const ring of spot.part) {
    for (let i = 1; i < ring.length; i++) {
      const a = ring[i - 1];
      const b = ring[i];
      if (a && b && sideMeetsBox(a, b, x - halfW, y - halfH, x + halfW, y + halfH)) return false;
    }
  }
  return true;
}

const TRIES = 12;

/** Places of a net over the part, the nearest to the best spot first. */
function placesOf(spot: LabelSpot): readonly XY[] {
  const outer = spot.part[0] ?? [];
  const xs = outer.map(([x]) => x);
  const ys = outer.map(([, y]) => y);
  const [west, south, east, north] = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  const places: XY[] = [];
  for (let i = 1; i < TRIES; i++) {
    for (let j = 1; j < TRIES; j++)
      places.push([west + ((east - west) * i) / TRIES, south + ((north - south) * j) / TRIES]);
  }
  const far = ([x, y]: XY) => Math.hypot(x - spot.at[0], y - spot.at[1]);
  return places.sort((a, b) => far(a) - far(b));
}

/**
 * Where a label box lies wholly inside the shape and clear of other things: the best spot, else the
 * nearest to it of a net of places. Null when there is none.
 * @param widthM, heightM the box at the present scale, m; @param avoid boxes of the plane, m
 */
export function placeLabel(
  spot: LabelSpot,
  widthM: number,
  heightM: number,
  avoid: readonly Box[],
): XY | null {
  if (!fitsExtent(spot, widthM, heightM)) return null;
  const isFree = ([x, y]: XY) =>
    !avoid.some((box) => boxesMeet(box, { x, y, width: widthM, height: heightM }));
  if (isFree(spot.at) && labelFits(spot, widthM, heightM)) return spot.at;
  const fits = (at: XY) => isFree(at) && labelFits({ ...spot, at, roomM: 0 }, widthM, heightM);
  return placesOf(spot).find(fits) ?? null;
}

/** A box wider or higher than the whole part fits nowhere in it: told at once, as far out most labels are. */
function fitsExtent(spot: LabelSpot, widthM: number, heightM: number): boolean {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of spot.part[0] ?? []) {
    west = Math.min(west, x);
    south = Math.min(south, y);
    east = Math.max(east, x);
    north = Math.max(north, y);
  }
  return widthM <= east - west && heightM <= north - south;
}

/** A name over two lines, parted at the space nearest its middle; null when it has none. */
export function wrapName(name: string): readonly [string, string] | null {
  const spaces = [...name.matchAll(/ /g)].map((found) => found.index);
  const [at] = spaces.sort((a, b) => Math.abs(a - name.length / 2) - Math.abs(b - name.length / 2));
  return at === undefined ? null : [name.slice(0, at), name.slice(at + 1)];
}
