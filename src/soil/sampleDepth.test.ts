import { describe, expect, it } from 'vitest';
import { M_PER_IN } from '../units/factors';
import { depthShown } from './sampleDepth';

describe('the depth of a sample as it is shown', () => {
  it.each([
    ['4 in are 10 cm', 4 * M_PER_IN, 'metric', 0.1],
    ['10 cm are 4 in', 0.1, 'us', 4 * M_PER_IN],
    ['4 in stay 4 in', 4 * M_PER_IN, 'us', 4 * M_PER_IN],
    ['10 cm stay 10 cm', 0.1, 'metric', 0.1],
    ['6 in to the millimetre', 6 * M_PER_IN, 'metric', 0.152],
    ['15 cm to the tenth of an inch', 0.15, 'us', 5.9 * M_PER_IN],
    ['7.5 cm as typed', 0.075, 'metric', 0.075],
    ['2.5 in as typed', 2.5 * M_PER_IN, 'us', 2.5 * M_PER_IN],
  ] as const)('%s', (_name, depthM, system, expected) =>
    expect(depthShown(depthM, system)).toBeCloseTo(expected, 9),
  );
});
