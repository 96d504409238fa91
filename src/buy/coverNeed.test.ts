import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverNeed } from './coverNeed';
import { compareScores, scoreOfPack } from './goal';
import { BUY_GOALS, type BuyGoal } from './types';

const sizes = (goal: BuyGoal, packs: readonly (readonly [number, number])[]) =>
  packs.map(([content, price]) => ({ content, score: scoreOfPack(goal, price, content) }));

describe('coverNeed', () => {
  it('takes as many packs as hold the need, and none for none', () => {
    expect(coverNeed(10, sizes('cost', [[4, 5]]), 0)?.counts).toEqual([3]);
    expect(coverNeed(12, sizes('cost', [[4, 5]]), 0)?.counts).toEqual([3]);
    expect(coverNeed(0, sizes('cost', [[4, 5]]), 0)?.counts).toEqual([0]);
  });

  it('lets a need pass a whole pack by its slack', () => {
    expect(coverNeed(12.000001, sizes('cost', [[4, 5]]), 1e-5)?.counts).toEqual([3]);
    expect(coverNeed(12.0001, sizes('cost', [[4, 5]]), 1e-5)?.counts).toEqual([4]);
  });

  it('says that without a size there is no choice', () => {
    expect(coverNeed(1, [], 0)).toBeNull();
    expect(coverNeed(0, [], 0)?.counts).toEqual([]);
  });

  it('looks at each goal first, and at the others for ties', () => {
    // 16 lb at 29, 50 lb at 64: by hand for 76 lb
    const packs = [
      [16, 29],
      [50, 64],
    ] as const;
    expect(coverNeed(76, sizes('cost', packs), 0)?.counts).toEqual([2, 1]);
    expect(coverNeed(76, sizes('packs', packs), 0)?.counts).toEqual([0, 2]);
    expect(coverNeed(76, sizes('left', packs), 0)?.counts).toEqual([5, 0]);
    // two of 5 cost as much as one of 10: the one pack
    const alike = [
      [5, 10],
      [10, 20],
    ] as const;
    expect(coverNeed(10, sizes('cost', alike), 0)?.counts).toEqual([0, 1]);
  });

  it('is never bettered by any choice of up to four sizes, tried one by one', () => {
    const size = fc.tuple(fc.integer({ min: 3, max: 40 }), fc.integer({ min: 1, max: 60 }));
    const given = fc.tuple(
      fc.array(size, { minLength: 1, maxLength: 4 }),
      fc.integer({ min: 1, max: 70 }),
      fc.constantFrom(...BUY_GOALS),
    );
    fc.assert(
      fc.property(given, ([packs, need, goal]) => {
        const own = sizes(goal, packs);
        const found = coverNeed(need, own, 0);
        if (found === null) throw new Error('no choice found');
        const held = found.counts.reduce((sum, count, i) => sum + count * (own[i]?.content ?? 0), 0);
        expect(held).toBeGreaterThanOrEqual(need);
        const walk = (level: number, sum: number, score: readonly [number, number, number]): void => {
          const one = own[level];
          if (one === undefined) {
            if (sum >= need) expect(compareScores(found.score, score)).toBeLessThanOrEqual(0);
            return;
          }
          for (let count = 0; count <= Math.ceil(need / one.content); count++) {
            const [a, b, c] = one.score;
            walk(level + 1, sum + count * one.content, [
              score[0] + a * count,
              score[1] + b * count,
              score[2] + c * count,
            ]);
          }
        };
        walk(0, 0, [0, 0, 0]);
      }),
      { numRuns: 150 },
    );
  });
});
