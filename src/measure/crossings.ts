import type { Issue, Position, Ring } from '../yard/types';

/** Degrees are taken off a corner near the ring before the planar test, so no digits are lost. */
interface Segment {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

/**
 * Places where a ring crosses or touches itself other than at the shared ends of neighbouring sides,
 * including a side that folds back on the one before. Edges are straight in (lon, lat), as RFC 7946
 * sect. 3.1.1 has them, and take the shorter way round: a ring may lie across 180°.
 * @param ring [lon, lat] in degrees, closed or open; 3 or more corners (fewer give none); not changed
 * @returns one position for each crossing, in order of the first side; empty when the ring is simple
 */
export function findCrossings(ring: Ring): Position[] {
  const open = openCorners(ring);
  const n = open.length;
  const origin = open[0];
  if (!origin || n < 3) return [];
  const [x0, y0] = origin;
  const sides: Segment[] = open.map((p, i) => {
    const q = open[(i + 1) % n] ?? origin;
    return { ax: p[0] - x0, ay: p[1] - y0, bx: q[0] - x0, by: q[1] - y0 };
  });
  const found: Position[] = [];
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const s = sides[i];
      const t = sides[j];
      if (!s || !t || !boxesMeet(s, t)) continue;
      const isNext = j === i + 1;
      const isPrevious = i === 0 && j === n - 1;
      const at = isNext || isPrevious ? foldPoint(isNext ? s : t, isNext ? t : s) : meetingPoint(s, t);
      if (!at) continue;
      const place: Position = [turnLon(at[0] + x0, 0), at[1] + y0];
      if (!found.some((p) => p[0] === place[0] && p[1] === place[1])) found.push(place);
    }
  }
  return found;
}

/**
 * Faults of one ring, in words: `ring-too-short`, `ring-not-a-number`, `ring-self-crossing` (with the place).
 * @returns empty when the ring can be measured
 */
export function checkRing(ring: Ring): Issue[] {
  const bad = ring.findIndex((p) => !Number.isFinite(p[0]) || !Number.isFinite(p[1]));
  if (bad >= 0) {
    return [fault('ring-not-a-number', `Corner ${bad + 1} has no usable longitude and latitude.`)];
  }
  const corners = new Set(unwrapped(ring).map((p) => `${p[0]},${p[1]}`)).size;
  if (corners < 3) {
    return [
      fault(
        'ring-too-short',
        `A shape needs at least 3 different corners; this one has ${corners}.`,
        ring[0],
      ),
    ];
  }
  return findCrossings(ring)
    .slice(0, 1)
    .map((at) =>
      fault(
        'ring-self-crossing',
        `The outline crosses itself near ${at[1].toFixed(6)}, ${at[0].toFixed(6)}.`,
        at,
      ),
    );
}

function fault(code: string, message: string, position?: Position): Issue {
  return { code, severity: 'error', message, place: position ? { position } : {} };
}

/** The longitude plus whole turns, within half a turn of `near`; unchanged where it is so already. */
function turnLon(lon: number, near: number): number {
  return Math.abs(lon - near) <= 180 ? lon : lon + 360 * Math.round((near - lon) / 360);
}

/** Every corner with its longitude near that of the first. */
function unwrapped(ring: Ring): Ring {
  const near = ring[0]?.[0] ?? 0;
  return ring.map((p) => (Math.abs(p[0] - near) <= 180 ? p : [turnLon(p[0], near), p[1]]));
}

/** Corners without the closing one and without immediate repeats, longitudes unwrapped. */
function openCorners(drawn: Ring): Position[] {
  const ring = unwrapped(drawn);
  const open = ring.filter((p, i) => {
    const before = ring[i - 1];
    return !before || before[0] !== p[0] || before[1] !== p[1];
  });
  const first = open[0];
  const last = open[open.length - 1];
  if (open.length > 1 && first && last && first[0] === last[0] && first[1] === last[1]) open.pop();
  return open;
}

function boxesMeet(s: Segment, t: Segment): boolean {
  return (
    Math.max(s.ax, s.bx) >= Math.min(t.ax, t.bx) &&
    Math.max(t.ax, t.bx) >= Math.min(s.ax, s.bx) &&
    Math.max(s.ay, s.by) >= Math.min(t.ay, t.by) &&
    Math.max(t.ay, t.by) >= Math.min(s.ay, s.by)
  );
}

function side(s: Segment, x: number, y: number): number {
  return (s.bx - s.ax) * (y - s.ay) - (s.by - s.ay) * (x - s.ax);
}

/** Where two sides that are not neighbours meet (proper crossing, touch or overlap), or null. */
function meetingPoint(s: Segment, t: Segment): XYPair | null {
  const d1 = side(s, t.ax, t.ay);
  const d2 = side(s, t.bx, t.by);
  const d3 = side(t, s.ax, s.ay);
  const d4 = side(t, s.bx, s.by);
  if (d1 * d2 > 0 || d3 * d4 > 0) return null;
  if (d1 === 0 && d2 === 0) {
    if (within(s, t.ax, t.ay)) return [t.ax, t.ay];
    if (within(s, t.bx, t.by)) return [t.bx, t.by];
    return within(t, s.ax, s.ay) ? [s.ax, s.ay] : null;
  }
  const u = d3 / (d3 - d4);
  return [s.ax + u * (s.bx - s.ax), s.ay + u * (s.by - s.ay)];
}
type XYPair = [number, number];

/** Neighbouring sides share an end; they clash only when the second folds back along the first. */
function foldPoint(s: Segment, t: Segment): XYPair | null {
  const isCollinear = side(s, t.bx, t.by) === 0;
  const dot = (s.bx - s.ax) * (t.bx - t.ax) + (s.by - s.ay) * (t.by - t.ay);
  return isCollinear && dot < 0 ? [t.ax, t.ay] : null;
}

function within(s: Segment, x: number, y: number): boolean {
  return (
    x >= Math.min(s.ax, s.bx) &&
    x <= Math.max(s.ax, s.bx) &&
    y >= Math.min(s.ay, s.by) &&
    y <= Math.max(s.ay, s.by)
  );
}
