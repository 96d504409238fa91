/** A place in any square field: px, or ground metres. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/**
 * Holds a side to the quarter turns of the side before: the pointer is dropped onto the nearest of
 * the two lines through `last`, along and across the side from `before`.
 * Ground metres or any other square field.
 */
export function holdRightAngle(before: Spot, last: Spot, pointer: Spot): Spot {
  const length = Math.hypot(last.x - before.x, last.y - before.y);
  if (length === 0) return pointer;
  const ux = (last.x - before.x) / length;
  const uy = (last.y - before.y) / length;
  const dx = pointer.x - last.x;
  const dy = pointer.y - last.y;
  const along = dx * ux + dy * uy;
  const across = dx * -uy + dy * ux;
  return Math.abs(along) > Math.abs(across)
    ? { x: last.x + along * ux, y: last.y + along * uy }
    : { x: last.x - across * uy, y: last.y + across * ux };
}

/**
 * Slides `spot` along its side from `last` so that the way back to `first` is square to the side,
 * when that lies within reach. Makes four-cornered shapes close square.
 */
export function alignWithFirst(first: Spot, last: Spot, spot: Spot, reach: number): Spot {
  const length = Math.hypot(spot.x - last.x, spot.y - last.y);
  if (length === 0) return spot;
  const ux = (spot.x - last.x) / length;
  const uy = (spot.y - last.y) / length;
  const along = (first.x - last.x) * ux + (first.y - last.y) * uy;
  if (along <= 0 || Math.abs(along - length) > reach) return spot;
  return { x: last.x + along * ux, y: last.y + along * uy };
}

/** Where two sides cross, ends left out; null when they do not. */
export function crossingOfSides(a: Spot, b: Spot, c: Spot, d: Spot): Spot | null {
  const rx = b.x - a.x;
  const ry = b.y - a.y;
  const sx = d.x - c.x;
  const sy = d.y - c.y;
  const cross = rx * sy - ry * sx;
  if (cross === 0) return null;
  const t = ((c.x - a.x) * sy - (c.y - a.y) * sx) / cross;
  const u = ((c.x - a.x) * ry - (c.y - a.y) * rx) / cross;
  const edge = 1e-9;
  if (t <= edge || t >= 1 - edge || u < -edge || u > 1 + edge) return null;
  return { x: a.x + t * rx, y: a.y + t * ry };
}

/**
 * Where the new side from the last point to `next` crosses the open line drawn so far.
 * A `next` that falls on the first point closes the shape and does not cross there.
 */
export function crossingOfNewSide(points: readonly Spot[], next: Spot): Spot | null {
  const last = points[points.length - 1];
  if (!last) return null;
  for (let i = 0; i + 2 < points.length; i++) {
    const c = points[i];
    const d = points[i + 1];
    if (!c || !d) continue;
    const hit = crossingOfSides(last, next, c, d);
    if (hit) return hit;
  }
  return null;
}
