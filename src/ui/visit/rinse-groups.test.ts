import { describe, expect, it } from 'vitest';
import type { RinseEdge } from '../../cover/types';
import { groupRinseEdges } from './rinse-groups';

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
  it('keeps every edge once and the walking order, a hardscape again where the walk comes back to it', () => {
    const edges = [edge(1, 'walk', 4), edge(2, 'walk', 2.25), edge(3, 'drive', 10.5), edge(4, 'walk', 1)];
    const groups = groupRinseEdges(edges);
    expect(groups.map((group) => [group.hardscapeId, group.lengthM])).toEqual([
      ['walk', 6.25],
      ['drive', 10.5],
      ['walk', 1],
    ]);
    expect(groups.flatMap((group) => group.edges)).toEqual(edges);
  });

  it('gives no group for no edge', () => {
    expect(groupRinseEdges([])).toEqual([]);
  });
});
