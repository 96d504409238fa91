import type { XY } from '../../measure/types';
import type { DoseCoverage, Leg, LegKind, RunOutMark, Vessel, ZoneWalk } from '../passTypes';

/*
 * For tests alone: walks over rectangles laid by hand, without any planning.
 */

/** A rectangle swept up and down by passes along y, side by side from x0 on. */
export interface SweptBox {
  readonly zoneId: string;
  readonly x0: number;
  readonly y0: number;
  readonly widthM: number;
  readonly lengthM: number;
  readonly swathM: number;
  readonly coat?: 1 | 2;
}

/** A leg of the given kind; its ground grows evenly along it, or at the knots given. */
export function testLeg(
  kind: LegKind,
  zoneId: string | null,
  line: readonly XY[],
  knots: Leg['knots'] = [],
  coat: 1 | 2 = 1,
): Leg {
  const lengthM = line
    .slice(1)
    .reduce((sum, [x, y], i) => sum + Math.hypot(x - (line[i]?.[0] ?? 0), y - (line[i]?.[1] ?? 0)), 0);
  return { kind, zoneId, coat, line, lengthM, knots };
}

/** Passes and turns over a box: full swaths, the last as wide as what is left (its line in its own middle). */
export function sweepBox({ zoneId, x0, y0, widthM, lengthM, swathM, coat = 1 }: SweptBox): Leg[] {
  const legs: Leg[] = [];
  const count = Math.ceil(widthM / swathM - 1e-9);
  for (let i = 0; i < count; i += 1) {
    const own = Math.min(swathM, widthM - i * swathM);
    const x = x0 + i * swathM + own / 2;
    const line: XY[] = [
      [x, y0],
      [x, y0 + lengthM],
    ];
    if (i % 2 === 1) line.reverse();
    const before = legs.at(-1)?.line.at(-1);
    if (before) legs.push(testLeg('turn', zoneId, [before, line[0] as XY], [], coat));
    const knots = [
      { atM: 0, areaM2: 0 },
      { atM: lengthM, areaM2: own * lengthM },
    ];
    legs.push(testLeg('pass', zoneId, line, knots, coat));
  }
  return legs;
}

/** Walks joined by ways with the applicator shut. */
export function joinWalks(walks: readonly (readonly Leg[])[]): Leg[] {
  const all: Leg[] = [];
  for (const walk of walks) {
    const [from, to] = [all.at(-1)?.line.at(-1), walk[0]?.line[0]];
    if (from && to) all.push(testLeg('carry', null, [from, to]));
    all.push(...walk);
  }
  return all;
}

/** Bottles of one size that together do an area; the last may be left open. */
export function testBottles(areaM2: number, eachM2: number, kind: Vessel['kind'] = 'container'): Vessel[] {
  const count = Math.ceil(areaM2 / eachM2 - 1e-9);
  return Array.from({ length: count }, (_, i): Vessel => {
    const own = Math.min(eachM2, areaM2 - i * eachM2);
    const litres = (value: number) => ({ unit: 'L', value }) as const;
    return {
      kind,
      number: i + 1,
      full: litres(1),
      start: litres(1),
      taken: litres(own / eachM2),
      areaM2: own,
      packId: kind === 'container' ? 'bottle' : null,
    };
  });
}

/** The coverage of a dose of which only legs, vessels and marks are told. */
export function testCoverage(
  legs: readonly Leg[],
  vessels: readonly Vessel[],
  marks: readonly RunOutMark[],
  walks: readonly ZoneWalk[] = [],
): DoseCoverage {
  const lengthM = legs.reduce((sum, leg) => sum + leg.lengthM, 0);
  const workingM = legs.reduce((sum, leg) => sum + (leg.knots.length > 0 ? leg.lengthM : 0), 0);
  return {
    doseId: 'd-1',
    walks,
    legs,
    vessels,
    marks,
    lengthM,
    workingM,
    overWetM: 0,
    hose: null,
    issues: [],
  };
}
