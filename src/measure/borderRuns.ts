import type { Position } from '../yard/types';
import { roundPosition } from './corners';
import { type NodeRing, ringOfNodes } from './outlineNodes';
import type { LocalPlane, XY } from './types';

/** A place this near a side lies on it, m. */
export const ON_SIDE_M = 2e-5;

/** A closed ring in the plane with the way walked to each corner. */
export interface WalkedRing {
  readonly corners: readonly XY[];
  /** m from the first corner; one entry a corner, the closing one too. */
  readonly walked: readonly number[];
  readonly lengthM: number;
}

/** Lays a ring in the plane. @param ring closed */
export function walkRing(ring: readonly Position[], plane: LocalPlane): WalkedRing {
  const corners = ring.map((p) => plane.toPlane(p));
  const walked = walkedAlong(corners);
  return { corners, walked, lengthM: walked.at(-1) ?? 0 };
}

function walkedAlong(corners: readonly XY[]): number[] {
  let sum = 0;
  return corners.map(([x, y], i) => {
    const before = corners[i - 1];
    if (before) sum += Math.hypot(x - before[0], y - before[1]);
    return sum;
  });
}

/** Way along the ring to the place, m, when it lies on it; else null. A corner's own way for a corner. */
export function locateOn({ corners, walked, lengthM }: WalkedRing, [x, y]: XY): number | null {
  let side: number | null = null;
  for (let i = 1; i < corners.length; i++) {
    const [a, b] = [corners[i - 1], corners[i]];
    if (!a || !b) continue;
    if (x < Math.min(a[0], b[0]) - ON_SIDE_M || x > Math.max(a[0], b[0]) + ON_SIDE_M) continue;
    if (y < Math.min(a[1], b[1]) - ON_SIDE_M || y > Math.max(a[1], b[1]) + ON_SIDE_M) continue;
    const [from, to] = [walked[i - 1] ?? 0, walked[i] ?? 0];
    if (Math.hypot(x - a[0], y - a[1]) <= ON_SIDE_M) return from;
    if (Math.hypot(x - b[0], y - b[1]) <= ON_SIDE_M) return to === lengthM ? 0 : to;
    const length = to - from;
    const along = ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / length;
    const off = Math.abs((x - a[0]) * (b[1] - a[1]) - (y - a[1]) * (b[0] - a[0])) / length;
    if (off <= ON_SIDE_M && along > 0 && along < length) side = from + along;
  }
  return side;
}

/** A stretch of a ring between two places that are known in both, old and new course. */
export interface Run {
  /** way along the old ring to its start, m, and its length. */
  readonly startM: number;
  readonly lengthM: number;
  /** new course, ends included, and the share of its length at each corner. */
  readonly next: readonly Position[];
  readonly shares: readonly number[];
}

/**
 * The stretches in which two versions of a ring differ, old to new. Versions with as many nodes match
 * node by node; else nodes at the same place match, and what lies between goes over as a whole.
 * @returns empty when nothing differs, or the two have no node in common
 */
export function runsBetween(before: NodeRing, after: NodeRing, plane: LocalPlane): Run[] {
  const pairs = matchNodes(before, after);
  if (pairs.length === 0) return [];
  const [old, now] = [openRing(before), openRing(after)];
  const walked = walkRing([...old.corners, ...old.corners.slice(0, 1)], plane);
  return pairs.flatMap(([from, fromNow], i): Run[] => {
    const [to, toNow] = pairs[(i + 1) % pairs.length] ?? [from, fromNow];
    const was = stretch(old, from, to);
    const next = stretch(now, fromNow, toNow);
    if (was.length === next.length && was.every((p, j) => p[0] === next[j]?.[0] && p[1] === next[j]?.[1]))
      return [];
    const startM = walked.walked[old.starts[from] ?? 0] ?? 0;
    const endM = walked.walked[old.starts[to] ?? 0] ?? 0;
    const lengthM = (endM - startM + walked.lengthM) % walked.lengthM || walked.lengthM;
    const ways = walkedAlong(next.map((p) => plane.toPlane(p)));
    const whole = ways.at(-1) || 1;
    return [{ startM, lengthM, next, shares: ways.map((way) => way / whole) }];
  });
}

/** Corners of the ring without the closing one, and at which of them each node stands. */
function openRing(ring: NodeRing): { corners: readonly Position[]; starts: readonly number[] } {
  const starts: number[] = [];
  let count = 0;
  for (const bend of ring.bends) {
    starts.push(count);
    count += 1 + (bend?.flat.length ?? 0);
  }
  return { corners: ringOfNodes(ring).slice(0, -1), starts };
}

function stretch(
  { corners, starts }: { corners: readonly Position[]; starts: readonly number[] },
  from: number,
  to: number,
): Position[] {
  const [a, b] = [starts[from] ?? 0, starts[to] ?? 0];
  const count = (b - a + corners.length) % corners.length || corners.length;
  return Array.from({ length: count + 1 }, (_, i) => corners[(a + i) % corners.length] ?? [0, 0]);
}

function matchNodes(before: NodeRing, after: NodeRing): [number, number][] {
  if (before.nodes.length === after.nodes.length) return before.nodes.map((_, i) => [i, i]);
  const places = new Map(after.nodes.map((p, i) => [String(p), i]));
  return before.nodes.flatMap((p, i): [number, number][] => {
    const now = places.get(String(p));
    return now === undefined ? [] : [[i, now]];
  });
}

/** The place at a share of the run's new course. */
export function placeAt({ next, shares }: Run, share: number): Position {
  const i = shares.findIndex((one) => one >= share);
  const [a, b] = [next[i - 1], next[i]];
  const [from, to] = [shares[i - 1] ?? 0, shares[i] ?? 1];
  if (!b) return next.at(-1) ?? [0, 0];
  if (!a || to - from <= 0) return b;
  const t = (share - from) / (to - from);
  return roundPosition([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
}
