import { PER_M } from '../../measure/clipPaths';
import { EndType, inflatePaths, JoinType, type Paths64 } from '../../measure/clipper';
import type { XY } from '../../measure/types';
import type { Leg } from '../passTypes';
import { distanceOf } from './frame';

/** Arcs of a swath that turns stray by at most this, grid units. */
const ARC = 0.002 * PER_M;

/** Ground within half a width of a leg, its ends square; a closed lap turns at its start too. */
export function swathOf({ line }: Pick<Leg, 'line'>, widthM: number): Paths64 {
  const [first, last] = [line[0] as XY, line.at(-1) as XY];
  if (line.length === 2) return [boxAlong(first, last, widthM / 2)];
  const isClosed = line.length > 3 && distanceOf(first, last) < 1e-6;
  const path = (isClosed ? line.slice(0, -1) : line).map(([x, y]) => ({
    x: Math.round(x * PER_M),
    y: Math.round(y * PER_M),
  }));
  return inflatePaths(
    [path],
    (widthM / 2) * PER_M,
    JoinType.Round,
    isClosed ? EndType.Joined : EndType.Butt,
    2,
    ARC,
  );
}

/** The rectangle beside a straight line, on the grid, turned left. */
function boxAlong(a: XY, b: XY, half: number): Paths64[number] {
  const lengthM = distanceOf(a, b);
  const [dx, dy] =
    lengthM > 0 ? [((b[0] - a[0]) / lengthM) * half, ((b[1] - a[1]) / lengthM) * half] : [0, 0];
  const corners: XY[] = [
    [a[0] + dy, a[1] - dx],
    [b[0] + dy, b[1] - dx],
    [b[0] - dy, b[1] + dx],
    [a[0] - dy, a[1] + dx],
  ];
  return corners.map(([x, y]) => ({ x: Math.round(x * PER_M), y: Math.round(y * PER_M) }));
}
