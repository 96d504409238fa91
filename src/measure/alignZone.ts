import { replaceZone } from '../yard/edits';
import type { Position, Yard, Zone } from '../yard/types';
import { mapZone } from './moveZone';
import { createPlane } from './plane';
import { matchCorners, refuse, type ShapeResult, withZone } from './shapeResult';
import type { LocalPlane } from './types';

/** Two ends of a side, degrees. */
export type Edge = readonly [Position, Position];

/**
 * The zone turned, by no more than a quarter turn, round the middle of one of its sides until that side
 * is parallel to an edge, and then moved square to it onto the edge's line when that is wished.
 * @param target null: true north @returns null when the side or the edge has no length
 */
export function alignedZone(zone: Zone, side: Edge, target: Edge | null, inLine: boolean): Zone | null {
  const here = createPlane([(side[0][0] + side[1][0]) / 2, (side[0][1] + side[1][1]) / 2]);
  const [a, b] = [here.toPlane(side[0]), here.toPlane(side[1])];
  const [c, d] = target
    ? [here.toPlane(target[0]), here.toPlane(target[1])]
    : [[0, 0] as const, [0, 1] as const];
  const [length, reach] = [Math.hypot(b[0] - a[0], b[1] - a[1]), Math.hypot(d[0] - c[0], d[1] - c[1])];
  if (length === 0 || reach === 0) return null;
  const [ux, uy] = [(d[0] - c[0]) / reach, (d[1] - c[1]) / reach];
  const [vx, vy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  // The turn from the side to the edge's line, whichever way that runs.
  const sign = vx * ux + vy * uy < 0 ? -1 : 1;
  const [cos, sin] = [sign * (vx * ux + vy * uy), sign * (vx * uy - vy * ux)];
  const [mx, my] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const off = target && inLine ? (c[0] - mx) * -uy + (c[1] - my) * ux : 0;
  return mapZone(zone, (p) => {
    const [x, y] = here.toPlane(p);
    const [dx, dy] = [x - mx, y - my];
    return here.toLonLat([mx + dx * cos - dy * sin - uy * off, my + dx * sin + dy * cos + ux * off]);
  });
}

/** Aligns a zone as alignedZone() does; corners that come to lie on neighbours' edges, and theirs on its, are matched. */
export function alignZone(
  yard: Yard,
  zoneId: string,
  side: Edge,
  target: Edge | null,
  inLine: boolean,
  plane: LocalPlane,
): ShapeResult {
  return withZone(yard, zoneId, plane, (zone) => {
    const turned = alignedZone(zone, side, target, inLine);
    if (!turned) return refuse('align-no-edge', 'Pick a side that has a length.', zoneId);
    const made = replaceZone(yard, turned);
    if (!inLine) return { ok: true, yard: made };
    const others = made.zones.flatMap((one) => (one.id === zoneId ? [] : [one.id]));
    const matched = matchCorners(made, turned.parts.flat(2), plane, [zoneId]);
    return { ok: true, yard: matchCorners(matched, target ?? [], plane, others) };
  });
}
