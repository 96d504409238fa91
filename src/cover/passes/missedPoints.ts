import { PER_M } from '../../measure/clipPaths';
import type { Paths64 } from '../../measure/clipper';
import { signedArea } from '../../measure/signedArea';
import type { XY } from '../../measure/types';
import { sectionOf } from './section';

/** A bit of ground taken as a point. */
export interface GroundPoint {
  readonly at: XY;
  readonly areaM2: number;
}

/**
 * Ground as points on a grid, each with the area of its bit: their sum is the area of the ground.
 * @param rings ground on their left
 * @param stepM side of the grid, m; more than 0
 */
export function pointsOf(rings: readonly (readonly XY[])[], stepM: number): GroundPoint[] {
  const points: GroundPoint[] = [];
  const ys = rings.flatMap((ring) => ring.map((p) => p[1]));
  const [low, high] = [
    ys.reduce((a, b) => Math.min(a, b), Infinity),
    ys.reduce((a, b) => Math.max(a, b), -Infinity),
  ];
  for (let y = low; y < high; y += stepM) {
    for (const { xa, xb, ha, hb } of sectionOf(rings, y, Math.min(high, y + stepM))) {
      const count = Math.max(1, Math.ceil((xb - xa) / stepM));
      const width = (x: number) => ha + ((hb - ha) * (x - xa)) / (xb - xa);
      for (let i = 0; i < count; i++) {
        const [a, b] = [xa + ((xb - xa) * i) / count, xa + ((xb - xa) * (i + 1)) / count];
        points.push({ at: [(a + b) / 2, y + stepM / 2], areaM2: ((b - a) * (width(a) + width(b))) / 2 });
      }
    }
  }
  return points;
}

/** Connected pieces of paths that an operation made (ground on their left), in m, the largest first. */
export function piecesOf(paths: Paths64): XY[][][] {
  const rings = paths
    .filter((path) => path.length > 2)
    .map((path) =>
      [...path, path[0] as Paths64[number][number]].map(({ x, y }): XY => [x / PER_M, y / PER_M]),
    );
  return rings.map((ring) => [ring]).sort((a, b) => signedArea(b[0] as XY[]) - signedArea(a[0] as XY[]));
}
