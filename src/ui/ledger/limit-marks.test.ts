import { describe, expect, it } from 'vitest';
import { capMark, needMark } from './limit-marks';

/** Every height that a path of M, V and H passes. */
const heights = (path: string) =>
  [...path.matchAll(/[MV](-?[\d.]+)(?: (-?[\d.]+))?/g)].map((m) =>
    Number(m[0].startsWith('V') ? m[1] : m[2]),
  );

describe('marks of need and cap at one place', () => {
  const [top, height] = [28, 14];
  const need = needMark(100, top, height);
  const cap = capMark(100, top, height);

  it('stand one above the other, so that both are read', () => {
    expect(Math.max(...heights(cap))).toBeLessThanOrEqual(Math.min(...heights(need.line)));
    expect(need.ringY).toBeGreaterThan(top + height);
    expect(Math.min(...heights(cap))).toBeLessThan(top);
  });
  it('each reach into the bar', () => {
    expect(Math.max(...heights(cap))).toBeGreaterThan(top);
    expect(Math.min(...heights(need.line))).toBeLessThan(top + height);
  });
});
