import { describe, expect, it } from 'vitest';
import type { Rings } from '../yard/types';
import { movedCorner } from './moved-corner';

const square: Rings[] = [
  [
    [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
      [0, 0],
    ],
  ],
];

describe('movedCorner', () => {
  it('finds the corner that moved, the closing one too', () => {
    const after: Rings[] = [
      [
        [
          [0.5, 0],
          [1, 0],
          [1, 1],
          [0, 1],
          [0.5, 0],
        ],
      ],
    ];
    expect(movedCorner(square, after)).toEqual({ from: [0, 0], to: [0.5, 0] });
  });
  it('does not mind another winding or first corner', () => {
    const after: Rings[] = [
      [
        [
          [1, 1],
          [2, 0],
          [0, 0],
          [0, 1],
          [1, 1],
        ],
      ],
    ];
    expect(movedCorner(square, after)).toEqual({ from: [1, 0], to: [2, 0] });
  });
  it('is null for a moved zone, a new corner, a corner taken out and no change', () => {
    const moved: Rings[] = [
      [
        [
          [3, 3],
          [4, 3],
          [4, 4],
          [3, 4],
          [3, 3],
        ],
      ],
    ];
    const more: Rings[] = [
      [
        [
          [0, 0],
          [0.5, -1],
          [1, 0],
          [1, 1],
          [0, 1],
          [0, 0],
        ],
      ],
    ];
    expect(movedCorner(square, moved)).toBeNull();
    expect(movedCorner(square, more)).toBeNull();
    expect(movedCorner(more, square)).toBeNull();
    expect(movedCorner(square, square)).toBeNull();
  });
});
