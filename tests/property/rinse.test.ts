import fc from 'fast-check';
import { expect, it } from 'vitest';
import { rinseEdges } from '../../src/cover/rinse';
import { boxRing, laidGround, laidZone, testPlane } from '../../src/cover/testGround';
import type { RinseEdge } from '../../src/cover/types';
import type { XY } from '../../src/measure/types';

const plane = testPlane();
type Box = readonly [number, number, number, number];
type Turn = (p: XY) => XY;

const same: Turn = (p) => p;
const mirror: Turn = (p) => [-p[0], p[1]];
const rotate =
  (angle: number): Turn =>
  ([x, y]) => [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];

const apart = (a: Box, b: Box): boolean => a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1];

const anyBox = fc
  .tuple(
    fc.integer({ min: -120, max: 120 }),
    fc.integer({ min: -120, max: 120 }),
    fc.integer({ min: 5, max: 100 }),
    fc.integer({ min: 5, max: 100 }),
  )
  .map(([x, y, w, h]): Box => [x / 10, y / 10, (x + w) / 10, (y + h) / 10]);

/** One hardscape with up to four treated boxes that do not overlap it. */
const ground = fc
  .record({
    hard: anyBox,
    soft: fc.array(anyBox, { minLength: 1, maxLength: 4 }),
    spreadM: fc.integer({ min: 1, max: 30 }),
  })
  .map(({ hard, soft, spreadM }) => ({
    hard,
    soft: soft.filter((one) => apart(one, hard)),
    spreadM: spreadM / 10,
  }));
type Ground = { hard: Box; soft: Box[]; spreadM: number };

const corners = (box: Box, turn: Turn): XY[] => boxRing(...box).map(turn);

function edgesOf({ hard, soft, spreadM }: Ground, turn: Turn = same): RinseEdge[] {
  return rinseEdges({
    treated: soft.map((box, i) => ({
      zone: laidGround(`soft-${i}`, [[corners(box, turn)]], plane),
      spreadM,
      treatment: 'rinse-toward-turf',
      stains: false,
    })),
    hardscapes: [laidZone('hard', 'hardscape', [[corners(hard, turn)]], plane)],
    sources: [],
    plane,
  });
}
const total = (edges: readonly RinseEdge[]): number => edges.reduce((sum, edge) => sum + edge.lengthM, 0);
const perimeter = ([x0, y0, x1, y1]: Box): number => 2 * (x1 - x0 + y1 - y0);

it('never lists more than the outline and grows with the spread', () => {
  fc.assert(
    fc.property(ground, (one) => {
      const less = total(edgesOf(one));
      const more = total(edgesOf({ ...one, spreadM: one.spreadM * 1.5 }));
      expect(less).toBeLessThanOrEqual(perimeter(one.hard) * (1 + 1e-5));
      expect(more).toBeGreaterThanOrEqual(less * (1 - 1e-5));
    }),
  );
});

it('gives the same lengths for a mirrored and a rotated yard', () => {
  fc.assert(
    fc.property(ground, fc.double({ min: 0, max: 6.28, noNaN: true }), (one, angle) => {
      const plain = total(edgesOf(one));
      // a stretch within rounding of the least length may be kept in one and dropped in the other
      const slack = 1e-3 + (edgesOf(one).some((edge) => edge.lengthM < 0.0501) ? 0.2 : 0);
      expect(Math.abs(total(edgesOf(one, mirror)) - plain)).toBeLessThan(slack);
      expect(Math.abs(total(edgesOf(one, rotate(angle))) - plain)).toBeLessThan(slack);
    }),
  );
});

/** Distance from a point to a box, 0 inside: written from its definition, apart from the code under test. */
const toBox = ([x, y]: XY, [x0, y0, x1, y1]: Box): number =>
  Math.hypot(Math.max(x0 - x, 0, x - x1), Math.max(y0 - y, 0, y - y1));

it('agrees with points each 5 cm along the outline, asked one by one', () => {
  fc.assert(
    fc.property(ground, (one) => {
      const edges = edgesOf(one);
      const ring = boxRing(...one.hard);
      const stepM = 0.05;
      let reached = 0;
      for (let i = 1; i < ring.length; i += 1) {
        const [a, b] = [ring[i - 1] as XY, ring[i] as XY];
        const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
        const count = Math.round(length / stepM);
        for (let k = 0; k < count; k += 1) {
          const t = (k + 0.5) / count;
          const p: XY = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
          if (one.soft.some((box) => toBox(p, box) <= one.spreadM + 1e-6)) reached += length / count;
        }
      }
      // a run of the outline ends at most 1 step off at each end; at most 2 runs a treated box and side
      const ends = 2 * Math.max(edges.length, one.soft.length * 4);
      expect(Math.abs(total(edges) - reached)).toBeLessThanOrEqual(stepM * ends + 1e-3);
      for (const edge of edges) {
        for (const p of edge.planeLine) {
          expect(Math.min(...one.soft.map((box) => toBox(p, box)))).toBeLessThanOrEqual(one.spreadM + 2e-6);
        }
      }
    }),
    { numRuns: 300 },
  );
});

/** Up to four hardscapes that may overlap, adjoin or lie in each other; treated boxes lie beside them. */
const hardGround = fc
  .record({
    first: anyBox,
    hard: fc.array(fc.tuple(anyBox, fc.constantFrom('any', 'inside', 'east', 'twice')), { maxLength: 3 }),
    soft: fc.array(anyBox, { minLength: 1, maxLength: 3 }),
    spreadM: fc.integer({ min: 1, max: 30 }),
    isFirst: fc.boolean(),
  })
  .map(({ first, hard, soft, spreadM, isFirst }) => {
    const [x0, y0, x1, y1] = first;
    const near = hard.map(([box, how]): Box => {
      const [w, h] = [box[2] - box[0], box[3] - box[1]];
      const [dx, dy] = [Math.min(w, x1 - x0), Math.min(h, y1 - y0)];
      if (how === 'inside') return [x0, y1 - dy, x0 + dx, y1];
      if (how === 'east') return [x1, y0, x1 + w, y0 + h];
      return how === 'twice' ? first : box;
    });
    const all = (isFirst ? [first, ...near] : [...near, first]).map(
      (box) => box.map(toGrid) as unknown as Box,
    );
    return {
      hard: all,
      soft: soft.filter((one) => all.every((box) => apart(one, box))),
      spreadM: spreadM / 10,
    };
  });
type HardGround = { hard: Box[]; soft: Box[]; spreadM: number };
const toGrid = (x: number): number => Math.round(x * 10) / 10;

function edgesOfUnion({ hard, soft, spreadM }: HardGround, turn: Turn = same): RinseEdge[] {
  return rinseEdges({
    treated: soft.map((box, i) => ({
      zone: laidGround(`soft-${i}`, [[corners(box, turn)]], plane),
      spreadM,
      treatment: 'rinse-toward-turf',
      stains: false,
    })),
    hardscapes: hard.map((box, i) => laidZone(`hard-${i}`, 'hardscape', [[corners(box, turn)]], plane)),
    sources: [],
    plane,
  });
}

/** Middles of the faces of 10 cm cells of ground between hardscape and none: the union's outline, bit by bit. */
function facesOf(hard: readonly Box[]): XY[] {
  const cells = new Set<number>();
  const keyOf = (i: number, j: number): number => 10_000 * i + j;
  for (const box of hard) {
    const [x0, y0, x1, y1] = box.map((one) => Math.round(one * 10)) as [number, number, number, number];
    for (let i = x0; i < x1; i += 1) for (let j = y0; j < y1; j += 1) cells.add(keyOf(i, j));
  }
  const faces: XY[] = [];
  for (const cell of cells) {
    const i = Math.round(cell / 10_000);
    const j = cell - 10_000 * i;
    if (!cells.has(keyOf(i - 1, j))) faces.push([i / 10, (j + 0.5) / 10]);
    if (!cells.has(keyOf(i + 1, j))) faces.push([(i + 1) / 10, (j + 0.5) / 10]);
    if (!cells.has(keyOf(i, j - 1))) faces.push([(i + 0.5) / 10, j / 10]);
    if (!cells.has(keyOf(i, j + 1))) faces.push([(i + 0.5) / 10, (j + 1) / 10]);
  }
  return faces;
}

it('several hardscapes have the edges of their union, each once', () => {
  fc.assert(
    fc.property(hardGround, fc.double({ min: 0, max: 6.28, noNaN: true }), (one, angle) => {
      fc.pre(one.soft.length > 0);
      const faces = facesOf(one.hard);
      const wide = { ...one, spreadM: 100 };
      expect(Math.abs(total(edgesOfUnion(wide)) - faces.length * 0.1)).toBeLessThan(2e-3);
      expect(Math.abs(total(edgesOfUnion(wide, rotate(angle))) - faces.length * 0.1)).toBeLessThan(5e-3);
    }),
    { numRuns: 80 },
  );
}, 30_000);

it('of the union it lists what product reaches', () => {
  fc.assert(
    fc.property(hardGround, (one) => {
      const edges = edgesOfUnion(one);
      const reached = facesOf(one.hard).filter((p) =>
        one.soft.some((box) => toBox(p, box) <= one.spreadM + 1e-6),
      );
      // a run ends at most half a face off at either end, and a bit under 5 cm may be dropped beside it
      const slack = 0.1 * (edges.length + 4 * one.soft.length) + 2e-3;
      expect(Math.abs(total(edges) - reached.length * 0.1)).toBeLessThanOrEqual(slack);
    }),
    { numRuns: 80 },
  );
}, 30_000);
