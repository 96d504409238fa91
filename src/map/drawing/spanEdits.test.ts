import { describe, expect, it } from 'vitest';
import { collapseParts, expandParts, type NodeParts } from '../../measure/outlineNodes';
import { createPlane } from '../../measure/plane';
import type { Position } from '../../yard/types';
import { spanBetween, spanOfSide } from './nodeSpans';
import { bendSpan, type EdgeEdit, placeAbove, smoothSpan, straightenSpan } from './spanEdits';

const plane = createPlane([-83, 40]);
const at = (x: number, y: number): Position => {
  const [lon, lat] = plane.toLonLat([x, y]);
  return [Math.round(lon * 1e11) / 1e11, Math.round(lat * 1e11) / 1e11];
};
const corners = [at(0, 0), at(10, 0), at(12, 5), at(10, 10), at(0, 10)];
const parts = collapseParts({ parts: [[[...corners, corners[0] as Position]]], curves: [] });
const path = (node: number) => ({ part: 0, ring: 0, node });
const done = (edit: EdgeEdit): NodeParts => {
  if (!edit.ok) throw new Error(edit.message);
  return edit.parts;
};
const codeOf = (edit: EdgeEdit) => (edit.ok ? 'ok' : edit.code);
const span = (a: number, b: number) => spanBetween(parts, path(a), path(b)) ?? spanOfSide(parts, path(a));

describe('stretches of an outline', () => {
  it('go the shorter way between two corners, whichever was picked first', () => {
    expect(span(1, 3)).toMatchObject({ from: 1, to: 3 });
    expect(span(3, 1)).toMatchObject({ from: 1, to: 3 });
    expect(span(4, 0)).toMatchObject({ from: 4, to: 0 });
    expect(spanBetween(parts, path(0), { part: 0, ring: 1, node: 0 })).toBeNull();
  });

  it('become an arc, a smooth line or one straight side', () => {
    const arc = expandParts(done(bendSpan(parts, span(1, 3), at(14, 5))));
    expect(arc.curves).toEqual([{ kind: 'arc', points: [at(10, 0), at(14, 5), at(10, 10)] }]);
    const smooth = expandParts(done(smoothSpan(parts, span(1, 3))));
    expect(smooth.curves).toEqual([{ kind: 'smooth', points: [at(10, 0), at(12, 5), at(10, 10)] }]);
    const straight = done(straightenSpan(parts, span(1, 3)));
    expect(straight[0]?.[0]?.nodes).toEqual([at(0, 0), at(10, 0), at(10, 10), at(0, 10)]);
    const whole = expandParts(done(smoothSpan(parts, span(2, 2))));
    expect(whole.curves[0]?.points).toHaveLength(6);
    const over = expandParts(done(bendSpan(parts, span(4, 0), at(-2, 5))));
    expect(over.curves[0]?.points).toEqual([at(0, 10), at(-2, 5), at(0, 0)]);
  });

  it('are refused when nothing would come of it', () => {
    expect(codeOf(bendSpan(parts, span(0, 1), at(5, 0)))).toBe('arc-flat');
    expect(codeOf(smoothSpan(parts, span(0, 1)))).toBe('smooth-too-few');
    expect(codeOf(straightenSpan(parts, span(0, 1)))).toBe('already-straight');
    expect(codeOf(straightenSpan(parts, span(2, 2)))).toBe('straighten-ring');
  });

  it('a typed height stands square on the middle, on the side pointed at', () => {
    const [x, y] = plane.toPlane(placeAbove([at(0, 0), at(10, 0)], 2, at(3, -1), plane));
    expect(x).toBeCloseTo(5, 5);
    expect(y).toBeCloseTo(-2, 5);
    expect(plane.toPlane(placeAbove([at(0, 0), at(10, 0)], 2, null, plane))[1]).toBeCloseTo(2, 5);
  });
});
