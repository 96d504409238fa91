import { PNG } from 'pngjs';
import { hash01, smoothNoise } from './noise';
import { type Colour, groundColour } from './paintGround';

/** South-west corner of the picture in metres of the lot, its side and its grain. */
export const PICTURE = { westM: -11, southM: -8, sideM: 58, mPerPx: 0.08 } as const;

/** Crowns: centre and radius, m. They stand clear of most edges, as a person would choose a picture. */
const TREES: readonly (readonly [number, number, number])[] = [
  [-5.5, 36, 3.2],
  [-6.5, 7, 2.6],
  [21.5, 39.3, 1.9],
  [3, 46.5, 2.7],
  [31.2, 47, 2.3],
  [27.5, 10.5, 2.2],
  [48, 30, 3],
];
/** Where a shadow falls for each metre of height: north-west, the sun in the south-east. */
const SHADOW = [-0.42, 0.38] as const;

function crownReach(x: number, y: number, tree: readonly [number, number, number]): number {
  const away = Math.hypot(x - tree[0], y - tree[1]) / tree[2] - 1;
  if (away > 0.4) return away;
  const lobes = 0.28 * smoothNoise(x, y, 0.9, 60) + 0.12 * smoothNoise(x, y, 0.35, 61);
  return away - lobes;
}

/** How much sun reaches a point: house (4 m eaves) and crowns cast soft shade, 0.5..1. */
function sunAt(x: number, y: number): number {
  const soft = (d: number): number => Math.min(1, Math.max(0, 0.5 - d / 0.25));
  let dark = 0;
  for (const rise of [0.5, 1, 1.5, 2, 2.5, 3]) {
    const hx = x - SHADOW[0] * rise;
    const hy = y - SHADOW[1] * rise;
    dark = Math.max(dark, soft(Math.max(6 - hx, hx - 18, 19 - hy, hy - 28)));
  }
  for (const tree of TREES) {
    const d = crownReach(x - SHADOW[0] * 3.4, y - SHADOW[1] * 3.4, tree) * tree[2];
    dark = Math.max(dark, soft(d) * 0.9);
  }
  return 1 - 0.42 * dark;
}

function colourAt(x: number, y: number): Colour {
  for (const tree of TREES) {
    if (crownReach(x, y, tree) > 0) continue;
    const side = ((x - tree[0]) * 0.7 - (y - tree[1]) * 0.7) / tree[2];
    const leaf = 0.82 + 0.22 * side + 0.3 * smoothNoise(x, y, 0.5, 62) + 0.14 * smoothNoise(x, y, 0.2, 63);
    return [66 * leaf, 88 * leaf, 44 * leaf];
  }
  const ground = groundColour(x, y);
  const isRoof = x > 6 && x < 18 && y > 19 && y < 28;
  const sun = isRoof ? 1 : sunAt(x, y);
  return [ground[0] * sun, ground[1] * sun, ground[2] * (sun + (1 - sun) * 0.25)];
}

/**
 * Paints the lot as from the air, north up, each pixel the mean of 3 x 3 looks at the ground (so edges
 * are soft), blurred a little as a lens does, with seeded grain. Same bytes at each run.
 */
export function paintPicture(): Buffer {
  const n = Math.round(PICTURE.sideM / PICTURE.mPerPx);
  const looks = 3;
  const sharp = new Float32Array(n * n * 3);
  for (let row = 0; row < n; row += 1) {
    for (let col = 0; col < n; col += 1) {
      const sum = [0, 0, 0];
      for (let k = 0; k < looks * looks; k += 1) {
        const x = PICTURE.westM + (col + ((k % looks) + 0.5) / looks) * PICTURE.mPerPx;
        const y = PICTURE.southM + (n - row - (Math.floor(k / looks) + 0.5) / looks) * PICTURE.mPerPx;
        const c = colourAt(x, y);
        for (let i = 0; i < 3; i += 1) sum[i] = (sum[i] as number) + (c[i] as number);
      }
      for (let i = 0; i < 3; i += 1) sharp[(row * n + col) * 3 + i] = (sum[i] as number) / (looks * looks);
    }
  }
  const png = new PNG({ width: n, height: n });
  const step = 4;
  for (let row = 0; row < n; row += 1) {
    for (let col = 0; col < n; col += 1) {
      const grain = 5 * (hash01(col, row, 70) + hash01(col, row, 71) - 1);
      for (let i = 0; i < 3; i += 1) {
        let sum = 0;
        for (const [dr, dc, w] of LENS) {
          const r = Math.min(n - 1, Math.max(0, row + dr));
          const c = Math.min(n - 1, Math.max(0, col + dc));
          sum += w * (sharp[(r * n + c) * 3 + i] as number);
        }
        png.data[(row * n + col) * 4 + i] = Math.min(
          255,
          Math.max(0, Math.round((sum + grain) / step) * step),
        );
      }
      png.data[(row * n + col) * 4 + 3] = 255;
    }
  }
  return PNG.sync.write(png, { colorType: 2, deflateLevel: 9, filterType: -1 });
}

const LENS: readonly (readonly [number, number, number])[] = [-1, 0, 1].flatMap((r) =>
  [-1, 0, 1].map((c) => [r, c, (r === 0 ? 0.6 : 0.2) * (c === 0 ? 0.6 : 0.2)] as const),
);
