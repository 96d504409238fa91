import type { XY } from '../../measure/types';
import { type Frame, ringsInFrame } from './frame';
import { type Stretch, stretchesOf } from './slabRows';
import { endOf, type Row, startOf, type Work } from './work';

/** Neighbouring rows that are walked one after another, back and forth; lines in the plane, rows all along the heading. */
export interface Cell {
  readonly rows: readonly Row[];
  /** ground that its passes end before, m². */
  readonly missedM2: number;
}

/** Rows of neighbouring slabs hang together when their ground meets for so long, m. */
const MEETING_M = 0.05;

export interface CellGround {
  /** connected pieces of ground to be worked, each with its rings turned so that ground is on their left. */
  readonly need: readonly (readonly (readonly XY[])[])[];
  readonly zone: readonly (readonly XY[])[];
  readonly keepOff: readonly (readonly XY[])[];
  readonly swathM: number;
  readonly spacingM: number;
  readonly trimShare: number;
  /** slabs begin anew where a long side runs along the heading, so that none of them lies half on the ground. */
  readonly atSides: boolean;
}

/**
 * Ground laid out in straight passes of one heading. Each connected piece is cut into slabs of equal width,
 * the fewest that are no wider than the spacing, so that passes overlap evenly. Slabs that follow each other
 * without a parting or meeting of ways make a cell: the boustrophedon cellular decomposition
 * (Choset & Pignon 1998, doi 10.1007/978-1-4471-1273-0_32, from memory) with its events taken from slab to slab.
 * @param joinM passes of one slab this near to each other are walked on in one row
 */
export function cellsOf(ground: CellGround, frame: Frame, joinM: number): Cell[] {
  const zone = ringsInFrame(ground.zone, frame);
  const keepOff = ringsInFrame(ground.keepOff, frame);
  return ground.need.flatMap((rings) => {
    const need = ringsInFrame(rings, frame);
    const slabs = slabsOf(need, ground.spacingM, ground.atSides);
    const inFrame = { need, zone, keepOff, swathM: ground.swathM, trimShare: ground.trimShare };
    const stretches = slabs.map(([ya, yb]) => stretchesOf(inFrame, ya, yb));
    return chain(stretches.map((row) => joined(row, joinM))).map((rows) => ({
      rows: rows.map((row) => row.map(({ work }) => inPlane(work, frame))),
      missedM2: rows.flat().reduce((sum, { missedM2 }) => sum + missedM2, 0),
    }));
  });
}

/** Passes may lie so much wider apart, as a share, than the spacing: what is missed stays far below what is allowed. */
const SLACK = 0.002;
/** More slabs than this are not laid. */
const MOST_SLABS = 5000;

/** Number of passes over a width. */
export function countPasses(widthM: number, spacingM: number): number {
  return Math.min(MOST_SLABS, Math.max(1, Math.ceil((widthM / spacingM) * (1 - SLACK))));
}

/** A side this long, in spacings, that rises across the heading less than that share of a spacing runs along it. */
const LONG_SIDE = 1.5;
const FLAT_SIDE = 0.12;
/** Levels nearer to each other than this share of a spacing are one. */
const ONE_LEVEL = 0.2;

function slabsOf(rings: readonly (readonly XY[])[], spacingM: number, atSides: boolean): [number, number][] {
  let [low, high] = [Infinity, -Infinity];
  for (const ring of rings) {
    for (const [, y] of ring) {
      if (y < low) low = y;
      if (y > high) high = y;
    }
  }
  if (!(high > low)) return [];
  const levels = [low, ...(atSides ? levelsOf(rings, spacingM, low, high) : []), high];
  return levels.slice(1).flatMap((top, k): [number, number][] => {
    const bottom = levels[k] as number;
    const count = countPasses(top - bottom, spacingM);
    const at = (i: number) => bottom + ((top - bottom) * i) / count;
    return Array.from({ length: count }, (_, i) => [at(i), at(i + 1)]);
  });
}

/** Heights of long sides along the heading, ascending, apart from each other and from the ends. */
function levelsOf(rings: readonly (readonly XY[])[], spacingM: number, low: number, high: number): number[] {
  const found: number[] = [];
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1] as XY, ring[i] as XY];
      if (Math.abs(b[0] - a[0]) < LONG_SIDE * spacingM || Math.abs(b[1] - a[1]) > FLAT_SIDE * spacingM)
        continue;
      found.push((a[1] + b[1]) / 2);
    }
  }
  const levels: number[] = [];
  for (const y of found.sort((a, b) => a - b)) {
    const before = levels.at(-1) ?? low;
    if (y - before > ONE_LEVEL * spacingM && high - y > ONE_LEVEL * spacingM) levels.push(y);
  }
  return levels;
}

/** Whether slabs at the sides differ from slabs of one width. */
export function hasLevels(rings: readonly (readonly XY[])[], frame: Frame, spacingM: number): boolean {
  const turned = ringsInFrame(rings, frame);
  const ys = turned.flatMap((ring) => ring.map(([, y]) => y));
  const [low, high] = [
    ys.reduce((a, b) => Math.min(a, b), Infinity),
    ys.reduce((a, b) => Math.max(a, b), -Infinity),
  ];
  return levelsOf(turned, spacingM, low, high).length > 0;
}

/** Stretches of a slab put together where they follow each other closely. */
function joined(stretches: readonly Stretch[], joinM: number): Stretch[][] {
  const rows: Stretch[][] = [];
  for (const stretch of stretches) {
    const last = rows.at(-1)?.at(-1);
    const gap = last ? startOf(stretch.work)[0] - endOf(last.work)[0] : Infinity;
    if (gap <= joinM) rows.at(-1)?.push(stretch);
    else rows.push([stretch]);
  }
  return rows;
}

/** Rows of slab after slab, chained where one row has one neighbour on either side. */
function chain(slabs: readonly (readonly Stretch[][])[]): Stretch[][][] {
  const cells: Stretch[][][] = [];
  let open: { row: Stretch[]; cell: Stretch[][] }[] = [];
  for (const rows of slabs) {
    const next: typeof open = [];
    for (const row of rows) {
      const below = open.filter((one) => meets(one.row, row));
      const only = below.length === 1 ? below[0] : undefined;
      if (only && rows.filter((other) => meets(only.row, other)).length === 1) {
        only.cell.push(row);
        next.push({ row, cell: only.cell });
        continue;
      }
      const cell = [row];
      cells.push(cell);
      next.push({ row, cell });
    }
    open = next;
  }
  return cells;
}

function meets(a: readonly Stretch[], b: readonly Stretch[]): boolean {
  return (
    a.some((p) => b.some((q) => Math.min(p.xb, q.xb) - Math.max(p.xa, q.xa) > MEETING_M)) || isOnly(a, b)
  );
}

/** Short stretches hang together when one lies within the other's range. */
function isOnly(a: readonly Stretch[], b: readonly Stretch[]): boolean {
  return a.some((p) => b.some((q) => q.xb - q.xa < 2 * MEETING_M && q.xa >= p.xa && q.xb <= p.xb));
}

function inPlane(work: Work, frame: Frame): Work {
  return { ...work, line: work.line.map(frame.back) };
}
