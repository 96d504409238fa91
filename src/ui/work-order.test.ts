import { describe, expect, it } from 'vitest';
import { edgeWords } from './work-order';

describe('edgeWords', () => {
  it('draws runs of numbers together', () => {
    expect(edgeWords([3])).toBe('edge 3');
    expect(edgeWords([1, 2])).toBe('edges 1, 2');
    expect(edgeWords([1, 2, 3, 4, 7, 9, 10])).toBe('edges 1–4, 7, 9, 10');
  });
});
