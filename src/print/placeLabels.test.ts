import { describe, expect, it } from 'vitest';
import { type Box, boxesMeet, type Mm, placeLabels } from './placeLabels';

const square = (x: number, y: number, w: number, h: number): Mm[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
  [x, y],
];
const frame: Box = { x: 100, y: 100, halfW: 100, halfH: 100 };
const forms = [
  { halfW: 15, halfH: 4 },
  { halfW: 3, halfH: 3 },
];

describe('placeLabels', () => {
  it('keeps apart the labels of many small neighbours', () => {
    const wanted = Array.from({ length: 30 }, (_, i) => ({
      id: `z${i}`,
      parts: [[square(20 + (i % 6) * 5, 20 + Math.floor(i / 6) * 5, 5, 5)]],
      forms,
    }));
    const placed = placeLabels(wanted, [], frame);
    expect(placed).toHaveLength(30);
    placed.forEach((a, i) => {
      for (const b of placed.slice(i + 1)) expect(boxesMeet(a, b, 0)).toBe(false);
    });
  });
  it('takes the best form inside a roomy shape and never lies in its hole', () => {
    const ring = [square(10, 10, 100, 60), square(40, 30, 40, 20)];
    const [label] = placeLabels([{ id: 'a', parts: [ring], forms }], [], frame);
    expect(label).toMatchObject({ form: 0, leaderTo: null });
    const hole = { x: 60, y: 40, halfW: 20, halfH: 10 };
    expect(boxesMeet(label as Box, hole, 0)).toBe(false);
  });
  it('leads to a shape that is too small', () => {
    const [label] = placeLabels([{ id: 'a', parts: [[square(50, 50, 2, 2)]], forms }], [], frame);
    expect(label?.form).toBe(1);
    expect(label?.leaderTo?.[0]).toBeCloseTo(51, 0);
  });
});
