import { boxOf } from '../../measure/planeBox';
import type { PlaneRings, XY } from '../../measure/types';

/** The rows of points are turned against the plane by this, rad: sides of lawns seldom lie along them then. */
const TURN = 0.3217;
/** Each row is shifted against the one before by this share of the distance: the golden section, after which no rows repeat. */
const SHIFT = (Math.sqrt(5) - 1) / 2;
const [COS, SIN] = [Math.cos(TURN), Math.sin(TURN)];

/** A point in the frame of the rows. */
const turned = ([x, y]: XY): XY => [x * COS + y * SIN, y * COS - x * SIN];

/** Ground as points that are taken one after another. */
export interface GroundPoints {
  /** points not taken yet. */
  left(): number;
  /** Takes the points within `halfM` beside the stretch from a to b, its ends square. @param told m along it, for each */
  takeBeside(a: XY, b: XY, halfM: number, told: (alongM: number) => void): void;
  /** Takes the points within `halfM` of a corner. @returns how many */
  takeRound(at: XY, halfM: number): number;
}

/**
 * Ground as points of turned rows, each row shifted against the next, each point standing for the square round it: what swaths take on can so be
 * counted in the order in which they do. The error of a count grows with the outline, not with the ground.
 * @param parts ground, each square metre once
 * @param apartM distance of the points, more than 0, m
 */
export function createGroundPoints(parts: readonly PlaneRings[], apartM: number): GroundPoints {
  const rings = parts.flatMap((part) => part.map((ring) => ring.map(turned)));
  const { minX, minY, maxX, maxY } = boxOf([rings]);
  const columns = Math.max(0, Math.ceil((maxX - minX) / apartM));
  const rows = Math.max(0, Math.ceil((maxY - minY) / apartM));
  const free = new Uint8Array(columns * rows);
  let count = 0;
  const yOf = (row: number) => minY + (row + 0.5) * apartM;
  const shiftOf = (row: number) => (row * SHIFT) % 1;
  const columnFrom = (x: number, row: number) => Math.max(0, Math.ceil((x - minX) / apartM - shiftOf(row)));
  const columnTo = (x: number, row: number) =>
    Math.min(columns - 1, Math.ceil((x - minX) / apartM - shiftOf(row)) - 1);
  for (let row = 0; row < rows; row += 1) {
    const at = crossingsOf(rings, yOf(row));
    for (let i = 0; i + 1 < at.length; i += 2) {
      const last = columnTo(at[i + 1] as number, row);
      for (let column = columnFrom(at[i] as number, row); column <= last; column += 1) {
        free[row * columns + column] = 1;
        count += 1;
      }
    }
  }
  /** takes what is free in each row between two places. */
  const take = (
    fromY: number,
    toY: number,
    spanOf: (y: number) => readonly [number, number],
    told: (x: number, y: number) => void,
  ) => {
    const [first, last] = [
      Math.max(0, Math.ceil((fromY - minY) / apartM - 0.5)),
      Math.min(rows - 1, Math.floor((toY - minY) / apartM - 0.5)),
    ];
    for (let row = first; row <= last; row += 1) {
      const y = yOf(row);
      const [from, to] = spanOf(y);
      const end = columnTo(to, row);
      for (let column = columnFrom(from, row); column <= end; column += 1) {
        if (free[row * columns + column] !== 1) continue;
        free[row * columns + column] = 0;
        count -= 1;
        told(minX + (column + shiftOf(row)) * apartM, y);
      }
    }
  };
  return {
    left: () => count,
    takeBeside(a, b, halfM, told) {
      const [[ax, ay], [bx, by]] = [turned(a), turned(b)];
      const lengthM = Math.hypot(bx - ax, by - ay);
      if (!(lengthM > 0)) return;
      const [ux, uy] = [(bx - ax) / lengthM, (by - ay) / lengthM];
      const reach = Math.abs(ux) * halfM;
      const spanOf = (y: number): readonly [number, number] => {
        const dy = y - ay;
        const along = between(ux, -dy * uy, lengthM - dy * uy);
        const across = between(-uy, -halfM - dy * ux, halfM - dy * ux);
        return [ax + Math.max(along[0], across[0]), ax + Math.min(along[1], across[1])];
      };
      take(Math.min(ay, by) - reach, Math.max(ay, by) + reach, spanOf, (x, y) =>
        told((x - ax) * ux + (y - ay) * uy),
      );
    },
    takeRound(at, halfM) {
      const [cx, cy] = turned(at);
      let taken = 0;
      const spanOf = (y: number): readonly [number, number] => {
        const half = Math.sqrt(Math.max(0, halfM * halfM - (y - cy) ** 2));
        return [cx - half, cx + half];
      };
      take(cy - halfM, cy + halfM, spanOf, () => {
        taken += 1;
      });
      return taken;
    },
  };
}

/** Where factor · x lies between two values; all or nothing for a factor of 0. */
function between(factor: number, low: number, high: number): readonly [number, number] {
  if (Math.abs(factor) < 1e-12) return low <= 0 && high >= 0 ? [-Infinity, Infinity] : [Infinity, -Infinity];
  return factor > 0 ? [low / factor, high / factor] : [high / factor, low / factor];
}

/** Where a row crosses the rings, ascending. */
function crossingsOf(rings: readonly (readonly XY[])[], y: number): number[] {
  const found: number[] = [];
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i += 1) {
      const [[ax, ay], [bx, by]] = [ring[i - 1] as XY, ring[i] as XY];
      if (ay > y !== by > y) found.push(ax + ((y - ay) / (by - ay)) * (bx - ax));
    }
  }
  return found.sort((a, b) => a - b);
}
