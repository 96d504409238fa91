import polylabel from 'polylabel';
import { isInsideParts } from '../measure/isInsideParts';

/** Paper position, mm, y down. */
export type Mm = readonly [number, number];
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly halfW: number;
  readonly halfH: number;
}
export interface Wanted {
  readonly id: string;
  /** parts of rings, closed, mm. */
  readonly parts: readonly (readonly (readonly Mm[])[])[];
  /** half sizes of the forms the label can take, best first; the last also goes outside with a leader. */
  readonly forms: readonly { readonly halfW: number; readonly halfH: number }[];
  /** true: left out when no form fits inside. */
  readonly optional?: boolean;
}
export interface Placed extends Box {
  readonly id: string;
  readonly form: number;
  /** where the leader ends inside the shape; null: the label lies in it. */
  readonly leaderTo: Mm | null;
}

/** Whether two boxes come closer than `gap` mm. */
export function boxesMeet(a: Box, b: Box, gap = 0.4): boolean {
  return Math.abs(a.x - b.x) < a.halfW + b.halfW + gap && Math.abs(a.y - b.y) < a.halfH + b.halfH + gap;
}

function boxInside(box: Box, rings: readonly (readonly Mm[])[]): boolean {
  for (let i = 0; i <= 8; i++) {
    const x = box.x + box.halfW * (i / 4 - 1);
    for (const f of [-1, -0.5, 0, 0.5, 1])
      if (!isInsideParts([x, box.y + box.halfH * f], [rings])) return false;
  }
  return true;
}

function spots(rings: readonly (readonly Mm[])[]): Mm[] {
  const pole = polylabel(rings, 0.3);
  const centre: Mm = [pole[0], pole[1]];
  const outer = rings[0] as readonly Mm[];
  const xs = outer.map((p) => p[0]);
  const ys = outer.map((p) => p[1]);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const grid: Mm[] = [];
  for (let i = 1; i < 16; i++) {
    for (let j = 1; j < 16; j++) grid.push([x0 + ((x1 - x0) * i) / 16, y0 + ((y1 - y0) * j) / 16]);
  }
  const away = (p: Mm) => Math.hypot(p[0] - centre[0], p[1] - centre[1]);
  return [centre, ...grid.filter((p) => isInsideParts(p, [rings])).sort((a, b) => away(a) - away(b))];
}

/** Twice the area of a shape's outer ring, mm². */
export function ringSize(rings: readonly (readonly Mm[])[]): number {
  const outer = rings[0] ?? [];
  let twice = 0;
  for (let i = 1; i < outer.length; i++) {
    const a = outer[i - 1] as Mm;
    const b = outer[i] as Mm;
    twice += a[0] * b[1] - b[0] * a[1];
  }
  return Math.abs(twice);
}

/**
 * Places one label for each shape so that no two meet: the best form that fits inside its largest part,
 * then lesser forms, at last the least form beside the shape with a leader. Small shapes choose last form first.
 * @param taken boxes that are already used. @param frame the labels stay inside it.
 * @returns one entry a shape, in any order; shapes without parts are left out
 */
export function placeLabels(wanted: readonly Wanted[], taken: readonly Box[], frame: Box): Placed[] {
  const used: Box[] = [...taken];
  const placed: Placed[] = [];
  const free = (box: Box) =>
    Math.abs(box.x - frame.x) + box.halfW <= frame.halfW &&
    Math.abs(box.y - frame.y) + box.halfH <= frame.halfH &&
    !used.some((other) => boxesMeet(box, other));
  const put = (one: Placed) => {
    used.push(one);
    placed.push(one);
  };
  const late: { want: Wanted; at: Mm }[] = [];
  const bySize = wanted
    .map((want) => ({ want, rings: [...want.parts].sort((a, b) => ringSize(b) - ringSize(a))[0] }))
    .sort((a, b) => ringSize(a.rings ?? []) - ringSize(b.rings ?? []));
  for (const { want, rings } of bySize) {
    if (rings === undefined || (rings[0]?.length ?? 0) < 4) continue;
    const all = spots(rings);
    let found: Placed | null = null;
    for (let form = 0; form < want.forms.length && !found; form++) {
      const half = want.forms[form] as { halfW: number; halfH: number };
      const at = all.find((p) => {
        const box = { x: p[0], y: p[1], ...half };
        return boxInside(box, rings) && free(box);
      });
      if (at) found = { id: want.id, form, x: at[0], y: at[1], ...half, leaderTo: null };
    }
    if (found) put(found);
    else if (!want.optional) {
      const dot = (p: Mm) => ({ x: p[0], y: p[1], halfW: 0, halfH: 0 });
      const clear = all.find((p) => !used.some((box) => boxesMeet(dot(p), box, 0.6)));
      late.push({ want, at: clear ?? (all[0] as Mm) });
    }
  }
  for (const { want, at } of late) {
    const form = want.forms.length - 1;
    const half = want.forms[form] as { halfW: number; halfH: number };
    let spot: Placed | null = null;
    for (let r = 4; r <= 60 && !spot; r += 1.5) {
      for (let k = 0; k < 24 && !spot; k++) {
        const turn = (k * Math.PI) / 12;
        const box = { x: at[0] + r * Math.cos(turn), y: at[1] + r * Math.sin(turn), ...half };
        if (free(box)) spot = { id: want.id, form, ...box, leaderTo: at };
      }
    }
    put(spot ?? { id: want.id, form, x: at[0], y: at[1], ...half, leaderTo: null });
  }
  return placed;
}
