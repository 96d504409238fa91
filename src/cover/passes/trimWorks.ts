import type { XY } from '../../measure/types';
import { distanceOf, lengthOfLine } from './frame';
import { type GroundPoint, pointsOf } from './missedPoints';
import { makeWork, type Work } from './work';
import type { ZoneGround } from './zoneGround';

/** Ground is looked at as so many points. */
const MOST_POINTS = 3000;
/** What may be missed after trimming, as a share of the ground. */
const MISSED_AFTER = 0.0044;
/** An end is cut where each metre of it brings less new ground than this share of its width. */
const WORTH_SHARE = 0.12;
/** Shorter cuts are none, as a share of the spacing. */
const LEAST_CUT = 0.3;

/** A point as a pass reaches it: how far along. */
interface Seen {
  readonly point: number;
  readonly atM: number;
}

/**
 * Passes without the ends, and without whole passes, that cover almost nothing new: ground is taken as points, and a
 * pass keeps the stretch from the first to the last of what no other reaches, less what may be missed. Laps stay.
 * @param works as they are walked; @param missedM2 what they miss
 * @returns what each changed pass becomes: one shorter, or none
 */
export function trimWorks(
  { rings, areaM2, options }: ZoneGround,
  works: readonly Work[],
  missedM2: number,
): Map<Work, readonly Work[]> {
  const { swathM, spacingM } = options;
  const stepM = stepOf(swathM, areaM2);
  const points = pointsOf(rings, stepM);
  const seen = works.map((work) => seenBy(work, points, swathM / 2));
  const counts = new Int32Array(points.length);
  for (const list of seen) for (const { point } of list) counts[point] = (counts[point] as number) + 1;
  const ownOf = (i: number) => (seen[i] as Seen[]).filter(({ point }) => counts[point] === 1);
  let spareM2 = MISSED_AFTER * areaM2 - missedM2;
  const changed = new Map<Work, readonly Work[]>();
  const order = works
    .map((work, i) => ({ i, work, worth: sumOf(ownOf(i), points) / Math.max(work.lengthM, 1e-6) }))
    .filter(({ work }) => work.kind === 'pass')
    .sort((a, b) => a.worth - b.worth);
  for (const { i, work } of order) {
    const own = ownOf(i).sort((a, b) => a.atM - b.atM);
    const [head, tail] = [
      cutOf(own, points, work.lengthM, WORTH_SHARE * spacingM, Math.max(0, spareM2) / 3),
      cutOf(
        own.map(({ point, atM }) => ({ point, atM: work.lengthM - atM })).reverse(),
        points,
        work.lengthM,
        WORTH_SHARE * spacingM,
        Math.max(0, spareM2) / 3,
      ),
    ];
    const from = Math.max(0, head - stepM / 2);
    const to = Math.min(work.lengthM, work.lengthM - tail + stepM / 2);
    if (from < LEAST_CUT * spacingM && work.lengthM - to < LEAST_CUT * spacingM) continue;
    const lost = own.filter(({ atM }) => to - from < stepM || atM < from || atM > to);
    spareM2 -= sumOf(lost, points);
    changed.set(work, to - from < stepM ? [] : [partOf(work, from, to)]);
    for (const { point, atM } of seen[i] as Seen[])
      if (to - from < stepM || atM < from || atM > to) counts[point] = (counts[point] as number) - 1;
  }
  return changed;
}

const stepOf = (swathM: number, areaM2: number): number =>
  Math.max(0.1, Math.min(swathM / 5, Math.sqrt(areaM2 / MOST_POINTS)));

/** Ground as works reach it. */
export interface GroundSeen {
  /** ground that a work alone reaches, m². */
  ownM2(work: Work): number;
  /** a work is no longer walked. */
  remove(work: Work): void;
}

/** What each of some works reaches of a zone, by points of its ground. */
export function seenOnGround(
  { rings, areaM2, options: { swathM } }: ZoneGround,
  works: readonly Work[],
): GroundSeen {
  const points = pointsOf(rings, stepOf(swathM, areaM2));
  const seen = new Map(works.map((work) => [work, seenBy(work, points, swathM / 2)]));
  const counts = new Int32Array(points.length);
  for (const list of seen.values())
    for (const { point } of list) counts[point] = (counts[point] as number) + 1;
  return {
    ownM2: (work) =>
      sumOf(
        (seen.get(work) ?? []).filter(({ point }) => counts[point] === 1),
        points,
      ),
    remove(work) {
      for (const { point } of seen.get(work) ?? []) counts[point] = (counts[point] as number) - 1;
      seen.delete(work);
    },
  };
}

const sumOf = (list: readonly Seen[], points: readonly GroundPoint[]): number =>
  list.reduce((sum, { point }) => sum + (points[point]?.areaM2 ?? 0), 0);

/** How far from its start a pass may be cut: as far as what is lost stays within the spare and below its worth. */
function cutOf(
  own: readonly Seen[],
  points: readonly GroundPoint[],
  lengthM: number,
  worthM: number,
  spareM2: number,
): number {
  let [lost, cut] = [0, 0];
  for (const { point, atM } of own) {
    // up to here nothing more is lost than before
    if (lost <= worthM * atM) cut = Math.max(cut, atM);
    lost += points[point]?.areaM2 ?? 0;
    if (lost > spareM2) return cut;
  }
  return lost <= worthM * lengthM ? lengthM : cut;
}

/** Points within half a swath of a pass, square at its ends. */
function seenBy({ line }: Work, points: readonly GroundPoint[], half: number): Seen[] {
  const seen: Seen[] = [];
  const xs = line.map((p) => p[0]);
  const ys = line.map((p) => p[1]);
  const [x0, x1] = [Math.min(...xs) - half, Math.max(...xs) + half];
  const [y0, y1] = [Math.min(...ys) - half, Math.max(...ys) + half];
  const sides = sidesOf(line);
  for (const [point, { at }] of points.entries()) {
    if (at[0] < x0 || at[0] > x1 || at[1] < y0 || at[1] > y1) continue;
    let [best, atM] = [half * half, -1];
    for (const { a, b, lengthM, fromM, isFirst, isLast } of sides) {
      // none of its points is near
      if (at[0] < Math.min(a[0], b[0]) - half || at[0] > Math.max(a[0], b[0]) + half) continue;
      if (at[1] < Math.min(a[1], b[1]) - half || at[1] > Math.max(a[1], b[1]) + half) continue;
      const t = ((at[0] - a[0]) * (b[0] - a[0]) + (at[1] - a[1]) * (b[1] - a[1])) / lengthM ** 2;
      const isEnd = (t < 0 && isFirst) || (t > 1 && isLast);
      const s = Math.min(1, Math.max(0, t));
      const d = (a[0] + s * (b[0] - a[0]) - at[0]) ** 2 + (a[1] + s * (b[1] - a[1]) - at[1]) ** 2;
      if (!isEnd && d <= best) [best, atM] = [d, fromM + s * lengthM];
    }
    if (atM >= 0) seen.push({ point, atM });
  }
  return seen;
}

/** Sides of a line with how far along it they begin. */
function sidesOf(line: readonly XY[]) {
  let fromM = 0;
  return line.slice(1).flatMap((b, i) => {
    const a = line[i] as XY;
    const lengthM = distanceOf(a, b);
    const side = { a, b, lengthM, fromM, isFirst: i === 0, isLast: i === line.length - 2 };
    fromM += lengthM;
    return lengthM > 0 ? [side] : [];
  });
}

/** A stretch of a pass, with the ground that it takes on there. @param fromM, toM along it, fromM < toM */
export function partOf(work: Work, fromM: number, toM: number): Work {
  const line: XY[] = [];
  let walked = 0;
  const add = (p: XY) => {
    const last = line.at(-1);
    if (!last || distanceOf(last, p) > 1e-9) line.push(p);
  };
  for (let k = 1; k < work.line.length; k++) {
    const [a, b] = [work.line[k - 1] as XY, work.line[k] as XY];
    const lengthM = distanceOf(a, b);
    const [s, e] = [Math.max(fromM, walked) - walked, Math.min(toM, walked + lengthM) - walked];
    if (lengthM > 0 && e > s) {
      add([a[0] + ((b[0] - a[0]) * s) / lengthM, a[1] + ((b[1] - a[1]) * s) / lengthM]);
      add([a[0] + ((b[0] - a[0]) * e) / lengthM, a[1] + ((b[1] - a[1]) * e) / lengthM]);
    }
    walked += lengthM;
  }
  const size = lengthOfLine(line);
  const knots = work.knots.map(({ atM, areaM2 }) => ({
    atM: Math.min(size, Math.max(0, atM - fromM)),
    areaM2,
  }));
  return makeWork(work.kind, line, knots);
}
