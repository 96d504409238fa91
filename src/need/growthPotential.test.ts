import { describe, expect, it } from 'vitest';
import { growthPotential, growthPotentials, temperatureOfGrowth } from './growthPotential';

describe('growth potential', () => {
  it.each([0.1, 0.25, 0.5, 1])('%d is undone by its temperature', (potential) => {
    for (const season of ['cool-season', 'warm-season'] as const)
      expect(growthPotential(temperatureOfGrowth(potential, season), season)).toBeCloseTo(potential, 12);
  });
  it('is not known without twelve temperatures', () => {
    for (const monthlyMeanC of [null, [1, 2, 3], Array<number>(12).fill(Number.NaN)])
      expect(growthPotentials({ monthlyMeanC, source: '' }, 'cool-season')).toBeNull();
  });
});
