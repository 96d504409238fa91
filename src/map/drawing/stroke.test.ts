import { describe, expect, it } from 'vitest';
import type { Spot } from './sides';
import { areaOfSpots, roundStroke, simplifyStroke, trimStroke } from './stroke';

const ellipse = (a: number, b: number, count: number, from = 0, to = 1): Spot[] =>
  Array.from({ length: count }, (_, i) => {
    const turn = 2 * Math.PI * (from + ((to - from) * i) / count);
    return { x: 100 + a * Math.cos(turn), y: 100 + b * Math.sin(turn) };
  });
const areaOf = (stroke: readonly Spot[]) => areaOfSpots(simplifyStroke(roundStroke(trimStroke(stroke))));

describe('a freehand stroke', () => {
  // area of an ellipse: pi a b
  it.each([
    ['a circle heard at 18 places', 60, 60, 18],
    ['a circle heard at 200 places', 60, 60, 200],
    ['a quick ellipse heard at 14 places', 90, 40, 14],
  ])('encloses the area of %s', (_, a, b, count) => {
    expect(Math.abs(areaOf(ellipse(a, b, count)) / (Math.PI * a * b) - 1)).toBeLessThan(0.01);
  });

  it('is left with far fewer corners and the same area within half a hundredth', () => {
    const stroke = ellipse(60, 60, 300);
    const kept = simplifyStroke(stroke);
    expect(kept.length).toBeLessThan(75);
    expect(Math.abs(areaOfSpots(kept) / areaOfSpots(stroke) - 1)).toBeLessThanOrEqual(0.005);
  });

  it('loses the ends that overshoot each other, and hooks at the ends', () => {
    const over = ellipse(60, 60, 104, 0, 1.04).map((p, i) => ({
      x: p.x + (i > 100 ? (i - 100) * -2 : 0),
      y: p.y,
    }));
    expect(Math.abs(areaOf(over) / (Math.PI * 3600) - 1)).toBeLessThan(0.015);
    const round = ellipse(60, 60, 100);
    const hooked = [...round, { x: 162, y: 94 }, { x: 156, y: 89 }];
    expect(trimStroke(hooked).length).toBeLessThan(hooked.length);
  });

  it('drops an end that goes over the beginning once more', () => {
    const over = ellipse(60, 60, 20, 0, 20 / 18);
    expect(Math.abs(areaOf(over) / (Math.PI * 3600) - 1)).toBeLessThan(0.015);
  });

  it('keeps the corners of a square', () => {
    const side = (x0: number, y0: number, dx: number, dy: number) =>
      Array.from({ length: 10 }, (_, i) => ({ x: x0 + dx * i * 8, y: y0 + dy * i * 8 }));
    const square = [...side(0, 0, 1, 0), ...side(80, 0, 0, 1), ...side(80, 80, -1, 0), ...side(0, 80, 0, -1)];
    const kept = simplifyStroke(roundStroke(trimStroke(square)));
    expect(kept).toHaveLength(4);
    expect(areaOfSpots(kept)).toBeCloseTo(6400, 6);
  });
});
