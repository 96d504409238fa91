import type { PlaneRings, XY } from '../measure/types';
import { runOutMarks } from './marks/runOutMarks';
import type { DoseCoverage, Leg, Vessel, ZoneWalk } from './passTypes';

/*
 * For tests alone: walks laid by hand over shapes in the plane, a lap along each outline and level passes
 * from side to side, good enough to be drawn.
 */

const lengthOf = (line: readonly XY[]) =>
  line
    .slice(1)
    .reduce((sum, b, i) => sum + Math.hypot(b[0] - (line[i] as XY)[0], b[1] - (line[i] as XY)[1]), 0);

function leg(
  kind: Leg['kind'],
  zoneId: string | null,
  coat: 1 | 2,
  line: readonly XY[],
  swathM: number,
): Leg {
  const lengthM = lengthOf(line);
  const isWorking = kind === 'lap' || kind === 'pass';
  const knots = isWorking
    ? [
        { atM: 0, areaM2: 0 },
        { atM: lengthM, areaM2: lengthM * swathM },
      ]
    : [];
  return { kind, zoneId, coat, line, lengthM, knots };
}

/** Where a level (or, on the second coat, upright) line lies inside rings, from low to high. */
function spans(rings: PlaneRings, axis: 0 | 1, level: number): [number, number][] {
  const cuts: number[] = [];
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1] as XY, ring[i] as XY];
      const [p, q] = [a[axis], b[axis]];
      if (p <= level === q <= level) continue;
      cuts.push(
        (a[1 - axis] as number) +
          ((level - p) / (q - p)) * ((b[1 - axis] as number) - (a[1 - axis] as number)),
      );
    }
  }
  cuts.sort((m, n) => m - n);
  const pairs: [number, number][] = [];
  for (let i = 1; i < cuts.length; i += 2) pairs.push([cuts[i - 1] as number, cuts[i] as number]);
  return pairs;
}

function walkZone(zoneId: string, parts: readonly PlaneRings[], coat: 1 | 2, swathM: number): Leg[] {
  const axis = coat === 1 ? 1 : 0;
  const legs: Leg[] = [];
  const go = (kind: Leg['kind'], line: readonly XY[]) => {
    const from = legs.at(-1)?.line.at(-1);
    const to = line[0] as XY;
    if (from) legs.push(leg('turn', zoneId, coat, [from, to], swathM));
    legs.push(leg(kind, zoneId, coat, line, swathM));
  };
  for (const rings of parts) {
    if (coat === 1) for (const ring of rings) go('lap', ring);
    const levels = (rings[0] ?? []).map((at) => at[axis]);
    const [low, high] = [Math.min(...levels), Math.max(...levels)];
    let isBack = false;
    for (let level = low + swathM / 2; level < high; level += swathM) {
      const row = spans(rings, axis, level);
      for (const [from, to] of isBack ? row.reverse().map(([a, b]) => [b, a] as const) : row) {
        const at = (n: number): XY => (axis === 1 ? [n, level] : [level, n]);
        go('pass', [at(from), at(to)]);
      }
      isBack = !isBack;
    }
  }
  return legs;
}

/** The walk of a dose over zones, drawn from `count` bottles that each do as much. */
export function testWalk(
  zones: readonly { readonly zoneId: string; readonly parts: readonly PlaneRings[] }[],
  swathM: number,
  count: number,
  coats: 1 | 2 = 1,
): DoseCoverage {
  const legs: Leg[] = [];
  const walks: ZoneWalk[] = [];
  for (const { zoneId, parts } of zones) {
    for (const coat of coats === 2 ? ([1, 2] as const) : ([1] as const)) {
      const own = walkZone(zoneId, parts, coat, swathM);
      const [from, to] = [legs.at(-1)?.line.at(-1), own[0]?.line[0]];
      if (from && to) legs.push(leg('carry', null, coat, [from, to], swathM));
      legs.push(...own);
      const workingM = own
        .filter(({ knots }) => knots.length > 0)
        .reduce((sum, { lengthM }) => sum + lengthM, 0);
      walks.push({
        zoneId,
        coat,
        headingDeg: coat === 1 ? 90 : 0,
        pattern: 'both',
        cells: 1,
        passes: own.filter(({ kind }) => kind === 'pass').length,
        turns: own.filter(({ kind }) => kind === 'turn').length,
        lengthM: own.reduce((sum, { lengthM }) => sum + lengthM, 0),
        workingM,
        leastM: workingM,
        areaM2: workingM * swathM,
        missedM2: 0,
        doubleM2: 0,
        outsideM2: 0,
        outsideM: swathM / 2,
        issues: [],
      });
    }
  }
  const workingM = walks.reduce((sum, walk) => sum + walk.workingM, 0);
  const areaM2 = (workingM * swathM) / coats;
  const vessels = Array.from({ length: count }, (_, i): Vessel => {
    const full = { unit: 'L', value: 1 } as const;
    return {
      kind: 'container',
      number: i + 1,
      full,
      start: full,
      taken: full,
      areaM2: areaM2 / count,
      packId: null,
    };
  });
  return {
    doseId: 'dose',
    walks,
    legs,
    vessels,
    marks: runOutMarks(legs, [], coats, vessels),
    lengthM: lengthOf(legs.flatMap(({ line }) => line)),
    workingM,
    overWetM: 0,
    hose: null,
    issues: [],
  };
}
