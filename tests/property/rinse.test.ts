import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type RinseInput, rinseEdges } from '../../src/cover/rinse';
import { boxRing, laidGround, laidZone, testPlane } from '../../src/cover/testGround';
import type { RinseEdge } from '../../src/cover/types';
import type { XY } from '../../src/measure/types';
import { anyBox, apart, type Box, type Face, isBlocked, isReached, outerPart, toBox } from './rinseGround';

const plane = testPlane();
type Turn = (p: XY) => XY;

const same: Turn = (p) => p;
const mirror: Turn = (p) => [-p[0], p[1]];
const rotate =
  (angle: number): Turn =>
  ([x, y]) => [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];

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
        // the ring runs counter-clockwise: out is right of it
        const out: XY = [Math.sign(b[1] - a[1]), -Math.sign(b[0] - a[0])];
        for (let k = 0; k < count; k += 1) {
          const t = (k + 0.5) / count;
          const p: XY = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
          if (isReached({ at: p, out }, one.soft, one.spreadM)) reached += length / count;
        }
      }
      // a run of the outline ends at most 1 step off at each end; at most 2 runs a treated box and side;
      // gaps of up to half a metre between them may be joined
      const ends = 2 * Math.max(edges.length, one.soft.length * 4);
      expect(reached - total(edges)).toBeLessThanOrEqual(stepM * ends + 1e-3);
      expect(total(edges) - reached).toBeLessThanOrEqual(stepM * ends + 0.5 * 4 * one.soft.length + 1e-3);
      for (const edge of edges) {
        for (const p of edge.planeLine) {
          expect(Math.min(...one.soft.map((box) => toBox(p, box)))).toBeLessThanOrEqual(one.spreadM + 0.5);
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
function facesOf(hard: readonly Box[]): Face[] {
  const cells = new Set<number>();
  const keyOf = (i: number, j: number): number => 10_000 * i + j;
  for (const box of hard) {
    const [x0, y0, x1, y1] = box.map((one) => Math.round(one * 10)) as [number, number, number, number];
    for (let i = x0; i < x1; i += 1) for (let j = y0; j < y1; j += 1) cells.add(keyOf(i, j));
  }
  const faces: Face[] = [];
  for (const cell of cells) {
    const i = Math.round(cell / 10_000);
    const j = cell - 10_000 * i;
    if (!cells.has(keyOf(i - 1, j))) faces.push({ at: [i / 10, (j + 0.5) / 10], out: [-1, 0] });
    if (!cells.has(keyOf(i + 1, j))) faces.push({ at: [(i + 1) / 10, (j + 0.5) / 10], out: [1, 0] });
    if (!cells.has(keyOf(i, j - 1))) faces.push({ at: [(i + 0.5) / 10, j / 10], out: [0, -1] });
    if (!cells.has(keyOf(i, j + 1))) faces.push({ at: [(i + 0.5) / 10, (j + 1) / 10], out: [0, 1] });
  }
  return faces;
}

it('several hardscapes have the edges of their union, each once', () => {
  fc.assert(
    fc.property(hardGround, fc.double({ min: 0, max: 6.28, noNaN: true }), (one, angle) => {
      fc.pre(one.soft.length > 0);
      // all round: treated ground on every side that goes further than any of it
      const frame: Box[] = [
        [-90, -90, 90, -40],
        [-90, 40, 90, 90],
        [-90, -40, -40, 40],
        [40, -40, 90, 40],
      ];
      const faces = facesOf(one.hard);
      const wide = { ...one, soft: frame, spreadM: 200 };
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
      const reached = facesOf(one.hard).filter((face) => isReached(face, one.soft, one.spreadM));
      // a run ends at most half a face off at either end, and a bit under 5 cm may be dropped beside it
      const slack = 0.1 * (edges.length + 4 * one.soft.length) + 2e-3;
      expect(reached.length * 0.1 - total(edges)).toBeLessThanOrEqual(slack);
      // and gaps of up to half a metre may be joined
      const joined = 0.5 * 4 * one.soft.length * one.hard.length;
      expect(total(edges) - reached.length * 0.1).toBeLessThanOrEqual(slack + joined);
    }),
    { numRuns: 80 },
  );
}, 30_000);

/** Structures beside, between and behind, none of them on hardscape or treated ground. */
const builtGround = fc
  .tuple(hardGround, fc.array(anyBox, { minLength: 1, maxLength: 3 }))
  .map(([one, built]) => ({
    ...one,
    built: built.filter((box) => [...one.hard, ...one.soft].every((other) => apart(box, other))),
  }));

function edgesBehind(
  { hard, soft, spreadM }: HardGround,
  built: readonly Box[],
  change: Partial<RinseInput> = {},
): RinseEdge[] {
  return rinseEdges({
    treated: soft.map((box, i) => ({
      zone: laidGround(`soft-${i}`, [[boxRing(...box)]], plane),
      spreadM,
      treatment: i % 2 === 0 ? 'rinse-toward-turf' : 'sweep-then-rinse',
      stains: i === 2,
    })),
    hardscapes: hard.map((box, i) => laidZone(`hard-${i}`, 'hardscape', [[boxRing(...box)]], plane)),
    structures: built.map(
      (box, i) => laidZone(`house-${i}`, 'structure', [[boxRing(...box)]], plane).measured,
    ),
    sources: [],
    plane,
    ...change,
  });
}

it('a structure never makes edges longer, and hides only what no treated ground sees', () => {
  fc.assert(
    fc.property(builtGround, (one) => {
      const open = edgesBehind(one, []);
      const edges = edgesBehind(one, one.built);
      expect(total(edges)).toBeLessThanOrEqual(total(open) + 1e-3);
      const isListed = ([x, y]: XY): boolean =>
        edges.some(({ planeLine }) =>
          planeLine.slice(1).some((b, i) => {
            const a = planeLine[i] as XY;
            const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
            const t = ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy);
            return (
              t >= 0 && t <= 1 && Math.abs((x - a[0]) * dy - (y - a[1]) * dx) < 1e-6 * Math.hypot(dx, dy)
            );
          }),
        );
      let [unlisted, unseen] = [0, 0];
      for (const face of facesOf(one.hard)) {
        if (!isReached(face, one.soft, one.spreadM)) continue;
        // the nearest treated ground, or some in a grid of 10 cm, that reaches the face by a free way
        const isSeen = one.soft.some((box) => {
          const part = outerPart(box, face);
          if (!part) return false;
          const nearest: XY = [
            Math.min(part[2], Math.max(part[0], face.at[0])),
            Math.min(part[3], Math.max(part[1], face.at[1])),
          ];
          const isInReach = toBox(face.at, part) <= one.spreadM + 1e-6;
          if (isInReach && !isBlocked(face.at, nearest, one.built)) return true;
          for (let x = part[0]; x <= part[2] + 1e-9; x += 0.1)
            for (let y = part[1]; y <= part[3] + 1e-9; y += 0.1) {
              const isNear = Math.hypot(x - face.at[0], y - face.at[1]) <= one.spreadM;
              if (isNear && !isBlocked(face.at, [x, y], one.built)) return true;
            }
          return false;
        });
        if (isSeen && !isListed(face.at)) unlisted += 1;
        if (!isSeen && isListed(face.at)) unseen += 1;
      }
      // runs end up to half a face off, and bits under 5 cm are dropped
      const ends = edges.length + one.soft.length + one.built.length;
      expect(unlisted).toBeLessThanOrEqual(2 * ends);
      // the grid misses slivers; a joined gap is of up to five faces
      expect(unseen).toBeLessThanOrEqual(7 * ends);
    }),
    { numRuns: 60 },
  );
}, 60_000);

/** A drive, a strip of ground beside it with up to three buildings on it, and a lawn beyond. */
const lane = fc
  .record({
    gap: fc.integer({ min: 3, max: 12 }),
    beyond: fc.integer({ min: 1, max: 20 }),
    built: fc.array(
      fc.tuple(
        fc.integer({ min: 0, max: 170 }),
        fc.integer({ min: 8, max: 90 }),
        fc.integer({ min: 1, max: 10 }),
      ),
      { minLength: 1, maxLength: 3 },
    ),
  })
  .map(({ gap, beyond, built }) => ({
    hard: [[0, 0, 3, 20]] as Box[],
    soft: [[3 + gap / 10, 0, 12, 20]] as Box[],
    spreadM: (gap + beyond) / 10,
    built: built.map(([from, long, deep]): Box => {
      const inner = 3 + (gap / 10) * (1 - Math.min(1, deep / 10));
      return [inner, from / 10, 3 + gap / 10, Math.min(20, (from + long) / 10)];
    }),
  }));

it('behind buildings an edge is listed as far as some treated ground sees it', () => {
  fc.assert(
    fc.property(lane, (one) => {
      const edges = edgesBehind(one, one.built);
      const [x0] = one.soft[0] as Box;
      const stepM = 0.04;
      let seenM = 0;
      for (let y = stepM / 2; y < 20; y += stepM) {
        let isSeen = false;
        for (
          let v = Math.max(0.005, y - one.spreadM);
          v < Math.min(20, y + one.spreadM) && !isSeen;
          v += 0.01
        )
          isSeen = Math.hypot(x0 - 3, v - y) <= one.spreadM && !isBlocked([3, y], [x0, v], one.built);
        if (isSeen) seenM += stepM;
      }
      // each building ends at most two runs, which the steps find to 6 cm, and bits under 5 cm are dropped;
      // a gap of less than half a metre behind it is joined
      const slackM = 0.15 * (1 + one.built.length);
      expect(seenM - total(edges)).toBeLessThanOrEqual(slackM);
      expect(total(edges) - seenM).toBeLessThanOrEqual(slackM + 0.5 * one.built.length);
    }),
    { numRuns: 40 },
  );
}, 60_000);

it('splash bands lie in hardscape and within reach, each square metre once, and rinsing adds up', () => {
  fc.assert(
    fc.property(builtGround, fc.integer({ min: 2, max: 60 }), (one, flow) => {
      const flowLPerS = flow / 100;
      const edges = edgesBehind(one, one.built, { flowLPerS });
      const bandM2 = edges.reduce((sum, edge) => sum + edge.bandM2, 0);
      // 10 cm cells of hardscape whose middle is within reach of treated ground, half a cell to spare
      const cells = new Set<string>();
      for (const [x0, y0, x1, y1] of one.hard)
        for (let i = Math.round(x0 * 10); i < Math.round(x1 * 10); i += 1)
          for (let j = Math.round(y0 * 10); j < Math.round(y1 * 10); j += 1) {
            const at: XY = [(i + 0.5) / 10, (j + 0.5) / 10];
            if (one.soft.some((box) => toBox(at, box) <= one.spreadM + 0.08)) cells.add(`${i} ${j}`);
          }
      expect(bandM2).toBeLessThanOrEqual(cells.size * 0.01 + 1e-3);
      for (const { bandM2: own, lengthM, water } of edges) {
        expect(own).toBeGreaterThanOrEqual(0);
        // common practice, no source: 3 m in 10 s, or 1 L/m², whichever takes longer
        expect(water?.litres).toBeCloseTo(Math.max(own, (flowLPerS * lengthM * 10) / 3), 6);
        expect(water?.seconds).toBeCloseTo((water?.litres ?? 0) / flowLPerS, 6);
      }
      expect(edges.map((edge) => edge.number)).toEqual(edges.map((_, i) => i + 1));
    }),
    { numRuns: 60 },
  );
}, 60_000);
