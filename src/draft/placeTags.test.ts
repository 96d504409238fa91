import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, boxesMeet, freePlace, placeTags, type WantedTag } from './placeTags';

const tag = (id: string, x: number, y: number, fields: Partial<WantedTag> = {}): WantedTag => ({
  id,
  at: { x, y },
  aside: { x: 1, y: 0 },
  width: 40,
  height: 18,
  reach: 8,
  isOptional: false,
  ...fields,
});

describe('placeTags', () => {
  it('stands a tag off across the walk, clear of the line it names', () => {
    const [placed] = placeTags([tag('a', 100, 100)], []);
    expect(placed).toMatchObject({ y: 100, isFar: false });
    expect((placed?.x ?? 0) - 20).toBeGreaterThanOrEqual(108);
  });
  it('goes to the other side where the first is taken', () => {
    const taken: Box[] = [{ x: 140, y: 100, width: 60, height: 60 }];
    const [placed] = placeTags([tag('a', 100, 100)], taken);
    expect(placed?.x).toBeLessThan(100);
    expect(placed?.isFar).toBe(false);
  });
  it('leads away from crowded ground what must be seen, and leaves out what need not', () => {
    const taken: Box[] = [{ x: 100, y: 100, width: 110, height: 110 }];
    const placed = placeTags([tag('a', 100, 100), tag('b', 100, 100, { isOptional: true })], taken);
    expect(placed.map(({ id }) => id)).toEqual(['a']);
    expect(placed[0]?.isFar).toBe(true);
    expect(boxesMeet(placed[0] as Box, taken[0] as Box)).toBe(false);
  });
  it('keeps every optional tag clear of all others (random points and boxes)', () => {
    const number = fc.integer({ min: 0, max: 300 });
    const point = fc.record({ x: number, y: number, turn: fc.double({ min: 0, max: 6.3, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(point, { maxLength: 30 }), fc.array(point, { maxLength: 10 }), (points, boxes) => {
        const taken = boxes.map(({ x, y }) => ({ x, y, width: 30, height: 22 }));
        const wanted = points.map(({ x, y, turn }, i) =>
          tag(String(i), x, y, { aside: { x: Math.cos(turn), y: Math.sin(turn) }, isOptional: true }),
        );
        const placed = placeTags(wanted, taken);
        placed.forEach((one, i) => {
          for (const other of [...taken, ...placed.slice(i + 1)]) expect(boxesMeet(one, other)).toBe(false);
        });
      }),
      { numRuns: 60 },
    );
  });
  it('measures in mm where a unit is given', () => {
    const small = tag('a', 10, 10, { width: 8, height: 4, reach: 1.8 });
    const [placed] = placeTags([small], [], 0.22);
    expect(placed?.x).toBeCloseTo(10 + 1.8 + 3 * 0.22 + 4, 6);
  });
});

describe('freePlace', () => {
  it('takes the first place that is free', () => {
    const size = { width: 10, height: 10 };
    const taken = [{ x: 0, y: 0, width: 10, height: 10 }];
    expect(
      freePlace(
        [
          { x: 5, y: 5 },
          { x: 20, y: 0 },
        ],
        size,
        taken,
      ),
    ).toMatchObject({ x: 20, y: 0 });
    expect(freePlace([{ x: 5, y: 5 }], size, taken)).toBeNull();
  });
});
