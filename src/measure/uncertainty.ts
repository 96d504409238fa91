import type { Zone } from '../yard/types';
import {
  type Corner,
  indexSides,
  keysOf,
  type Scale,
  type Side,
  scaleOf,
  shareOn,
  sidesOf,
} from './cornerSides';
import { edgesNear, stretchOn } from './outline';
import { boxOf } from './planeBox';
import { signedArea } from './signedArea';
import type { LocalPlane, MeasuredYard, MeasuredZone, PlaneRings, XY } from './types';

/** Shares of an edge shorter than this are rounding of the clipping grid. */
const LEAST_SHARE = 1e-9;

export type Gradient = MeasuredZone['gradient'];
type Entry = { gx: number; gy: number; sigmaM: number };

/**
 * How the area of some ground changes when a corner moves, for every corner of the zones that bound it:
 * a zone's net shape, or what is left of it to treat. Edges that lie on no side of the sources (such as
 * the inner edge of a no-apply strip) add nothing. A side p→q with outward normal n that lies on the net outline over a length l, from
 * share t0 to t1 of the side, adds n·l·(1 - tm) to p and n·l·tm to q, tm = (t0 + t1) / 2. For a zone
 * that nothing cuts this is half the vector between the two neighbours, turned by a right angle, so
 * that the variance is s²/4 · Σ d². A corner that a curve made hands its pull on to the curve's points.
 *
 * A zone with an error of scale e pulls, on the key of its source, by ∮ n·(r - r0), r0 its middle: 2 A e
 * for ground that it bounds alone. Edges on no side go with the scale of `own`.
 *
 * A border shared with a neighbour is one line on the ground, though its corners may not match: each
 * stretch of it belongs to the corners of the first source that has it, for both neighbours alike, so
 * that it cancels in their sum.
 * Source: Chrisman & Yandell 1988 (formula from memory; the derivation is the divergence theorem).
 * @param net the ground in the plane, outer rings first; covers each square metre once
 * @param sources the zone, those that cut it, and neighbours before it, all in one order for the whole
 * yard: those of a measured zone are `sourcesOf` it
 * @param own the zone whose ground it is: its own corners carry its own error, also where a neighbour has
 * the same corner with another; the smaller one counts in sums of both
 * @returns m² per m by corner; empty for no ground
 */
export function gradientOfParts(
  net: readonly PlaneRings[],
  sources: readonly Zone[],
  plane: LocalPlane,
  own?: Zone,
): Gradient {
  const scale = own ? scaleOf(own, plane) : null;
  const gradient = gradientOf(net, sources, plane, scale);
  if (own) {
    const ownKeys = keysOf(own, plane);
    for (const [key, entry] of gradient) {
      if (ownKeys.has(key)) entry.sigmaM = key === scale?.key ? scale.sigma : own.survey.vertexSigmaM;
    }
  }
  return gradient;
}

/**
 * One standard deviation of ground of one zone in the plane, m², as its own figure: every stretch of its
 * own outline belongs to its own corners with their own error, whatever lies beside it. Other zones
 * count where their outline cuts it.
 * @param net as for gradientOfParts @param sources as there
 */
export function ownSigmaOfParts(
  net: readonly PlaneRings[],
  own: Zone,
  sources: readonly Zone[],
  plane: LocalPlane,
): number {
  return sigmaOfGradient(gradientOfParts(net, [own, ...sources.filter((zone) => zone !== own)], plane, own));
}

const wholeSigmas = new WeakMap<Zone, { readonly plane: LocalPlane; readonly sigmaM2: number }>();

/** The same for a zone that nothing cuts; kept while zone and plane are the same objects. */
export function ownSigmaOfWhole(net: readonly PlaneRings[], own: Zone, plane: LocalPlane): number {
  const kept = wholeSigmas.get(own);
  if (kept?.plane === plane) return kept.sigmaM2;
  const sigmaM2 = ownSigmaOfParts(net, own, [], plane);
  wholeSigmas.set(own, { plane, sigmaM2 });
  return sigmaM2;
}

function gradientOf(
  net: readonly PlaneRings[],
  sources: readonly Zone[],
  plane: LocalPlane,
  rest: Scale | null,
): Map<string, Entry> {
  const box = boxOf(net);
  const southWest: XY = [box.minX, box.minY];
  const northEast: XY = [box.maxX, box.maxY];
  const sides = sources
    .flatMap((zone) => sidesOf(zone, plane))
    .filter(({ p, q }) => edgesNear(p.at, q.at, southWest, northEast));
  const gradient = new Map<string, Entry>();
  if (sides.length === 0) return gradient;
  const sidesNear = indexSides(sides);
  for (const rings of net) {
    rings.forEach((ring, ringIndex) => {
      const sign = signedArea(ring) > 0 === (ringIndex === 0) ? 1 : -1;
      for (let i = 1; i < ring.length; i++) {
        const a = ring[i - 1];
        const b = ring[i];
        if (a && b) addEdge(gradient, a, b, sign, sidesNear(a, b), rest);
      }
    });
  }
  return gradient;
}

/** Gives each stretch of an edge of the outline to the corners of the first side that it lies on. @param rest scale of stretches on none */
function addEdge(
  gradient: Map<string, Entry>,
  a: XY,
  b: XY,
  sign: number,
  sides: readonly Side[],
  rest: Scale | null,
): void {
  const nx = sign * (b[1] - a[1]);
  const ny = -sign * (b[0] - a[0]);
  let open: (readonly [number, number])[] = [[0, 1]];
  for (const side of sides) {
    const on = stretchOn(a, b, side.p.at, side.q.at);
    if (!on) continue;
    const left: (readonly [number, number])[] = [];
    for (const [from, to] of open) {
      const t0 = Math.max(from, on.t0);
      const t1 = Math.min(to, on.t1);
      if (t1 - t0 <= LEAST_SHARE) {
        left.push([from, to]);
        continue;
      }
      const tm = (t0 + t1) / 2;
      const at: XY = [a[0] + tm * (b[0] - a[0]), a[1] + tm * (b[1] - a[1])];
      const share = shareOn(side, at);
      if (side.scale) addScale(gradient, side.scale, at, nx * (t1 - t0), ny * (t1 - t0));
      add(gradient, side.p, nx * (t1 - t0) * (1 - share), ny * (t1 - t0) * (1 - share));
      add(gradient, side.q, nx * (t1 - t0) * share, ny * (t1 - t0) * share);
      if (t0 - from > LEAST_SHARE) left.push([from, t0]);
      if (to - t1 > LEAST_SHARE) left.push([t1, to]);
    }
    open = left;
    if (open.length === 0) return;
  }
  if (!rest) return;
  for (const [from, to] of open) {
    const tm = (from + to) / 2;
    const at: XY = [a[0] + tm * (b[0] - a[0]), a[1] + tm * (b[1] - a[1])];
    addScale(gradient, rest, at, nx * (to - from), ny * (to - from));
  }
}

interface Origin {
  readonly sources: readonly Zone[];
  readonly scale: number;
}
const origins = new WeakMap<MeasuredZone, Origin>();

/** Keeps what the gradient of a measured zone was taken from. @param scale ground m for each m of the plane */
export function keepSources(measured: MeasuredZone, sources: readonly Zone[], scale: number): void {
  origins.set(measured, { sources, scale });
}

/** The zones whose sides bound a measured zone, in the order for `gradientOfParts`; empty when not made by measureYard. */
export function sourcesOf(measured: MeasuredZone): readonly Zone[] {
  return origins.get(measured)?.sources ?? [];
}

/**
 * One standard deviation of a sum of areas, m², by the gradients of its summands: a corner that several
 * of them know has one error. @param scale ground m for each m of the plane: sqrt of `areaScale`
 */
export function sigmaOfGradients(gradients: readonly Gradient[], scale = 1): number {
  return scale * Math.sqrt(varianceOfGradients(gradients));
}

/** Variance of a sum of areas in the plane, m⁴. */
export function varianceOfGradients(gradients: readonly Gradient[]): number {
  const sum = new Map<string, Entry>();
  for (const gradient of gradients) addGradient(sum, gradient);
  return varianceOf(sum);
}

/**
 * One standard deviation of the summed net area of some zones, m². A corner shared by several zones has
 * one error, so the border between two of them cancels in their sum. Unknown ids are passed over; an id
 * given twice counts once.
 */
export function sigmaOfZones(measured: MeasuredYard, zoneIds: readonly string[]): number {
  const zones = [...new Set(zoneIds)]
    .map((id) => measured.zones.get(id))
    .filter((zone) => zone !== undefined);
  if (zones.length === 1) return zones[0]?.netSigmaM2 ?? 0;
  return Math.sqrt(planeVarianceOf(zones)) * groundScaleOf(zones);
}

/** Variance of the summed net area of zones in the plane, m⁴: without the scale of elevation. */
export function planeVarianceOf(zones: readonly MeasuredZone[]): number {
  return varianceOfGradients(zones.map((zone) => zone.gradient));
}

/**
 * The same from the variance `before` of other zones, redone only at corners of the zones that differ.
 * @param from the zones of `before` @param to the zones wanted
 */
export function updateVariance(
  before: number,
  from: readonly MeasuredZone[],
  to: readonly MeasuredZone[],
): number {
  const [was, is] = [new Set(from), new Set(to)];
  const gone = from.filter((zone) => !is.has(zone));
  const come = to.filter((zone) => !was.has(zone));
  if (3 * (gone.length + come.length) > to.length) return planeVarianceOf(to);
  const old = new Map<string, Entry>();
  for (const zone of [...gone, ...come]) {
    for (const [key] of zone.gradient) old.set(key, { gx: 0, gy: 0, sigmaM: Number.POSITIVE_INFINITY });
  }
  for (const zone of to) {
    if (!was.has(zone)) continue;
    for (const [key, { gx, gy, sigmaM }] of zone.gradient)
      if (old.has(key)) addEntry(old, key, gx, gy, sigmaM);
  }
  const now = new Map([...old].map(([key, entry]) => [key, { ...entry }]));
  for (const zone of gone) addGradient(old, zone.gradient);
  for (const zone of come) addGradient(now, zone.gradient);
  return Math.max(0, before - varianceOf(old) + varianceOf(now));
}

/** Ground m for each m of the plane at the yard's elevation: the same for all zones. */
function groundScaleOf(zones: readonly MeasuredZone[]): number {
  for (const zone of zones) {
    const origin = origins.get(zone);
    if (origin) return origin.scale;
  }
  return 1;
}

/** One standard deviation of an area, m², from its gradient: sqrt(Σ s²·|g|²), corners independent. */
export function sigmaOfGradient(gradient: Gradient): number {
  return Math.sqrt(varianceOf(gradient));
}

function varianceOf(gradient: Gradient): number {
  let variance = 0;
  for (const { gx, gy, sigmaM } of gradient.values()) {
    const pull = gx * gx + gy * gy;
    if (pull > 0) variance += sigmaM * sigmaM * pull;
  }
  return variance;
}

function addGradient(sum: Map<string, Entry>, gradient: Gradient): void {
  for (const [key, { gx, gy, sigmaM }] of gradient) addEntry(sum, key, gx, gy, sigmaM);
}

function add(gradient: Map<string, Entry>, { key, sigmaM, pulls }: Corner, gx: number, gy: number): void {
  if (pulls === null) {
    addEntry(gradient, key, gx, gy, sigmaM);
    return;
  }
  for (const { key: pointKey, xx, xy, yx, yy } of pulls)
    addEntry(gradient, pointKey, gx * xx + gy * yx, gx * xy + gy * yy, sigmaM);
}

/** An edge with outward normal times length (nx, ny) round `at` grows with a scale. */
function addScale(gradient: Map<string, Entry>, scale: Scale, at: XY, nx: number, ny: number): void {
  const { key, sigma, middle } = scale;
  addEntry(gradient, key, nx * (at[0] - middle[0]) + ny * (at[1] - middle[1]), 0, sigma);
}

/**
 * A corner that two zones know with different errors keeps the smaller. Zones share a corner, digit for
 * digit, only where one was snapped to the other's: it is one point on the ground, and who knows it better
 * knows it for both. With the larger, a neighbour drawn along a surveyed border would make the border worse.
 */
function addEntry(gradient: Map<string, Entry>, key: string, gx: number, gy: number, sigmaM: number): void {
  const entry = gradient.get(key);
  if (entry) {
    entry.gx += gx;
    entry.gy += gy;
    entry.sigmaM = Math.min(entry.sigmaM, sigmaM);
  } else {
    gradient.set(key, { gx, gy, sigmaM });
  }
}
