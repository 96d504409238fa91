import { bufferOf, coverWithin, differenceOf, intersectionOf } from '../measure/clip';
import { areaOfPartsM2 } from '../measure/geodesic';
import { ringsToLonLat } from '../measure/plane';
import { type Box, boxesNear, boxOf } from '../measure/planeBox';
import type { LocalPlane, PlaneRings, XY } from '../measure/types';
import type { Outline } from './outline';
import { distanceToSegment, pointAt, type Segment } from './segments';

/** A line this near to treated ground adjoins it, m. */
const ADJOINS_M = 1e-3;

/** What one stretch's splash band is cut from. */
export interface BandGround {
  readonly line: readonly XY[];
  /** treated ground that reaches it, and how far, m. */
  readonly reaches: readonly { readonly outline: Outline; readonly reachM: number }[];
  /** what turns lengths on the ellipsoid into those of the measured zone. */
  readonly scale: number;
}

/** Ground behind a stretch that product falls on. */
export interface SplashBand {
  /** geodesic m², at the yard's elevation. */
  readonly areaM2: number;
  /** in the plane. */
  readonly planeParts: readonly PlaneRings[];
}

/**
 * The hardscape that product reaches over each stretch: ground of any hardscape that lies within reach of the
 * stretch and of treated ground that reaches it, in a straight line. Each square metre counts once: for the
 * first stretch. What is within reach of treated ground alone, as behind a house, is in no band.
 * @param hardscapes net shapes in the plane; may overlap
 * @returns one band for each stretch, in their order
 */
export function splashBands(
  stretches: readonly BandGround[],
  hardscapes: readonly Outline[],
  plane: LocalPlane,
): SplashBand[] {
  const taken: { readonly box: Box; readonly parts: readonly PlaneRings[] }[] = [];
  return stretches.map(({ line, reaches, scale }) => {
    const reachM = Math.max(0, ...reaches.map((reach) => reach.reachM));
    const around = bufferOf({ line }, reachM);
    const box = boxOf(around);
    const hard = hardscapes.filter((one) => boxesNear(one.box, box, 0)).flatMap(({ parts }) => parts);
    let band = intersectionOf(around, hard);
    const [only] = reaches;
    if (!only || reaches.length > 1 || !adjoins(line, only.outline)) {
      const within = reaches.flatMap(({ outline, reachM: ownM }) => {
        const local = intersectionOf([[rectangle(box, ownM)]], outline.parts);
        return local.length === 0 ? [] : coverWithin(local, ownM);
      });
      band = intersectionOf(band, within);
    }
    const before = taken.filter((one) => boxesNear(one.box, box, 0)).flatMap(({ parts }) => parts);
    const planeParts = differenceOf(band, before);
    taken.push({ box, parts: planeParts });
    const ground = planeParts.map((rings) => ringsToLonLat(rings, plane));
    return { areaM2: scale * scale * areaOfPartsM2(ground), planeParts };
  });
}

/** Whether a line runs along treated ground at its corners and between them. */
function adjoins(line: readonly XY[], outline: Outline): boolean {
  return line.slice(1).every((end, i) => {
    const leg: Segment = [line[i] as XY, end];
    const sides = outline.sidesNear(leg, ADJOINS_M);
    return [0, 0.5, 1].every((share) =>
      sides.some((side) => distanceToSegment(pointAt(leg, share), side) <= ADJOINS_M),
    );
  });
}

function rectangle({ minX, minY, maxX, maxY }: Box, byM: number): XY[] {
  const [x0, y0, x1, y1] = [minX - byM, minY - byM, maxX + byM, maxY + byM];
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
    [x0, y0],
  ];
}
