import { describe, expect, it } from 'vitest';
import type { Position } from '../../yard/types';
import { linesWithoutCorner, snapToLines } from './snapping';

const project = (p: Position) => ({ x: p[0] * 100, y: -p[1] * 100 });
const square: Position[] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
  [0, 0],
];

describe('snapToLines', () => {
  it('prefers a corner and returns it unchanged', () => {
    const snap = snapToLines({ x: 96, y: -5 }, [square], project, 12);
    expect(snap?.to).toBe('corner');
    expect(snap?.position).toBe(square[1]);
  });
  it('falls on an edge otherwise', () => {
    const snap = snapToLines({ x: 50, y: 7 }, [square], project, 12);
    expect(snap?.to).toBe('edge');
    expect(snap?.position[0]).toBeCloseTo(0.5, 12);
    expect(snap?.position[1]).toBe(0);
  });
  it('gives nothing out of reach', () => {
    expect(snapToLines({ x: 50, y: -50 }, [square], project, 12)).toBeNull();
  });
});

describe('linesWithoutCorner', () => {
  it('opens a ring at an inner corner and at its joint, and leaves others whole', () => {
    const other: Position[] = [
      [5, 5],
      [6, 5],
    ];
    expect(linesWithoutCorner([square, other], [1, 1])).toEqual([square.slice(0, 2), square.slice(3), other]);
    expect(linesWithoutCorner([square], [0, 0])).toEqual([square.slice(1, 4)]);
  });
});
