import { describe, expect, it } from 'vitest';
import { alignWithFirst, crossingOfNewSide, holdRightAngle } from './sides';

describe('holdRightAngle', () => {
  it('drops the pointer square to a slanting side', () => {
    const held = holdRightAngle({ x: 0, y: 0 }, { x: 3, y: 4 }, { x: 7.3, y: 1.2 });
    const dot = (held.x - 3) * 3 + (held.y - 4) * 4;
    expect(Math.abs(dot)).toBeLessThan(1e-9);
    expect(held.x).toBeGreaterThan(3);
  });
  it('keeps straight on when the pointer lies along', () => {
    expect(holdRightAngle({ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 25, y: 3 })).toEqual({ x: 25, y: 0 });
  });
  it('leaves the pointer alone with no side before', () => {
    expect(holdRightAngle({ x: 1, y: 1 }, { x: 1, y: 1 }, { x: 5, y: 3 })).toEqual({ x: 5, y: 3 });
  });
});

describe('alignWithFirst', () => {
  it('closes a four-cornered shape square', () => {
    const aligned = alignWithFirst({ x: 0, y: 0 }, { x: 100, y: 60 }, { x: 4, y: 60 }, 10);
    expect(aligned.x).toBeCloseTo(0, 9);
    expect(aligned.y).toBeCloseTo(60, 9);
  });
  it('does nothing out of reach', () => {
    expect(alignWithFirst({ x: 0, y: 0 }, { x: 100, y: 60 }, { x: 40, y: 60 }, 10)).toEqual({ x: 40, y: 60 });
  });
});

describe('crossingOfNewSide', () => {
  const line = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
  ];
  it('finds the crossing', () => {
    const hit = crossingOfNewSide(line, { x: 5, y: -5 });
    expect(hit?.x).toBeCloseTo(20 / 3, 9);
    expect(hit?.y).toBeCloseTo(0, 9);
  });
  it('lets a side go on from the last corner and a concave shape stand', () => {
    expect(crossingOfNewSide(line, { x: 2, y: 5 })).toBeNull();
  });
});
