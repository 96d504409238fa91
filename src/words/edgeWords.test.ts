import { describe, expect, it } from 'vitest';
import { edgeKey, edgeWords, nearWords } from './edgeWords';

describe('edgeWords', () => {
  it('draws runs of numbers together', () => {
    expect(edgeWords([3])).toBe('edge E3');
    expect(edgeWords([1, 2])).toBe('edges E1, E2');
    expect(edgeWords([1, 2, 3, 4, 7, 9, 10])).toBe('edges E1–E4, E7, E9, E10');
    expect(edgeKey({ number: 12 })).toBe('E12');
  });
});

describe('nearWords', () => {
  it('names what is near, and how near', () => {
    expect(nearWords({ near: null }, 'us')).toBeNull();
    // 3.048 m is 10 ft
    const near = { sourceId: 'd', sourceKind: 'storm-drain', distanceM: 3.048 } as const;
    expect(nearWords({ near }, 'us')).toBe(
      'Storm drain 10.0\u00a0ft away: no rinse water toward it; sweep or wipe up instead.',
    );
  });
});
