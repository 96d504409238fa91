import type { Position, Zone } from '../yard/types';
import type { LocalPlane, MeasuredYard, MeasuredZone, PlaneRings, XY } from './types';

/** Points of a clipped outline lie this close to the side they came from, m (the clipping grid is 1e-6). */
const ON_SIDE_M = 5e-6;

export type Gradient = MeasuredZone['gradient'];
type Entry = { gx: number; gy: number; sigmaM: number };

interface Side {
  readonly p: Corner;
  readonly q: Corner;
  readonly dx: number;
  readonly dy: number;
  readonly lengthM: number;
}
interface Corner {
  readonly key: string;
  readonly at: XY;
  readonly sigmaM: number;
}

/**
 * How the net area changes when a corner moves, for every corner of the zone itself and of the zones
 * that cut it. A side p→q with outward normal n that lies on the net outline over a length l, from
 * share t0 to t1 of the side, adds n·l·(1 - tm) to p and n·l·tm to q, tm = (t0 + t1) / 2. For a zone
 * that nothing cuts this is half the vector between the two neighbours, turned by a right angle, so
 * that the variance is s²/4 · Σ d².
 * Source: Chrisman & Yandell 1988 (formula from memory; the derivation is the divergence theorem).
 * @param net the net outline in the plane, outer rings first
 * @param sources the zone first, then the zones that cut it
 */
export function gradientOf(
  net: readonly PlaneRings[],
  sources: readonly Zone[],
  plane: LocalPlane,
): Gradient {
  const sides = sources.flatMap((zone) => sidesOf(zone, plane));
  const gradient = new Map<string, Entry>();
  for (const rings of net) {
    rings.forEach((ring, ringIndex) => {
      const sign = turnsLeft(ring) === (ringIndex === 0) ? 1 : -1;
      for (let i = 1; i < ring.length; i++) {
        const a = ring[i - 1];
        const b = ring[i];
        if (!a || !b) continue;
        const side = sideUnder(a, b, sides);
        if (!side) continue;
        const tm = (shareOn(side, a) + shareOn(side, b)) / 2;
        const nx = sign * (b[1] - a[1]);
        const ny = -sign * (b[0] - a[0]);
        add(gradient, side.p, nx * (1 - tm), ny * (1 - tm));
        add(gradient, side.q, nx * tm, ny * tm);
      }
    });
  }
  return gradient;
}

/**
 * One standard deviation of the summed net area of some zones, m². A corner shared by several zones has
 * one error, so the border between two of them cancels in their sum. Unknown ids are passed over.
 */
export function sigmaOfZones(measured: MeasuredYard, zoneIds: readonly string[]): number {
  const zones = zoneIds.map((id) => measured.zones.get(id)).filter((zone) => zone !== undefined);
  if (zones.length === 1) return zones[0]?.netSigmaM2 ?? 0;
  const sum = new Map<string, Entry>();
  for (const zone of zones) {
    for (const [key, entry] of zone.gradient) addEntry(sum, key, entry.gx, entry.gy, entry.sigmaM);
  }
  return sigmaOfGradient(sum);
}

/** One standard deviation of an area, m², from its gradient: sqrt(Σ s²·|g|²), corners independent. */
export function sigmaOfGradient(gradient: Gradient): number {
  let variance = 0;
  for (const { gx, gy, sigmaM } of gradient.values()) variance += sigmaM * sigmaM * (gx * gx + gy * gy);
  return Math.sqrt(variance);
}

function add(gradient: Map<string, Entry>, corner: Corner, gx: number, gy: number): void {
  addEntry(gradient, corner.key, gx, gy, corner.sigmaM);
}

/** A corner that two zones know with different errors keeps the larger. */
function addEntry(gradient: Map<string, Entry>, key: string, gx: number, gy: number, sigmaM: number): void {
  const entry = gradient.get(key);
  if (entry) {
    entry.gx += gx;
    entry.gy += gy;
    entry.sigmaM = Math.max(entry.sigmaM, sigmaM);
  } else {
    gradient.set(key, { gx, gy, sigmaM });
  }
}

const sideCache = new WeakMap<Zone, { plane: LocalPlane; sides: Side[] }>();

function sidesOf(zone: Zone, plane: LocalPlane): Side[] {
  const kept = sideCache.get(zone);
  if (kept?.plane === plane) return kept.sides;
  const { vertexSigmaM } = zone.survey;
  const corner = (p: Position): Corner => ({
    key: `${p[0]},${p[1]}`,
    at: plane.toPlane(p),
    sigmaM: vertexSigmaM,
  });
  const sides: Side[] = [];
  for (const ring of zone.parts.flat()) {
    const corners = ring.map(corner);
    for (let i = 1; i < corners.length; i++) {
      const p = corners[i - 1];
      const q = corners[i];
      if (!p || !q) continue;
      const dx = q.at[0] - p.at[0];
      const dy = q.at[1] - p.at[1];
      const lengthM = Math.hypot(dx, dy);
      if (lengthM > 0) sides.push({ p, q, dx, dy, lengthM });
    }
  }
  sideCache.set(zone, { plane, sides });
  return sides;
}

/** The side on which both ends of a piece of outline lie; the zone's own sides come first. */
function sideUnder(a: XY, b: XY, sides: readonly Side[]): Side | undefined {
  return sides.find((side) => liesOn(side, a) && liesOn(side, b));
}

function liesOn(side: Side, [x, y]: XY): boolean {
  const rx = x - side.p.at[0];
  const ry = y - side.p.at[1];
  const across = Math.abs(side.dx * ry - side.dy * rx) / side.lengthM;
  if (across > ON_SIDE_M) return false;
  const along = (side.dx * rx + side.dy * ry) / side.lengthM;
  return along >= -ON_SIDE_M && along <= side.lengthM + ON_SIDE_M;
}

function shareOn(side: Side, [x, y]: XY): number {
  const rx = x - side.p.at[0];
  const ry = y - side.p.at[1];
  return Math.min(1, Math.max(0, (side.dx * rx + side.dy * ry) / (side.lengthM * side.lengthM)));
}

function turnsLeft(ring: readonly XY[]): boolean {
  let twice = 0;
  for (let i = 1; i < ring.length; i++) {
    const a = ring[i - 1];
    const b = ring[i];
    if (a && b) twice += a[0] * b[1] - b[0] * a[1];
  }
  return twice > 0;
}
