import { describe, expect, it } from 'vitest';
import { findAllCurves } from '../../measure/curves';
import { bearingDeg } from '../../measure/geodesic';
import { measureYard } from '../../measure/measureYard';
import { emptyYard, newZone } from '../../yard/defaults';
import type { Position, Yard } from '../../yard/types';
import { layTapeShape, surveyOfTape } from './layTapeShape';
import { makeTapeShape } from './makeTapeShape';
import { placeZone } from './placeZone';
import { TAPE_SHAPES } from './tapeShapes';
import { type Dimensions, type TapeShape, USUAL_TAPE_ERROR } from './types';

const HERE: Position = [-96.5432, 41.2345];

function shapeOf(id: string, d: Dimensions): TapeShape {
  const way = TAPE_SHAPES.flatMap((shape) => shape.ways).find((each) => each.id === id);
  const made = way && makeTapeShape(way, d, USUAL_TAPE_ERROR, 'us');
  if (!made?.ok) throw new Error(`no shape ${id}`);
  return made.shape;
}

function yardWith(shape: TapeShape, at: Position, isPlaced: boolean, headingDeg = 90): Yard {
  const laid = layTapeShape(shape, at, headingDeg);
  const survey = surveyOfTape(shape, laid, USUAL_TAPE_ERROR, '');
  return { ...emptyYard('y', ''), zones: [newZone('z', 'bed', laid.parts, { ...laid, survey, isPlaced })] };
}

const EXAMPLES: readonly (readonly [string, Dimensions])[] = [
  ['rectangle', { a: 24, b: 11 }],
  ['l-shape', { a: 20, b: 14, c: 6, d: 5 }],
  ['triangle-sides', { a: 21, b: 17, c: 14 }],
  ['quadrilateral', { a: 16, b: 14, c: 12, d: 13, e: 20 }],
  ['circle-radius', { r: 5 }],
  ['ellipse', { a: 150, b: 80 }],
  ['segment-chord', { c: 12, h: 9 }],
  ['sector-angle', { r: 90, t: 250 }],
];

describe('a taped shape as a zone', () => {
  it.each(EXAMPLES)('%s: area and error on the map are those of the tape', (id, d) => {
    const shape = shapeOf(id, d);
    for (const at of [HERE, [0, 0], [20, -65]] as Position[]) {
      const measured = measureYard(yardWith(shape, at, true, 37)).zones.get('z');
      // the plane errs by r·tan(lat)/R: 90 m at latitude 65 by 3e-5
      const within = id === 'sector-angle' ? 4e-5 : 1e-5;
      expect(Math.abs((measured?.netM2 ?? 0) / shape.areaM2 - 1)).toBeLessThan(within);
      expect(Math.abs((measured?.netSigmaM2 ?? 0) / shape.areaSigmaM2 - 1)).toBeLessThan(1e-6);
    }
  });

  it.each(EXAMPLES)('%s: put on the map it stays itself, its arcs with it', (id, d) => {
    const shape = shapeOf(id, d);
    const before = yardWith(shape, [0, 0], false);
    const placed = placeZone(before, 'z', HERE, 25);
    if (!placed.ok) throw new Error(placed.issue.message);
    const zone = placed.yard.zones[0];
    expect(zone?.isPlaced).toBe(true);
    expect(zone && findAllCurves(zone).stale).toEqual([]);
    expect(zone?.curves).toHaveLength(shape.arcs.length);
    const areaM2 = measureYard(placed.yard).zones.get('z')?.netM2 ?? 0;
    expect(Math.abs(areaM2 / shape.areaM2 - 1)).toBeLessThan(1e-5);
  });

  it('the first side runs along the heading, and a turn is clockwise', () => {
    const shape = shapeOf('rectangle', { a: 24, b: 11 });
    const sideOf = (yard: Yard) => {
      const [p, q] = yard.zones[0]?.parts[0]?.[0] ?? [];
      return p && q ? bearingDeg(p, q) : Number.NaN;
    };
    expect(sideOf(yardWith(shape, HERE, true, 37))).toBeCloseTo(37, 3);
    const turned = placeZone(yardWith(shape, [0, 0], false), 'z', HERE, 15);
    if (!turned.ok) throw new Error(turned.issue.message);
    expect(sideOf(turned.yard)).toBeCloseTo(105, 3);
  });

  it('refuses what has its place, is gone, is locked, or is put nowhere', () => {
    const shape = shapeOf('rectangle', { a: 24, b: 11 });
    const placed = yardWith(shape, HERE, true);
    const loose = yardWith(shape, [0, 0], false);
    const locked = { ...loose, zones: loose.zones.map((zone) => ({ ...zone, isLocked: true })) };
    expect(placeZone(placed, 'z', HERE, 0).ok).toBe(false);
    expect(placeZone(loose, 'other', HERE, 0).ok).toBe(false);
    expect(placeZone(locked, 'z', HERE, 0).ok).toBe(false);
    expect(placeZone(loose, 'z', [0, 90], 0).ok).toBe(false);
    expect(placeZone(loose, 'z', HERE, Number.NaN).ok).toBe(false);
  });
});
