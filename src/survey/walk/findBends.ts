import type { XY } from '../../measure/types';
import { keptCorners } from '../keptCorners';

interface Numbered {
  readonly x: number;
  readonly y: number;
  readonly index: number;
}

/**
 * The points of a line at which it bends by more than a tolerance (Ramer-Douglas-Peucker, by
 * simplify-js): the line lies within the tolerance of the chords between them.
 * @param isClosed the last point joins the first; then the point farthest from the middle and the one
 * farthest from that begin the search, so that a start in the middle of a side is no bend
 * @param toleranceM metres @returns indices into `line`, ascending
 */
export function findBends(line: readonly XY[], isClosed: boolean, toleranceM: number): number[] {
  const points = line.map(([x, y], index): Numbered => ({ x, y, index }));
  if (!isClosed) return numbersOf(points, toleranceM);
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  };
  const first = farthestFrom(points, middle);
  const turned = [...points.slice(first), ...points.slice(0, first + 1)];
  const second = farthestFrom(turned, turned[0] ?? middle);
  const out = numbersOf(turned.slice(0, second + 1), toleranceM);
  const back = numbersOf(turned.slice(second), toleranceM);
  return [...new Set([...out, ...back])].sort((a, b) => a - b);
}

function numbersOf(points: readonly Numbered[], toleranceM: number): number[] {
  const line = points.map(({ x, y }): XY => [x, y]);
  return keptCorners(line, toleranceM).map((i) => points[i]?.index ?? 0);
}

function farthestFrom(points: readonly Numbered[], { x, y }: Pick<Numbered, 'x' | 'y'>): number {
  let best = 0;
  let most = -1;
  points.forEach((point, i) => {
    const square = (point.x - x) ** 2 + (point.y - y) ** 2;
    if (square > most) [best, most] = [i, square];
  });
  return best;
}
