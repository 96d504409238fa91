import type { Position, Zone } from '../../yard/types';

/** A place on the screen, px; any origin. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Snap {
  readonly to: 'corner' | 'edge';
  readonly position: Position;
  readonly distancePx: number;
}

/** At the 11 decimals that are stored. */
function lerp(a: Position, b: Position, t: number): Position {
  const between = (from: number, to: number) => Math.round((from + (to - from) * t) * 1e11) / 1e11;
  return [between(a[0], b[0]), between(a[1], b[1])];
}

/** Share of the way from a to b, 0 to 1, where the foot of p on the side lies. */
function footOnSide(p: Spot, a: Spot, b: Spot): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const squared = dx * dx + dy * dy;
  if (squared === 0) return 0;
  return Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / squared));
}

/**
 * Nearest corner of the lines within reach, or else the nearest point of an edge.
 * A corner keeps its own coordinates to the last digit; an edge point lies on the straight lon/lat side.
 * @param pointer px; @param lines rings or open lines, [lon, lat]
 * @param project turns a position into px of the pointer's kind
 * @param reachPx how near is near, px
 */
export function snapToLines(
  pointer: Spot,
  lines: Iterable<readonly Position[]>,
  project: (position: Position) => Spot,
  reachPx: number,
): Snap | null {
  let corner: Snap | null = null;
  let edge: Snap | null = null;
  for (const line of lines) {
    let before: { position: Position; spot: Spot } | null = null;
    for (const position of line) {
      const spot = project(position);
      const distancePx = Math.hypot(spot.x - pointer.x, spot.y - pointer.y);
      if (distancePx <= reachPx && (!corner || distancePx < corner.distancePx)) {
        corner = { to: 'corner', position, distancePx };
      }
      if (before && !corner) {
        const t = footOnSide(pointer, before.spot, spot);
        const x = before.spot.x + (spot.x - before.spot.x) * t;
        const y = before.spot.y + (spot.y - before.spot.y) * t;
        const away = Math.hypot(x - pointer.x, y - pointer.y);
        if (away <= reachPx && (!edge || away < edge.distancePx)) {
          edge = { to: 'edge', position: lerp(before.position, position, t), distancePx: away };
        }
      }
      before = { position, spot };
    }
  }
  return corner ?? edge;
}

/** Every ring of every zone but one. */
export function* ringsToSnapTo(
  zones: readonly Zone[],
  exceptId: string | null,
): Generator<readonly Position[]> {
  for (const zone of zones) {
    if (zone.id === exceptId) continue;
    for (const part of zone.parts) yield* part;
  }
}

/**
 * Lines cut open at one corner, which goes with its two sides: what else a corner can snap to when the
 * neighbours' corners on the same spot move along with it.
 */
export function linesWithoutCorner(
  lines: Iterable<readonly Position[]>,
  corner: Position,
): readonly (readonly Position[])[] {
  const isCorner = (p: Position) => p[0] === corner[0] && p[1] === corner[1];
  return [...lines].flatMap((line) => {
    if (!line.some(isCorner)) return [line];
    const runs: Position[][] = [[]];
    for (const position of line) {
      if (isCorner(position)) runs.push([]);
      else runs.at(-1)?.push(position);
    }
    return runs.filter((run) => run.length > 0);
  });
}
