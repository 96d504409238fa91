/** @returns a number in 0..1 fixed by its three integers (an integer hash with odd multipliers). */
export function hash01(x: number, y: number, seed: number): number {
  let h = Math.imul(x, 0x27d4eb2d) ^ Math.imul(y, 0x165667b1) ^ Math.imul(seed + 1, 0x9e3779b1);
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967295;
}

/** Smooth noise in -1..1: random values on a square lattice of `cellM`, eased between. */
export function smoothNoise(xM: number, yM: number, cellM: number, seed: number): number {
  const gx = xM / cellM;
  const gy = yM / cellM;
  const ix = Math.floor(gx);
  const iy = Math.floor(gy);
  const ease = (t: number): number => t * t * (3 - 2 * t);
  const u = ease(gx - ix);
  const v = ease(gy - iy);
  const low = hash01(ix, iy, seed) * (1 - u) + hash01(ix + 1, iy, seed) * u;
  const high = hash01(ix, iy + 1, seed) * (1 - u) + hash01(ix + 1, iy + 1, seed) * u;
  return (low * (1 - v) + high * v) * 2 - 1;
}
