import { expect, it } from 'vitest';
import { orderWalk } from './walk';

it('goes on to the nearest end and turns a line that is met from its far end', () => {
  const items = [
    {
      id: 'a',
      line: [
        [0, 0],
        [10, 0],
      ],
    },
    {
      id: 'far',
      line: [
        [40, 0],
        [50, 0],
      ],
    },
    {
      id: 'turned',
      line: [
        [20, 5],
        [11, 0],
      ],
    },
  ] as const;
  const walk = orderWalk<{ id: string; line: readonly (readonly [number, number])[] }>(items);
  expect(walk.map((item) => item.id)).toEqual(['a', 'turned', 'far']);
  expect(walk[1]?.line).toEqual([
    [11, 0],
    [20, 5],
  ]);
  expect(items[2].line[0]).toEqual([20, 5]);
});
