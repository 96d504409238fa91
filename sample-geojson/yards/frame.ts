import { newZone } from '../../src/yard/defaults';
import type { Mark, MarkKind, Position, Ring, Rings, Survey, Zone, ZoneKind } from '../../src/yard/types';

/** A point in metres east and north of the yard's south-west corner. */
export type Metres = readonly [number, number];

/** Semi-major axis, m, and first eccentricity squared of WGS 84 (NIMA TR8350.2, table 3.1). */
const SEMI_MAJOR_M = 6378137;
const ECCENTRICITY2 = 6.69437999014e-3;

/** Places metric drawings on the ground: linear in longitude and latitude, true at the middle of the yard. */
export interface Frame {
  /** metres -> [lon, lat], rounded to 1e-11 degrees. */
  place(p: Metres): Position;
  ring(points: readonly Metres[]): Ring;
}

/**
 * @param middle [lon, lat] of the yard's middle, degrees
 * @param size width and height of the yard's box, m
 * @param turnDeg turns the drawing about its middle, counter-clockwise, degrees
 * Lengths and areas err by about 4e-6 at 30 m from the middle: the parallels grow shorter to the pole.
 * Radii of curvature: Snyder, USGS Professional Paper 1395 (1987), equations 4-18 and 4-20, from memory.
 */
export function createFrame(middle: Position, size: Metres, turnDeg = 0): Frame {
  const phi = (middle[1] * Math.PI) / 180;
  const w = 1 - ECCENTRICITY2 * Math.sin(phi) ** 2;
  const meridianM = (SEMI_MAJOR_M * (1 - ECCENTRICITY2)) / w ** 1.5;
  const primeM = SEMI_MAJOR_M / Math.sqrt(w);
  const degLon = 180 / (Math.PI * primeM * Math.cos(phi));
  const degLat = 180 / (Math.PI * meridianM);
  const round = (v: number): number => Math.round(v * 1e11) / 1e11;
  const cos = Math.cos((turnDeg * Math.PI) / 180);
  const sin = Math.sin((turnDeg * Math.PI) / 180);
  const place = (p: Metres): Position => {
    const x = p[0] - size[0] / 2;
    const y = p[1] - size[1] / 2;
    return [round(middle[0] + (x * cos - y * sin) * degLon), round(middle[1] + (x * sin + y * cos) * degLat)];
  };
  return {
    place,
    ring: (points) => {
      const placed = points.map(place);
      return placed[0] ? [...placed, placed[0]] : [];
    },
  };
}

/** Corners of an upright rectangle, counter-clockwise. */
export function box(x0: number, y0: number, x1: number, y1: number): Metres[] {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}

/** Corners of an ellipse as a polygon of n sides, counter-clockwise. Its area is n/2 · a · b · sin(2π/n). */
export function oval(centre: Metres, a: number, b: number, n: number): Metres[] {
  return Array.from({ length: n }, (_, i): Metres => {
    const t = (2 * Math.PI * i) / n;
    return [centre[0] + a * Math.cos(t), centre[1] + b * Math.sin(t)];
  });
}

/** A zone as it was drawn: each part is an outer outline, then holes. */
export interface DrawnZone {
  readonly id: string;
  readonly name: string;
  readonly kind: ZoneKind;
  readonly parts: readonly (readonly (readonly Metres[])[])[];
  readonly fields?: Partial<
    Pick<Zone, 'mowing' | 'material' | 'note' | 'cutsSameKind' | 'slope' | 'downhillDeg'>
  >;
  readonly survey: Survey;
}

export interface DrawnMark {
  readonly id: string;
  readonly name: string;
  readonly kind: MarkKind;
  readonly at: Metres;
}

/** @returns the zone on the ground, holes clockwise as RFC 7946 asks. */
export function placeZone(frame: Frame, zone: DrawnZone): Zone {
  const parts = zone.parts.map(
    (outlines): Rings => outlines.map((outline, i) => frame.ring(i === 0 ? outline : [...outline].reverse())),
  );
  return newZone(zone.id, zone.kind, parts, { ...zone.fields, name: zone.name, survey: zone.survey });
}

export function placeMark(frame: Frame, mark: DrawnMark): Mark {
  return { id: mark.id, name: mark.name, kind: mark.kind, position: frame.place(mark.at), extra: {} };
}

/** Tape measure: corner sigma 5 cm. */
export const TAPE: Survey = { method: 'tape', vertexSigmaM: 0.05, scaleSigma: 0, source: '' };
/** Traced on a fine picture: corner sigma 15 cm. */
export const TRACED: Survey = { method: 'traced', vertexSigmaM: 0.15, scaleSigma: 0, source: '' };
/** Corners found by an invented plat: sigma 3 cm. */
export const PLAT: Survey = { method: 'plat', vertexSigmaM: 0.03, scaleSigma: 0, source: '' };
