import { describe, expect, it } from 'vitest';
import type { Position, Ring } from '../yard/types';
import { checkRing, findCrossings } from './crossings';

const ring = (...corners: Position[]): Ring => [...corners, corners[0] as Position];

describe('findCrossings', () => {
  it('finds the crossing of a bow tie at its middle', () => {
    expect(findCrossings(ring([0, 0], [2, 2], [2, 0], [0, 2]))).toEqual([[1, 1]]);
  });
  it('is silent on plain rings, open or closed, with corners in line or repeated', () => {
    expect(findCrossings(ring([0, 0], [1, 0], [2, 0], [2, 2], [0, 2]))).toEqual([]);
    expect(
      findCrossings([
        [0, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ]),
    ).toEqual([]);
    expect(findCrossings(ring([0, 0], [2, 0], [2, 0], [2, 2]))).toEqual([]);
  });
  it('finds a side folding back and a corner lying on another side', () => {
    expect(findCrossings(ring([0, 0], [4, 0], [2, 0], [2, 2])).length).toBeGreaterThan(0);
    expect(findCrossings(ring([0, 0], [4, 0], [4, 4], [2, 0], [0, 4]))).toContainEqual([2, 0]);
  });
  it('keeps its digits far from 0, 0', () => {
    const far = ring([-83, 40], [-82.99998, 40.00002], [-82.99998, 40], [-83, 40.00002]);
    const [at] = findCrossings(far);
    expect(at?.[0]).toBeCloseTo(-82.99999, 9);
    expect(at?.[1]).toBeCloseTo(40.00001, 9);
  });

  it('takes a ring across 180° as one piece of ground, whichever sign its longitudes have', () => {
    const lawn = ring(
      [179.9999, 0],
      [-179.9999, 0],
      [-179.9999, 1e-4],
      [180, 1e-4],
      [-180, 2e-4],
      [179.9999, 2e-4],
    );
    expect(findCrossings(lawn)).toEqual([]);
    expect(findCrossings(ring([-179.9999, 0], [-179.9999, 1e-4], [179.9999, 1e-4], [179.9999, 0]))).toEqual(
      [],
    );
    const [at] = findCrossings(ring([179.9999, 0], [-179.9998, 3e-4], [-179.9998, 0], [179.9999, 3e-4]));
    expect(at?.[0]).toBeCloseTo(-179.99995, 9);
    expect(at?.[1]).toBeCloseTo(1.5e-4, 9);
  });
});

describe('checkRing', () => {
  it('says what is wrong in a word that stays', () => {
    expect(checkRing(ring([0, 0], [1, 1]))[0]?.code).toBe('ring-too-short');
    expect(checkRing(ring([0, 0], [1, Number.NaN], [1, 1]))[0]?.code).toBe('ring-not-a-number');
    expect(checkRing(ring([0, 0], [2, 2], [2, 0], [0, 2]))[0]).toMatchObject({
      code: 'ring-self-crossing',
      place: { position: [1, 1] },
    });
    expect(checkRing(ring([0, 0], [1, 0], [1, 1]))).toEqual([]);
    expect(checkRing(ring([180, 0], [-180, 0], [180, 1]))[0]?.code).toBe('ring-too-short');
  });
});
