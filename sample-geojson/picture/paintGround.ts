import { cornerLotZones } from '../yards/cornerLot';
import type { Metres } from '../yards/frame';
import { hash01, smoothNoise } from './noise';

export type Colour = readonly [number, number, number];

const GRASS: Colour = [98, 122, 66];
const MULCH: Colour = [92, 68, 50];
const CONCRETE: Colour = [188, 184, 174];
const ROOF: Colour = [128, 108, 98];

function isInside(outline: readonly Metres[], x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i, i += 1) {
    const a = outline[i] as Metres;
    const b = outline[j] as Metres;
    if (a[1] > y !== b[1] > y && x < ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) + a[0]) inside = !inside;
  }
  return inside;
}

function outlineOf(id: string): readonly Metres[] {
  const outline = cornerLotZones.find((zone) => zone.id === id)?.parts[0]?.[0];
  if (!outline) throw new Error(`no zone ${id}`);
  return outline;
}

const covers = (id: string): ((x: number, y: number) => boolean) => {
  const outline = outlineOf(id);
  const xs = outline.map((p) => p[0]);
  const ys = outline.map((p) => p[1]);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return (x, y) => x >= x0 && x <= x1 && y >= y0 && y <= y1 && isInside(outline, x, y);
};

const house = covers('house');
const driveway = covers('driveway');
const walk = covers('front-walk');
const patio = covers('patio');
const sidewalk = covers('sidewalk');
const pond = covers('pond');
const beds = ['front-bed', 'corner-bed', 'island-bed'].map(covers);
const lowCut = covers('green-square');

const shade = (c: Colour, k: number): Colour => [c[0] * k, c[1] * k, c[2] * k];
const near = (value: number, pitch: number, width: number): boolean =>
  Math.abs(value - Math.round(value / pitch) * pitch) < width / 2;

function grass(x: number, y: number, tint: Colour, stripeM: number, alongX: boolean): Colour {
  const stripe = stripeM > 0 ? ((Math.floor((alongX ? y : x) / stripeM) & 1) === 0 ? 1.035 : 0.965) : 1;
  const mottle = 1 + 0.07 * smoothNoise(x, y, 3.1, 4) + 0.05 * smoothNoise(x, y, 0.8, 5);
  const dry = 0.5 + 0.5 * smoothNoise(x, y, 6.3, 6);
  const base = shade(tint, stripe * mottle);
  return [base[0] + 14 * dry, base[1] + 4 * dry, base[2]];
}

function bedColour(x: number, y: number): Colour {
  const clump = smoothNoise(x, y, 0.55, 8);
  if (clump > 0.28) return shade([70, 100, 52], 0.85 + 0.4 * clump);
  if (hash01(Math.floor(x / 0.3), Math.floor(y / 0.3), 12) > 0.96) return [176, 120, 132];
  return shade(MULCH, 1 + 0.14 * clump);
}

/** A hip roof: four planes that meet in a ridge, the sun in the south-east. */
function roofColour(x: number, y: number): Colour {
  const [w, e, s, n] = [x - 6, 18 - x, y - 19, 28 - y];
  const least = Math.min(w, e, s, n);
  const light = least === s ? 1.16 : least === e ? 1.06 : least === w ? 0.84 : 0.74;
  const course = near(least, 0.42, 0.1) ? 0.95 : 1;
  if (x > 14.2 && x < 15 && y > 24.6 && y < 25.4) return [150, 92, 78];
  const others = [w, e, s, n].sort((a, b) => a - b);
  const ridge = (others[1] as number) - least < 0.1 || (s > 4.42 && n > 4.42) ? 1.1 : 1;
  return shade(ROOF, light * course * ridge * (1 + 0.04 * smoothNoise(x, y, 0.5, 20)));
}

function pavedColour(x: number, y: number): Colour | null {
  const stain = 1 + 0.05 * smoothNoise(x, y, 1.7, 30);
  if (driveway(x, y)) {
    const joint = near(x - 18, 3.3, 0.09) || near(y - 20, 2.75, 0.08) ? 0.86 : 1;
    const oil = Math.hypot(x - 24.5, y - 23.9) < 0.5 + 0.2 * smoothNoise(x, y, 0.4, 31) ? 0.8 : 1;
    return shade(CONCRETE, joint * stain * oil);
  }
  if (walk(x, y))
    return shade([172, 136, 116], (near(y, 0.35, 0.07) || near(x - 11, 0.35, 0.07) ? 0.88 : 1) * stain);
  if (patio(x, y)) {
    const slab = hash01(Math.floor(x / 0.8), Math.floor(y / 0.8 + 0.5 * (Math.floor(x / 0.8) & 1)), 33);
    return shade([164, 160, 156], (0.9 + 0.17 * slab) * (near(x, 0.8, 0.06) ? 0.86 : 1));
  }
  if (sidewalk(x, y)) return shade([178, 175, 167], (near(y < 1.5 ? x : y, 1.5, 0.08) ? 0.84 : 1) * stain);
  return null;
}

function streetColour(x: number, y: number): Colour {
  if (x > 25.6 && x < 26.4 && y > -0.72 && y < -0.3) return near(x, 0.14, 0.07) ? [40, 40, 42] : [92, 90, 88];
  if ((y > -0.3 && x < 36.3) || (x < 36.3 && y > -0.3)) return shade(CONCRETE, 1.04);
  const patch = 1 + 0.06 * smoothNoise(x, y, 4, 40) + 0.03 * smoothNoise(x, y, 0.5, 41);
  const crack = Math.abs(smoothNoise(x, y, 5, 42)) < 0.008 ? 0.93 : 1;
  const gutter = y > -0.8 || (x > 36.3 && x < 36.8 && y > 0) ? 1.12 : 1;
  return shade([112, 112, 114], patch * crack * gutter);
}

/** A neighbour's roof and yard west and north, enough that the lot's edge reads by its fence and grass. */
function beyondColour(x: number, y: number): Colour {
  if (x > 45.5 || y < -8) return grass(x, y, [112, 126, 78], 0, true);
  if (x > 36 || y < 0) return streetColour(x, y);
  if (x > -12 && x < -3 && y > 16 && y < 27) return shade([118, 120, 124], x > -7 ? 1.1 : 0.86);
  if (x > 10 && x < 24 && y > 46) return shade([140, 114, 92], y < 48.6 ? 1.1 : 0.8);
  return grass(x, y, [116, 124, 76], 0, true);
}

/** @returns what lies on the ground at a point in metres of the lot, unlit by trees, 0..255. */
export function groundColour(x: number, y: number): Colour {
  if (house(x, y)) return roofColour(x, y);
  if (pond(x, y)) {
    const ripple = smoothNoise(x, y, 0.7, 50);
    return [58 + 5 * ripple, 84 + 6 * ripple, 92 + 8 * ripple];
  }
  const paved = pavedColour(x, y);
  if (paved) return paved;
  if (beds.some((covered) => covered(x, y))) return bedColour(x, y);
  if (x < 0 || y < 0 || x > 36 || y > 42) return beyondColour(x, y);
  if (Math.abs(x - 0.04) < 0.06 || Math.abs(y - 41.96) < 0.06) return [124, 108, 88];
  if (lowCut(x, y)) return grass(x, y, [122, 150, 84], 0.55, false);
  if (y < 19) return grass(x, y, GRASS, 1.1, true);
  return x < 6 && y < 28 ? grass(x, y, [90, 112, 64], 0, true) : grass(x, y, shade(GRASS, 0.97), 1.1, false);
}
