import type { MeasuredYard } from '../measure/types';
import type { Issue, Mark, Position, Ring, Rings, Yard, Zone } from '../yard/types';
import { importIssue } from './importTypes';

/** Which outlines are written: what each zone counts, or what was drawn. */
export type OutlineChoice = 'net' | 'drawn';

/** What is to be written. */
export interface ExportOptions {
  /** null: all zones. */
  readonly zoneIds: readonly string[] | null;
  readonly outline: OutlineChoice;
  readonly withMarks: boolean;
}

/** One zone ready to be written: its outline and its figures, SI. */
export interface ExportShape {
  readonly zone: Zone;
  /** outer rings counter-clockwise, holes clockwise, closed; 11 decimals of a degree. */
  readonly parts: readonly Rings[];
  readonly grossM2: number;
  readonly netM2: number;
  /** two standard deviations of the net area. */
  readonly plusMinusM2: number;
  readonly perimeterM: number;
}

/** Zones and marks to write, and what is left out and why. */
export interface ExportShapes {
  readonly shapes: readonly ExportShape[];
  readonly marks: readonly Mark[];
  readonly issues: readonly Issue[];
}

/** Decimals of a degree in files: a micrometre. */
const DECIMALS = 11;

/**
 * The chosen zones with outlines and figures. Zones without a place on the ground, those that cannot be
 * measured and, for net outlines, those of which nothing is left are told and left out.
 */
export function exportShapes(yard: Yard, measured: MeasuredYard, options: ExportOptions): ExportShapes {
  const issues: Issue[] = [];
  const shapes: ExportShape[] = [];
  const leave = (zone: Zone, why: string) =>
    issues.push(
      importIssue('left-out', 'warning', `“${zone.name}” is left out: ${why}.`, { zoneId: zone.id }),
    );
  for (const zone of yard.zones) {
    if (options.zoneIds !== null && !options.zoneIds.includes(zone.id)) continue;
    const own = measured.zones.get(zone.id);
    if (!zone.isPlaced) {
      leave(zone, 'it has no place on the ground');
      continue;
    }
    if (!own) {
      leave(zone, 'its outline cannot be measured');
      continue;
    }
    const parts = options.outline === 'net' ? own.netParts : zone.parts;
    if (parts.length === 0) {
      leave(zone, 'other zones take all of its ground');
      continue;
    }
    shapes.push({
      zone,
      parts: parts.map((rings) => rings.map((ring, i) => wound(ring.map(rounded), i === 0))),
      grossM2: own.grossM2,
      netM2: own.netM2,
      plusMinusM2: 2 * own.netSigmaM2,
      perimeterM: own.netPerimeterM,
    });
  }
  if (yard.settings.isLocal) {
    const message =
      'This yard has no true place: its coordinates stand near latitude 0, longitude 0. In other programs the shapes will lie in the sea off Africa; their sizes are right.';
    issues.unshift(importIssue('local-yard', 'warning', message));
  }
  return { shapes, marks: options.withMarks ? yard.marks : [], issues };
}

/** "Turf, low-cut"-like class of a zone in one word: the mowing class or the material; '' for the other kinds. */
export function classOf(zone: Pick<Zone, 'mowing' | 'material'>): string {
  return zone.mowing ?? zone.material ?? '';
}

function rounded([lon, lat]: Position): Position {
  return [Number(lon.toFixed(DECIMALS)) + 0, Number(lat.toFixed(DECIMALS)) + 0];
}

/** The ring turned to a winding (RFC 7946, section 3.1.6). */
function wound(ring: Ring, isCounterClockwise: boolean): Ring {
  const [first] = ring;
  if (!first) return ring;
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const [a, b] = [ring[i] ?? first, ring[i + 1] ?? first];
    twice += (a[0] - first[0]) * (b[1] - first[1]) - (b[0] - first[0]) * (a[1] - first[1]);
  }
  return twice === 0 || twice > 0 === isCounterClockwise ? ring : ring.toReversed();
}
