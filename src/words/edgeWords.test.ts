import { describe, expect, it } from 'vitest';
import type { RinseEdge } from '../cover/types';
import {
  downhillWords,
  edgeKey,
  edgeWords,
  nearWords,
  rinseRuleWords,
  rinseTimeWords,
  rinseTotalsWords,
  rinseWaterWords,
} from './edgeWords';

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

describe('what rinsing takes', () => {
  it('is told in seconds, then minutes, with the water', () => {
    expect(rinseTimeWords(44.6)).toBe('45\u00a0s');
    expect(rinseTimeWords(0.2)).toBe('1\u00a0s');
    expect(rinseTimeWords(210)).toBe('3.5\u00a0min');
    // 3.785 L is 1 gal
    expect(rinseWaterWords({ water: { seconds: 40, litres: 3.785411784 } }, 'us')).toBe(
      '40\u00a0s, 1\u00a0gal',
    );
    expect(rinseWaterWords({ water: null }, 'metric')).toBeNull();
  });
});

describe('rinse figures', () => {
  const edge = (seconds: number, litres: number) => ({
    lengthM: 10,
    bandM2: 5,
    water: { seconds, litres },
  });
  it('are no finer than a hose can be metered', () => {
    expect(rinseWaterWords(edge(4, 0.983), 'metric')).toBe('4\u00a0s, 0.98\u00a0L');
    const edges = [edge(100, 20.25), edge(110, 28.25)] as unknown as RinseEdge[];
    expect(rinseTotalsWords(edges, 'metric')).toMatch(/; 3\.5\u00a0min and 49\u00a0L of water$/);
  });

  it('say by which rule they come: 0.3 m/s are 10 s for 3 m; 1 L/m² is 1 mm', () => {
    const metric = rinseRuleWords(0.3, 1, 'metric').replaceAll('\u00a0', ' ');
    expect(metric).toContain(
      '3.3 s a metre, or until its splash band has 1 mm of water, whichever takes longer',
    );
    // 10 ft are 3.048 m: 10.16 s; 1 mm is 0.0394 in
    const us = rinseRuleWords(0.3, 1, 'us').replaceAll('\u00a0', ' ');
    expect(us).toContain('10 s for 10 ft, or until its splash band has 0.04 in of water');
  });
});

describe('downhillWords', () => {
  const downhill = { lengthM: 3, slope: 0.04, leadsTo: null };
  it('tells how much of the edge lies below the ground, and what lies down the fall', () => {
    expect(downhillWords({ lengthM: 10, near: null, downhill: null }, 'us')).toBeNull();
    expect(downhillWords({ lengthM: 3, near: null, downhill }, 'metric')).toMatch(
      /^Downhill side: the ground falls toward it, slope 4 %/,
    );
    expect(downhillWords({ lengthM: 10, near: null, downhill }, 'metric')).toContain(
      'toward 3.00\u00a0m of it',
    );
    const leadsTo = { sourceId: 'd', sourceKind: 'storm-drain', distanceM: 12 } as const;
    expect(downhillWords({ lengthM: 3, near: null, downhill: { ...downhill, leadsTo } }, 'metric')).toContain(
      'The fall leads to a storm drain 12.00\u00a0m on: let nothing run that way.',
    );
    expect(
      downhillWords({ lengthM: 3, near: leadsTo, downhill: { ...downhill, leadsTo } }, 'metric'),
    ).toMatch(/The fall leads there\.$/);
    expect(edgeKey({ number: 6, downhill })).toBe('E6▼');
  });
});
