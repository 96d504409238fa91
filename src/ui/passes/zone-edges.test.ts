import { describe, expect, it } from 'vitest';
import type { PlaneRings, XY } from '../../measure/types';
import { halfTurn } from './passes-edits';
import { longestEdges, nearestEdge } from './zone-edges';

/** 40 m to the east, 10 m to the north; drawn leftwards, its south side in two clicks. */
const LONG: PlaneRings = [
  [
    [0, 0],
    [15, 0.01],
    [40, 0],
    [40, 10],
    [0, 10],
    [0, 0],
  ],
];

describe('edges of a zone', () => {
  it('joins what is straight, tells headings by the compass and which way an edge faces', () => {
    const edges = longestEdges([LONG]);
    expect(edges).toHaveLength(4);
    expect(edges.map((edge) => Math.round(edge.lengthM))).toEqual([40, 40, 10, 10]);
    expect(edges.map((edge) => Math.round(edge.headingDeg))).toEqual([90, 90, 0, 0]);
    expect(edges.map((edge) => edge.facesDeg).sort((a, b) => a - b)).toEqual([0, 90, 180, 270]);
  });

  it('faces out of the ground whichever way the ring runs, and into a hole', () => {
    const turned: PlaneRings = [[...(LONG[0] ?? [])].reverse()];
    const south = nearestEdge([turned], [20, -3]);
    expect(south?.facesDeg).toBeCloseTo(180, 6);
    const hole: XY[] = [
      [10, 4],
      [20, 4],
      [20, 6],
      [10, 6],
      [10, 4],
    ];
    for (const ring of [hole, [...hole].reverse()]) {
      const edge = nearestEdge([[LONG[0] ?? [], ring]], [15, 4.1]);
      // the ground lies south of the hole's south side, which so faces north
      expect(edge?.lengthM).toBeCloseTo(10, 9);
      expect(edge?.facesDeg).toBeCloseTo(0, 6);
    }
  });

  it('cuts a bend into stretches rather than take it for one edge', () => {
    const circle = Array.from({ length: 181 }, (_, i): XY => {
      const angle = (i * 2 * Math.PI) / 180;
      return [10 * Math.cos(angle), 10 * Math.sin(angle)];
    });
    const edges = longestEdges([[circle]]);
    expect(edges.length).toBeGreaterThan(20);
    expect(Math.max(...edges.map((edge) => edge.lengthM))).toBeLessThan(3);
    const sum = edges.reduce((all, edge) => all + edge.lengthM, 0);
    expect(sum).toBeCloseTo(2 * Math.PI * 10, 0);
  });

  it('finds none without ground', () => {
    expect(nearestEdge([], [0, 0])).toBeNull();
    expect(longestEdges([[[]]])).toEqual([]);
  });

  it('a line walked both ways has a heading under 180', () => {
    expect([0, 180, 190, -10, 359.5, 540].map(halfTurn)).toEqual([0, 0, 10, 170, 179.5, 0]);
    expect(halfTurn(-1e-15)).toBeLessThan(180);
  });
});
