import type { Position } from '../yard/types';
import { locateOn, ON_SIDE_M, type WalkedRing } from './borderRuns';
import { type Bend, endsOf, type NodeRing } from './outlineNodes';
import type { LocalPlane, XY } from './types';

/** Corner of a neighbour, as it stands to the zone in hand. */
export interface Item {
  readonly at: Position;
  /** ring of the zone on which it lies, and how far along; -1: on none. */
  readonly ring: number;
  readonly alongM: number;
  /** a corner of the zone put into a neighbour's side: only kept where it moves. */
  readonly isPut: boolean;
  /** it stands where the zone has a corner too. */
  readonly isCorner: boolean;
  /** a curve of the neighbour's own to the next corner. */
  readonly bend: Bend | null;
}

/** A neighbour's ring; `follows[i]`: its side from item i on lies on the zone's outline. */
export interface LinkedRing {
  readonly items: readonly Item[];
  readonly follows: readonly boolean[];
  readonly isTouched: boolean;
}

function locate(p: XY, rings: readonly WalkedRing[]): { ring: number; alongM: number } {
  for (const [ring, one] of rings.entries()) {
    const alongM = locateOn(one, p);
    if (alongM !== null) return { ring, alongM };
  }
  return { ring: -1, alongM: 0 };
}

/** Whether the straight side from a to b lies on the outline: its middle does, and the way between is as long. */
function isAlong(a: XY, b: XY, from: Item, to: Item, rings: readonly WalkedRing[]): boolean {
  const outline = rings[from.ring];
  if (!outline || from.ring !== to.ring) return false;
  const middle = locateOn(outline, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
  if (middle === null) return false;
  const way = Math.abs(from.alongM - to.alongM);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return Math.abs(Math.min(way, outline.lengthM - way) - length) <= 4 * ON_SIDE_M;
}

/** Finds where a neighbour's ring lies on the outline of the zone in hand. @param rings of that zone */
export function linkRing(ring: NodeRing, rings: readonly WalkedRing[], plane: LocalPlane): LinkedRing {
  const isCornerAt = ({ ring: r, alongM }: { ring: number; alongM: number }) =>
    rings[r]?.walked.some((way) => Math.abs(way - alongM) <= ON_SIDE_M) ?? false;
  const item = (at: Position, bend: Bend | null, isPut = false): Item => {
    const found = locate(plane.toPlane(at), rings);
    return { at, ...found, isPut, isCorner: isCornerAt(found), bend };
  };
  const items: Item[] = [];
  ring.nodes.forEach((node, i) => {
    const bend = ring.bends[i] ?? null;
    const line = [node, ...(bend?.flat ?? [])];
    const [, end] = endsOf(ring, i);
    // A curve that runs on the zone's outline goes as the corners it is made of.
    const isOn =
      bend !== null && [...line, end].filter((p) => locate(plane.toPlane(p), rings).ring >= 0).length > 2;
    if (bend && !isOn) {
      items.push(item(node, bend));
      return;
    }
    line.forEach((at, j) => {
      items.push(item(at, null));
      items.push(...putCorners(at, line[j + 1] ?? end, rings, plane).map((p) => item(p, null, true)));
    });
  });
  const laid = items.map(({ at }) => plane.toPlane(at));
  const follows = items.map((one, i) => {
    const j = (i + 1) % items.length;
    const [a, b, next] = [laid[i], laid[j], items[j]];
    return one.bend === null && !!a && !!b && !!next && isAlong(a, b, one, next, rings);
  });
  return { items, follows, isTouched: items.some((one) => one.ring >= 0) };
}

/** Corners of the zone that lie within a neighbour's side, in its order. */
function putCorners(a: Position, b: Position, rings: readonly WalkedRing[], plane: LocalPlane): Position[] {
  const [p, q] = [plane.toPlane(a), plane.toPlane(b)];
  const [ex, ey] = [q[0] - p[0], q[1] - p[1]];
  const length = Math.hypot(ex, ey);
  const found: { along: number; at: XY }[] = [];
  for (const { corners } of rings) {
    for (const at of corners.slice(1)) {
      const along = ((at[0] - p[0]) * ex + (at[1] - p[1]) * ey) / length;
      const off = Math.abs((at[0] - p[0]) * ey - (at[1] - p[1]) * ex) / length;
      if (off <= ON_SIDE_M && along > ON_SIDE_M && along < length - ON_SIDE_M) found.push({ along, at });
    }
  }
  return found.sort((x, y) => x.along - y.along).map(({ at }) => plane.toLonLat(at));
}
