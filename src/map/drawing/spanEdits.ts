import { type Bend, bendBetween, type NodeParts, withRing } from '../../measure/outlineNodes';
import type { LocalPlane } from '../../measure/types';
import type { Position } from '../../yard/types';
import { type NodeSpan, pointsOfSpan, replaceSpan } from './nodeSpans';

/** An outline with a stretch changed, or why it stays. */
export type EdgeEdit =
  | { readonly ok: true; readonly parts: NodeParts }
  | { readonly ok: false; readonly code: string; readonly message: string };

function refuse(code: string, message: string): EdgeEdit {
  return { ok: false, code, message };
}

function pointsOf(parts: NodeParts, span: NodeSpan): readonly Position[] {
  const ring = parts[span.part]?.[span.ring];
  return ring ? pointsOfSpan(ring, span) : [];
}

function replaced(parts: NodeParts, span: NodeSpan, bend: Bend | null): EdgeEdit {
  return { ok: true, parts: withRing(parts, span, (ring) => replaceSpan(ring, span, bend)) };
}

/** First and last corner of a stretch. */
export function endsOfSpan(parts: NodeParts, span: NodeSpan): readonly [Position, Position] {
  const points = pointsOf(parts, span);
  const first = points[0] ?? [0, 0];
  return [first, points.at(-1) ?? first];
}

/** The arc from end to end of a stretch through a place; null when it would be straight. */
export function arcOver(parts: NodeParts, span: NodeSpan, through: Position): Bend | null {
  const [a, b] = endsOfSpan(parts, span);
  const bend = bendBetween(a, [through], b, 'arc');
  return bend && bend.flat.length > 0 ? bend : null;
}

/** The stretch as an arc through a place. */
export function bendSpan(parts: NodeParts, span: NodeSpan, through: Position): EdgeEdit {
  const bend = arcOver(parts, span, through);
  if (bend) return replaced(parts, span, bend);
  return refuse('arc-flat', 'That place lies on the straight line between the two corners. Point beside it.');
}

/** The stretch as a smooth line through all its corners; a whole ring as a closed one. */
export function smoothSpan(parts: NodeParts, span: NodeSpan): EdgeEdit {
  const points = pointsOf(parts, span);
  const [a, b] = [points[0], points.at(-1)];
  if (!a || !b || points.length < (span.from === span.to ? 4 : 3)) {
    const message = 'A smooth stretch needs a corner between its ends. Pick corners further apart.';
    return refuse('smooth-too-few', message);
  }
  return replaced(parts, span, bendBetween(a, points.slice(1, -1), b, 'smooth'));
}

/** The stretch as one straight side. */
export function straightenSpan(parts: NodeParts, span: NodeSpan): EdgeEdit {
  if (span.from === span.to) return refuse('straighten-ring', 'Pick two different corners.');
  if (pointsOf(parts, span).length < 3)
    return refuse('already-straight', 'This side is straight already. Pick a curve, or two corners.');
  return replaced(parts, span, null);
}

/** The place at a height square above the middle of a chord, on the side of `toward` (null: its left). */
export function placeAbove(
  [a, b]: readonly [Position, Position],
  heightM: number,
  toward: Position | null,
  plane: LocalPlane,
): Position {
  const [p, q] = [plane.toPlane(a), plane.toPlane(b)];
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const length = Math.hypot(dx, dy) || 1;
  const at = toward && plane.toPlane(toward);
  const side = at && dx * (at[1] - p[1]) - dy * (at[0] - p[0]) < 0 ? -1 : 1;
  const off = (heightM * side) / length;
  return plane.toLonLat([(p[0] + q[0]) / 2 - dy * off, (p[1] + q[1]) / 2 + dx * off]);
}
