import { describe, expect, it } from 'vitest';
import { crossingShare, distanceBetween, distanceToSegment, type Segment, spanWithin } from './segments';

const side: Segment = [
  [0, 0],
  [10, 0],
];

describe('spanWithin', () => {
  it('ends where the disc round the far point ends', () => {
    // other runs x 2..4 at 3 m; reach 5: 3-4-5 triangle gives x -2..8
    const span = spanWithin(
      side,
      [
        [2, 3],
        [4, 3],
      ],
      5,
    );
    expect(span?.[0]).toBe(0);
    expect(span?.[1]).toBeCloseTo(0.8, 12);
  });

  it('takes the whole of a parallel side at exactly its reach and none beyond', () => {
    expect(
      spanWithin(
        side,
        [
          [-1, 1],
          [11, 1],
        ],
        1,
      ),
    ).toEqual([0, 1]);
    expect(
      spanWithin(
        side,
        [
          [-1, 1.001],
          [11, 1.001],
        ],
        1,
      ),
    ).toBeNull();
  });

  it('finds a crossing side', () => {
    const span = spanWithin(
      side,
      [
        [5, -9],
        [5, 9],
      ],
      2,
    );
    expect(span?.[0]).toBeCloseTo(0.3, 12);
    expect(span?.[1]).toBeCloseTo(0.7, 12);
  });
});

describe('distances', () => {
  it('to a segment, past its end and beside it', () => {
    expect(distanceToSegment([13, 4], side)).toBeCloseTo(5, 12);
    expect(distanceToSegment([3, -2], side)).toBe(2);
    expect(
      distanceToSegment(
        [3, 4],
        [
          [0, 0],
          [0, 0],
        ],
      ),
    ).toBe(5);
  });

  it('between segments is 0 where they cross', () => {
    expect(
      distanceBetween(side, [
        [5, -1],
        [5, 1],
      ]),
    ).toBe(0);
    expect(
      distanceBetween(side, [
        [12, 0],
        [15, 4],
      ]),
    ).toBe(2);
    expect(
      crossingShare(side, [
        [0, 1],
        [10, 1],
      ]),
    ).toBeNull();
  });
});
