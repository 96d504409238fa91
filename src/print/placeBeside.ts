import type { Box, Mm } from './placeLabels';

/** A free box on a line, as near its middle as may be, else beside it, mm; the middle itself when none is free. */
export function besideLine(
  line: readonly Mm[],
  half: { halfW: number; halfH: number },
  taken: readonly Box[],
  frame: Box,
): Box {
  for (const off of [0, half.halfH + 1.6, half.halfH + 3, half.halfH + 5, 9, 13]) {
    for (const f of [0.5, 0.35, 0.65, 0.2, 0.8, 0, 1]) {
      const { at, nx, ny } = along(line, f);
      for (const side of [1, -1]) {
        const reach = off === 0 ? 0 : off + Math.abs(nx) * (half.halfW - half.halfH);
        const box = { x: at[0] + nx * reach * side, y: at[1] + ny * reach * side, ...half };
        const within =
          Math.abs(box.x - frame.x) + box.halfW <= frame.halfW &&
          Math.abs(box.y - frame.y) + box.halfH <= frame.halfH;
        const clear = !taken.some(
          (o) =>
            Math.abs(o.x - box.x) < o.halfW + box.halfW + 0.4 &&
            Math.abs(o.y - box.y) < o.halfH + box.halfH + 0.4,
        );
        if (within && clear) return box;
      }
    }
  }
  const { at } = along(line, 0.5);
  return { x: at[0], y: at[1], ...half };
}

function along(line: readonly Mm[], share: number): { at: Mm; nx: number; ny: number } {
  const lengths = line
    .slice(1)
    .map((p, i) => Math.hypot(p[0] - (line[i] as Mm)[0], p[1] - (line[i] as Mm)[1]));
  let left = share * lengths.reduce((a, b) => a + b, 0);
  for (let i = 0; i < lengths.length; i++) {
    const length = lengths[i] as number;
    if (left <= length || i === lengths.length - 1) {
      const a = line[i] as Mm;
      const b = line[i + 1] as Mm;
      const t = length > 0 ? Math.min(1, left / length) : 0;
      const ux = length > 0 ? (b[0] - a[0]) / length : 1;
      const uy = length > 0 ? (b[1] - a[1]) / length : 0;
      return { at: [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])], nx: uy, ny: -ux };
    }
    left -= length;
  }
  return { at: line[0] ?? [0, 0], nx: 0, ny: 1 };
}
