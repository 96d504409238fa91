import { describe, expect, it } from 'vitest';
import { boxOf } from './planeBox';
import { findSnap, type SnapQuery, type SnapShape } from './snapping';
import type { XY } from './types';

const shape = (name: string, line: readonly XY[]): SnapShape => ({
  name,
  lines: [line],
  places: [line.map(([x, y]) => [x / 1e5, y / 1e5])],
  box: boxOf([[line]]),
});
/** A drive that runs 3 east for 1 north, 4 m wide. */
const drive = shape('Drive', [
  [0, 0],
  [12, 4],
  [11, 7],
  [-1, 3],
  [0, 0],
]);
const ask = (pointer: XY, more: Partial<SnapQuery> = {}) =>
  findSnap({ pointer, reachM: 0.5, shapes: [drive], anchors: [], own: [], hidden: [], ...more });

describe('findSnap', () => {
  it('takes a corner before an edge, with its own degrees, and passes over corners that move along', () => {
    expect(ask([0.2, 0.2])).toMatchObject({ to: 'corner', at: [0, 0], position: [0, 0] });
    expect(ask([0.2, 0.2], { hidden: [[0, 0]] })).toBeNull();
  });

  it('puts a place on an edge, exactly on its line', () => {
    const snap = ask([6, 1.8]);
    expect(snap?.to).toBe('edge');
    expect((snap?.at[1] ?? 0) * 3).toBeCloseTo(snap?.at[0] ?? Number.NaN, 9);
  });

  it('carries an edge on beyond its end and names it', () => {
    const snap = ask([15, 5.1]);
    expect(snap).toMatchObject({ to: 'guide', guides: [{ words: 'in line with Drive', from: [12, 4] }] });
    expect((snap?.at[1] ?? 0) * 3).toBeCloseTo(snap?.at[0] ?? Number.NaN, 9);
  });

  it('holds a right angle to the side before, and straight on', () => {
    const anchors = [{ from: [20, 20], before: [10, 20] }] as const;
    const far = { shapes: [], anchors };
    expect(ask([20.1, 25], far)).toMatchObject({
      at: [20, 25],
      guides: [{ words: 'right angle', from: [20, 20] }],
    });
    expect(ask([26, 20.1], far)).toMatchObject({ at: [26, 20], guides: [{ words: 'straight on' }] });
    expect(ask([24, 23], far)).toBeNull();
  });

  it('holds parallel and square to a neighbour’s edge near by, and to earlier sides', () => {
    const anchors = [{ from: [2, 8], before: null }] as const;
    const along = ask([8.02, 10.05], { anchors });
    expect(along).toMatchObject({ guides: [{ words: 'parallel to Drive' }] });
    expect(((along?.at[1] ?? 0) - 8) * 3).toBeCloseTo((along?.at[0] ?? 0) - 2, 9);
    const square = ask([1.02, 11.05], { anchors });
    expect(square).toMatchObject({ guides: [{ words: 'right angle to Drive' }] });
    const own: XY[] = [
      [50, 50],
      [60, 55],
      [60, 70],
    ];
    const side = ask([50.1, 65.1], { shapes: [], own, anchors: [{ from: [60, 70], before: [60, 55] }] });
    expect(side).toMatchObject({ guides: [{ words: 'parallel to side 1' }] });
  });

  it('takes the crossing of a guide and an edge, on both', () => {
    const snap = ask([5.85, 2.1], { anchors: [{ from: [6, -10], before: [0, -10] }] });
    expect(snap?.to).toBe('edge');
    expect(snap?.at[0]).toBeCloseTo(6, 9);
    expect(snap?.at[1]).toBeCloseTo(2, 9);
    expect(snap?.guides.map((guide) => guide.words)).toEqual(['right angle']);
  });
});
