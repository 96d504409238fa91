import * as round from './roundShapes';
import * as straight from './straightShapes';
import type { TapeWay } from './types';

/** A shape as a person sees it, with the ways of taping it; the usual one first. */
export interface TapeShapeKind {
  readonly id: string;
  readonly words: string;
  readonly ways: readonly [TapeWay, ...TapeWay[]];
}

/** Every shape by typed dimensions, the commonest first. */
export const TAPE_SHAPES: readonly [TapeShapeKind, ...TapeShapeKind[]] = [
  { id: 'rectangle', words: 'Rectangle', ways: [straight.RECTANGLE] },
  { id: 'l', words: 'L', ways: [straight.L_SHAPE] },
  { id: 'triangle', words: 'Triangle', ways: [straight.TRIANGLE_BY_SIDES, straight.TRIANGLE_BY_HEIGHT] },
  { id: 'trapezoid', words: 'Trapezoid', ways: [straight.TRAPEZOID] },
  { id: 'quadrilateral', words: 'Four sides', ways: [straight.QUADRILATERAL] },
  {
    id: 'circle',
    words: 'Circle',
    ways: [round.CIRCLE_BY_RADIUS, round.CIRCLE_BY_DIAMETER, round.CIRCLE_BY_CIRCUMFERENCE],
  },
  { id: 'ellipse', words: 'Ellipse', ways: [round.ELLIPSE] },
  {
    id: 'segment',
    words: 'Segment',
    ways: [round.SEGMENT_BY_CHORD, round.SEGMENT_BY_RADIUS, round.SEGMENT_BY_ANGLE],
  },
  { id: 'sector', words: 'Sector', ways: [round.SECTOR_BY_ANGLE, round.SECTOR_BY_ARC] },
];
