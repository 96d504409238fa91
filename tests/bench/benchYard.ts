import { createPlane } from '../../src/measure/plane';
import { emptyYard, newDose, newProduct, newVisit, newZone } from '../../src/yard/defaults';
import type { Position, Ring, Yard, Zone, ZoneKind } from '../../src/yard/types';

/** Repeatable pseudo-random numbers from 0 to 1 (mulberry32, public domain). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const COLUMNS = 12;
const ROWS = 10;
const CELL_M = 9;
/** Points within each border of a cell, its corners aside. */
const ON_BORDER = 5;
const PLANE = createPlane([-83, 40]);

/** Kinds of the cells, taken in turn: mostly lawns, as in a yard. */
const CELL_KINDS: readonly ZoneKind[] = [
  'turf', 'turf', 'hardscape', 'turf', 'turf', 'structure', 'turf', 'turf', 'turf', 'hardscape', 'turf',
  'other', 'turf', 'turf', 'hardscape', 'turf', 'turf', 'turf', 'water', 'turf',
]; // biome-ignore format: a table

/**
 * An invented yard of 200 zones and 5,000 corners, always the same: 120 cells of 24 corners that share
 * wavy borders corner by corner, and 80 beds of 26 or 27 corners, most inside a cell, one in five across
 * a border. Two cells in 120 stand a hand's breadth off their neighbour, so that there are gaps to find.
 */
export function makeBenchYard(): Yard {
  const random = seededRandom(20310601);
  const wobble = (reach: number) => (random() - 0.5) * 2 * reach;
  const knots = Array.from({ length: ROWS + 1 }, (_, j) =>
    Array.from({ length: COLUMNS + 1 }, (_, i): Position => [i * CELL_M + wobble(1), j * CELL_M + wobble(1)]),
  );
  const knot = (i: number, j: number): Position => knots[j]?.[i] ?? [0, 0];
  const border = (a: Position, b: Position): Position[] => [
    a,
    ...Array.from({ length: ON_BORDER }, (_, k): Position => {
      const t = (k + 1) / (ON_BORDER + 1);
      return [a[0] + t * (b[0] - a[0]) + wobble(0.2), a[1] + t * (b[1] - a[1]) + wobble(0.2)];
    }),
  ];
  const across = Array.from({ length: ROWS + 1 }, (_, j) =>
    Array.from({ length: COLUMNS }, (_, i) => border(knot(i, j), knot(i + 1, j))),
  );
  const up = Array.from({ length: COLUMNS + 1 }, (_, i) =>
    Array.from({ length: ROWS }, (_, j) => border(knot(i, j), knot(i, j + 1))),
  );
  const backwards = (line: Position[], end: Position): Position[] => [end, ...line.slice(1).reverse()];
  const zones: Zone[] = [];
  for (let j = 0; j < ROWS; j++) {
    for (let i = 0; i < COLUMNS; i++) {
      const n = j * COLUMNS + i;
      const corners = [
        ...(across[j]?.[i] ?? []),
        ...(up[i + 1]?.[j] ?? []),
        ...backwards(across[j + 1]?.[i] ?? [], knot(i + 1, j + 1)),
        ...backwards(up[i]?.[j] ?? [], knot(i, j + 1)),
      ];
      const shrink = n === 40 || n === 77 ? 0.98 : 1;
      const middle: Position = [(i + 0.5) * CELL_M, (j + 0.5) * CELL_M];
      zones.push(zoneOf(`cell-${n}`, CELL_KINDS[n % CELL_KINDS.length] ?? 'turf', corners, middle, shrink));
    }
  }
  for (let n = 0; n < 80; n++) {
    const cell = Math.floor((n * COLUMNS * ROWS) / 80);
    const isAcross = n % 5 === 0;
    const middle: Position = [
      ((cell % COLUMNS) + (isAcross ? 1 : 0.5)) * CELL_M + wobble(0.5),
      (Math.floor(cell / COLUMNS) + 0.5) * CELL_M + wobble(0.5),
    ];
    const count = n % 2 === 0 ? 26 : 27;
    const corners = Array.from({ length: count }, (_, k): Position => {
      const angle = (2 * Math.PI * k) / count;
      const radius = 1.5 + 0.4 * Math.sin(3 * angle + n) + wobble(0.05);
      return [middle[0] + radius * Math.cos(angle), middle[1] + radius * Math.sin(angle)];
    });
    zones.push(zoneOf(`bed-${n}`, 'bed', corners, middle, 1));
  }
  return { ...emptyYard('bench', 'Bench yard'), zones, products: [PRODUCT], visits: [VISIT], marks: MARKS };
}

function zoneOf(id: string, kind: ZoneKind, corners: readonly Position[], middle: Position, shrink: number) {
  const open = corners.map(
    ([x, y]): Position =>
      PLANE.toLonLat([middle[0] + shrink * (x - middle[0]), middle[1] + shrink * (y - middle[1])]),
  );
  return newZone(id, kind, [[[...open, open[0] as Position]]], { name: id });
}

const PRODUCT = newProduct('liquid', {
  name: 'Liquid 12-0-6',
  form: 'liquid-concentrate',
  analysis: { nPct: 12, p2o5Pct: 0, k2oPct: 6, slowNPctOfN: null, elementsPct: {} },
  densityKgPerL: 1.2,
  rate: { basis: 'volume-per-area', rateLPerM2: 0.0016 },
  packs: [{ id: 'pack-1', content: { unit: 'L', value: 1 }, price: 20 }],
  carrierLPerM2: 0.04,
  spreadDistanceM: 0.3,
  stainsHardscape: true,
  waterIn: true,
});

const VISIT = newVisit('visit', {
  name: 'Early summer',
  date: '2031-06-01',
  zones: { classes: ['turf-regular', 'turf-low-cut'], include: [], exclude: [] },
  doses: [newDose('dose', 'liquid')],
  tankL: 15,
});

const MARKS: Yard['marks'] = [
  { id: 'drain', name: 'Drain', kind: 'storm-drain', position: PLANE.toLonLat([3, 3]), extra: {} },
];

/** The yard after its `step`-th edit: one corner of one zone moved by up to 5 cm, other zones the same objects. */
export function moveOneCorner(yard: Yard, step: number): Yard {
  const random = seededRandom(977 + step);
  const index = Math.floor(random() * yard.zones.length);
  const zone = yard.zones[index] as Zone;
  const ring = zone.parts[0]?.[0] as Ring;
  const at = 1 + Math.floor(random() * (ring.length - 2));
  const [x, y] = PLANE.toPlane(ring[at] as Position);
  const moved = PLANE.toLonLat([x + (random() - 0.5) * 0.1, y + (random() - 0.5) * 0.1]);
  return { ...yard, zones: yard.zones.with(index, { ...zone, parts: [[ring.with(at, moved)]] }) };
}
