import type { DoseCoverage } from '../cover/passTypes';
import type { XY } from '../measure/types';
import type { Derived, DerivedVisit } from '../session/types';
import type { DoseWay } from '../words/markWords';
import type { Yard } from '../yard/types';
import { leastRatio, roundRatio } from './paper';
import type { Box, Mm } from './placeLabels';
import type { Paper, SheetOptions } from './types';

/** px of a screen pattern to mm of paper: 1/96 in, drawn somewhat finer. */
export const MM_PER_PX = (25.4 / 96) * 0.6;
/** room kept clear between the ground and the map's frame, mm. */
const CLEAR_MM = 4;
const GAP_MM = 3;

/** The walk of one dose as it is printed. */
export interface PrintedWalk {
  readonly dose: DoseCoverage;
  /** the coat on this page. */
  readonly coat: 1 | 2;
  readonly coats: 1 | 2;
  readonly swathM: number;
  /** time each of the dose's walks takes, turns and refills in it, s; in their order. */
  readonly seconds: readonly number[];
  /** product and applicator, for the names of what it is drawn from. */
  readonly way: DoseWay;
  /** the product's name, with its use where it has several. */
  readonly name: string;
  /** circles that the hose reaches, plane m; empty: none. */
  readonly hose: readonly { readonly at: XY; readonly lengthM: number }[];
}

export interface MapInput {
  readonly yard: Yard;
  readonly derived: Derived;
  readonly visit: DerivedVisit | null;
  readonly options: SheetOptions;
  /** null or absent: the map of zones. */
  readonly walk?: PrintedWalk | null;
}

export type Room = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** Where the map and its margin stand on a paper, mm. */
export function mapRooms(paper: Paper): { readonly frame: Room; readonly margin: Room } {
  const m = paper.marginMm;
  const [w, h] = [paper.widthMm - 2 * m, paper.heightMm - 2 * m];
  if (paper.landscape) {
    const side = 70;
    return {
      frame: { x: m, y: m, width: w - side - GAP_MM, height: h },
      margin: { x: m + w - side, y: m, width: side, height: h },
    };
  }
  const foot = 76;
  return {
    frame: { x: m, y: m, width: w, height: h - foot - GAP_MM },
    margin: { x: m, y: m + h - foot, width: w, height: foot },
  };
}

/** Bounds of the property, and all zones and marks on the map, in the plane, m: west, south, east, north; null when there is nothing. */
export function groundBounds(yard: Yard, derived: Derived): readonly [number, number, number, number] | null {
  const { plane } = derived.measured;
  const all = [
    ...yard.zones.flatMap((zone) => (zone.isPlaced ? zone.parts.flatMap((rings) => rings.flat()) : [])),
    ...(yard.parcel?.parts.flatMap((rings) => rings.flat()) ?? []),
    ...yard.marks.map((mark) => mark.position),
  ].map((p) => plane.toPlane(p));
  if (all.length === 0) return null;
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of all) {
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  return [west, south, east, north];
}

/** The scale for a paper: what is asked for when it fits, else the largest round one that does. */
export function ratioOn(
  paper: Paper,
  bounds: readonly [number, number, number, number],
  input: MapInput,
): { ratio: number; asAsked: boolean } {
  const { frame } = mapRooms(paper);
  const ground = [bounds[2] - bounds[0], bounds[3] - bounds[1]] as const;
  const room = [frame.width - 2 * CLEAR_MM, frame.height - 2 * CLEAR_MM] as const;
  const asked = input.options.scale;
  if (asked !== 'auto' && asked > 0 && asked >= leastRatio(ground, room))
    return { ratio: asked, asAsked: true };
  return { ratio: roundRatio(ground, room, input.yard.settings.units), asAsked: asked === 'auto' };
}

/** From plane to paper at a scale, north up, the ground in the middle of the frame. */
export function toPaper(
  frame: Room,
  bounds: readonly [number, number, number, number],
  ratio: number,
): (at: XY) => Mm {
  const k = 1000 / ratio;
  const cx = (bounds[0] + bounds[2]) / 2;
  const cy = (bounds[1] + bounds[3]) / 2;
  return ([x, y]) => [frame.x + frame.width / 2 + (x - cx) * k, frame.y + frame.height / 2 - (y - cy) * k];
}

/** The frame as a box that labels stay in. */
export function frameBox(r: Room): Box {
  return { x: r.x + r.width / 2, y: r.y + r.height / 2, halfW: r.width / 2 - 0.5, halfH: r.height / 2 - 0.5 };
}
