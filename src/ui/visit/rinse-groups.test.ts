import { describe, expect, it } from 'vitest';
import type { RinseEdge } from '../../cover/types';
import { groupRinseEdges, sumLengths } from './rinse-groups';

const edge = (number: number, hardscapeId: string, lengthM: number): RinseEdge => ({
  number,
  hardscapeId,
  hardscapeName: hardscapeId,
  material: 'concrete',
  zoneIds: ['lawn'],
  lengthM,
  line: [],
  planeLine: [],
  bandM2: 1,
  water: null,
  near: null,
  downhill: null,
  treatment: 'rinse-toward-turf',
  stains: false,
});

describe('groupRinseEdges', () => {
  it('keeps every edge once, by hardscape in order of first appearance', () => {
    const edges = [edge(1, 'walk', 4), edge(2, 'drive', 10.5), edge(3, 'walk', 2.25)];
    const groups = groupRinseEdges(edges);
    expect(groups.map((group) => [group.hardscapeId, group.lengthM])).toEqual([
      ['walk', 6.25],
      ['drive', 10.5],
    ]);
    expect(groups[0]?.edges.map((one) => one.number)).toEqual([1, 3]);
    expect(sumLengths(edges)).toBe(16.75);
  });

  it('gives no group for no edge', () => {
    expect(groupRinseEdges([])).toEqual([]);
  });
});
