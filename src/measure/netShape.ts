import type { Rings, Zone } from '../yard/types';
import { differenceOf, planeAreaOf } from './clip';
import { figuresOfParts } from './geodesic';
import { ringsToLonLat } from './plane';
import type { PlaneZone } from './planeZone';
import type { CutBy, PlaneRings } from './types';

/** Cuts smaller than this are noise of the clipping grid, m² of the plane. */
const NOISE_M2 = 1e-4;

/** A zone laid in the plane. */
export interface LaidZone {
  readonly zone: Zone;
  readonly laid: PlaneZone;
}

/** What is left of a zone, with geodesic figures on the ellipsoid (no elevation yet). */
export interface NetShape {
  readonly planeParts: readonly PlaneRings[];
  readonly parts: readonly Rings[];
  readonly grossM2: number;
  readonly netM2: number;
  readonly perimeterM: number;
  readonly cutBy: readonly CutBy[];
}

interface Kept {
  readonly cutters: readonly PlaneZone[];
  readonly shape: NetShape;
}
const shapes = new WeakMap<PlaneZone, Kept>();
/** Zones that meet a zone's box and take nothing of it, such as neighbours along a border. */
const harmless = new WeakMap<PlaneZone, WeakSet<PlaneZone>>();
const gross = new WeakMap<PlaneZone, ReturnType<typeof figuresOfParts>>();

/**
 * The zone less its cutters, one after the other; kept while the zone and those of the cutters that can
 * take something of it are the same objects.
 */
export function netShapeOf(subject: LaidZone, cutters: readonly LaidZone[]): NetShape {
  const { laid } = subject;
  const takers = cutters.filter((cutter) => !harmless.get(laid)?.has(cutter.laid));
  const kept = shapes.get(laid);
  if (
    kept?.cutters.length === takers.length &&
    kept.cutters.every((cutter, i) => cutter === takers[i]?.laid)
  ) {
    return kept.shape;
  }
  const shape = cut(laid, takers);
  const left = takers.map((taker) => taker.laid).filter((taker) => !harmless.get(laid)?.has(taker));
  shapes.set(laid, { cutters: left, shape });
  return shape;
}

function cut(laid: PlaneZone, takers: readonly LaidZone[]): NetShape {
  let figures = grossOf(laid);
  const grossM2 = figures.areaM2;
  let planeParts = laid.parts;
  let parts = laid.lonLatParts;
  const cutBy: CutBy[] = [];
  for (const taker of takers) {
    const left = differenceOf(planeParts, taker.laid.parts);
    if (planeAreaOf(planeParts) - planeAreaOf(left) < NOISE_M2) {
      if (cutBy.length === 0) markHarmless(laid, taker.laid);
      continue;
    }
    planeParts = left;
    parts = left.map((rings) => ringsToLonLat(rings, laid.plane));
    const before = figures.areaM2;
    figures = figuresOfParts(parts);
    cutBy.push({ zoneId: taker.zone.id, areaM2: before - figures.areaM2 });
  }
  const { areaM2: netM2, perimeterM } = figures;
  return { planeParts, parts, grossM2, netM2, perimeterM, cutBy };
}

function markHarmless(laid: PlaneZone, neighbour: PlaneZone): void {
  const known = harmless.get(laid);
  if (known) known.add(neighbour);
  else harmless.set(laid, new WeakSet([neighbour]));
}

function grossOf(laid: PlaneZone): ReturnType<typeof figuresOfParts> {
  const kept = gross.get(laid);
  if (kept) return kept;
  const made = figuresOfParts(laid.lonLatParts);
  gross.set(laid, made);
  return made;
}
