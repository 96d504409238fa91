import fc from 'fast-check';
import { expect, it } from 'vitest';
import { orderWalk, wayBetween } from '../../src/cover/walk';
import type { XY } from '../../src/measure/types';

const lines = fc.array(
  fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 400 })), {
    minLength: 2,
    maxLength: 4,
  }),
  { minLength: 1, maxLength: 7 },
);

it('a walk takes every line once, and is no longer than the one that goes on to the nearest end', () => {
  fc.assert(
    fc.property(
      lines,
      fc.option(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 400 }))),
      (all, from) => {
        const items = all.map((line, id) => ({ id, line: line as XY[] }));
        const walk = orderWalk(items, from);
        expect(walk.map(({ id }) => id).sort()).toEqual(items.map(({ id }) => id));
        for (const { id, line } of walk) {
          const own = items[id]?.line ?? [];
          expect([own, [...own].reverse()]).toContainEqual(line);
        }
        expect(wayBetween(walk, from)).toBeLessThanOrEqual(greedyWay(items, from) + 1e-6);
      },
    ),
  );
});

/** Always on to the nearest end: written from its definition. */
function greedyWay(items: readonly { readonly line: readonly XY[] }[], from: XY | null): number {
  let left = [...items];
  let here = from ?? (left[0]?.line[0] as XY);
  let sum = 0;
  while (left.length > 0) {
    const ends = left.flatMap((item) => [
      { item, near: item.line[0] as XY, far: item.line.at(-1) as XY },
      { item, near: item.line.at(-1) as XY, far: item.line[0] as XY },
    ]);
    const away = ({ near }: { near: XY }): number => Math.hypot(near[0] - here[0], near[1] - here[1]);
    const next = ends.reduce((best, one) => (away(one) < away(best) ? one : best));
    sum += away(next);
    here = next.far;
    left = left.filter((item) => item !== next.item);
  }
  return sum;
}

/** The shortest way of all: every order, every line either way round. */
function leastWay(left: readonly (readonly XY[])[], here: XY): number {
  if (left.length === 0) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, line] of left.entries()) {
    const rest = left.filter((_, k) => k !== i);
    const [start, end] = [line[0] as XY, line.at(-1) as XY];
    for (const [near, far] of [
      [start, end],
      [end, start],
    ] as const) {
      const way = Math.hypot(near[0] - here[0], near[1] - here[1]);
      if (way < least) least = Math.min(least, way + leastWay(rest, far));
    }
  }
  return least;
}

it('a walk of up to five lines is seldom longer than the shortest of all, and never by half', () => {
  let [own, best] = [0, 0];
  fc.assert(
    fc.property(lines, (all) => {
      const items = all.slice(0, 5).map((line) => ({ line: line as XY[] }));
      const least = leastWay(
        items.map(({ line }) => line),
        [0, 0],
      );
      const way = wayBetween(orderWalk(items, [0, 0]), [0, 0]);
      expect(way).toBeLessThanOrEqual(1.5 * least + 1e-6);
      expect(way).toBeGreaterThanOrEqual(least - 1e-6);
      [own, best] = [own + way, best + least];
    }),
    { numRuns: 60 },
  );
  expect(own / best).toBeLessThan(1.02);
});
