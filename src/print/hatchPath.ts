import type { Hatch } from '../draft/hatches';

const round = (n: number) => Math.round(n * 100) / 100;

/**
 * SVG path data moved by (dx, dy). Reads M, L, H, V, C, S, Q, T, A and Z with absolute coordinates.
 * @throws RangeError on relative commands: hatches are written in absolute ones
 */
export function movePath(d: string, dx: number, dy: number): string {
  return d.replace(/([a-zA-Z])([^a-zA-Z]*)/g, (_, command: string, rest: string) => {
    if (command === 'Z') return 'Z';
    if (!'MLHVCSQTA'.includes(command)) throw new RangeError(`Path command ${command} is not read here.`);
    const numbers = (rest.match(/-?\d*\.?\d+/g) ?? []).map(Number);
    const moved = numbers.map((n, i) => {
      if (command === 'H') return n + dx;
      if (command === 'V') return n + dy;
      if (command === 'A') return i % 7 === 5 ? n + dx : i % 7 === 6 ? n + dy : n;
      return i % 2 === 0 ? n + dx : n + dy;
    });
    return command + moved.map(round).join(' ');
  });
}

/** Bounds of a path of absolute M and L, mm: left, top, right, bottom. */
export function pathBounds(d: string): readonly [number, number, number, number] {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [, x, y] of d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
    left = Math.min(left, Number(x));
    right = Math.max(right, Number(x));
    top = Math.min(top, Number(y));
    bottom = Math.max(bottom, Number(y));
  }
  return [left, top, right, bottom];
}

/**
 * A hatch laid over a box as two paths, in tile units, so that it stays vector on paper (browsers turn
 * pattern fills into pictures when they write PDF). Tiles start at the paper's corner: neighbours agree.
 * @param bounds left, top, right, bottom in mm. @param tileMm mm of paper to a tile unit
 */
export function hatchPaths(
  hatch: Omit<Hatch, 'id'>,
  bounds: readonly [number, number, number, number],
  tileMm: number,
): { readonly stroked: string; readonly filled: string } {
  const [left, top, right, bottom] = bounds.map((n) => n / tileMm) as [number, number, number, number];
  const dots = hatch.dots.map(
    ([x, y, r]) => `M${x - r} ${y}A${r} ${r} 0 1 0 ${x + r} ${y}A${r} ${r} 0 1 0 ${x - r} ${y}Z`,
  );
  const blots = [...hatch.blots, ...dots];
  const stroked: string[] = [];
  const filled: string[] = [];
  for (let i = Math.floor(left / hatch.width); i * hatch.width < right; i++) {
    for (let j = Math.floor(top / hatch.height); j * hatch.height < bottom; j++) {
      const [dx, dy] = [i * hatch.width, j * hatch.height];
      for (const d of hatch.lines) stroked.push(movePath(d, dx, dy));
      for (const d of blots) filled.push(movePath(d, dx, dy));
    }
  }
  return { stroked: stroked.join(''), filled: filled.join('') };
}
