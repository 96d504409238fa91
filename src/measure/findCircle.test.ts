import { describe, expect, it } from 'vitest';
import { findCircle } from './findCircle';
import type { XY } from './types';

const around = (count: number, rx: number, ry = rx): XY[] =>
  Array.from({ length: count + 1 }, (_, i): XY => {
    const t = (2 * Math.PI * i) / count;
    return [7 + rx * Math.cos(t), -3 + ry * Math.sin(t)];
  });

describe('findCircle', () => {
  it('finds middle and radius of a circle', () => {
    const found = findCircle(around(48, 5));
    expect(found?.radiusM).toBeCloseTo(5, 6);
    expect(found?.middle[0]).toBeCloseTo(7, 6);
    expect(found?.middle[1]).toBeCloseTo(-3, 6);
  });

  it('takes an ellipse, a half circle and a hexagon for none', () => {
    expect(findCircle(around(48, 5, 4.8))).toBeNull();
    expect(findCircle(around(6, 5))).toBeNull();
    const half = around(48, 5).slice(0, 25);
    expect(findCircle([...half, half[0] ?? [0, 0]])).toBeNull();
  });
});
