import { createPlane } from '../measure/plane';
import { formatArea, formatLength } from '../units/format';
import type { Issue, Position, Ring, UnitSystem } from '../yard/types';
import { guessKind, isMarkKind } from './guessKind';
import {
  type Box,
  type Candidate,
  type ImportRules,
  importIssue,
  type Judged,
  type SourceFeature,
} from './importTypes';
import { nameOfFeature } from './nameOfFeature';
import type { ToLonLat } from './projection';
import { type ReadShape, readShape } from './readShape';
import { ringOfWalk } from './ringOfWalk';
import { ringsOfLines } from './ringsOfLines';
import { type SoundGround, soundGround } from './soundGround';

/** A zone already in the yard, by what tells a duplicate. */
export interface ZonePrint {
  readonly name: string;
  readonly areaM2: number;
  readonly box: Box;
}

/** What a feature is judged against. */
export interface JudgeContext {
  readonly rules: ImportRules;
  readonly toLonLat: ToLonLat | null;
  readonly units: UnitSystem;
  /** where the open yard, else most of the file, lies; null when neither is known. */
  readonly anchor: Position | null;
  /** zones of the open yard. */
  readonly existing: readonly ZonePrint[];
}

/** A "yard" wider than this is a town or a country, m. */
const WIDEST_M = 20_000;
/** A feature this far from the others, whose swapped place is near them, has its coordinates swapped, m. */
const FAR_M = 100_000;
const NEAR_M = 30_000;
/** South of here lies Antarctica only. */
const SOUTHERNMOST_DEG = -60;
const SAME_DEG = 1e-8;

/**
 * Judges one feature of a file: what it can come in as, what was mended, and why it cannot.
 * @param source as its reader gave it; not changed
 */
export function judgeFeature(source: SourceFeature, context: JudgeContext): Judged {
  const parsed = parseFeature(source.text);
  const properties = parsed?.properties ?? {};
  const name = nameOfFeature(properties);
  const who = name === '' ? source.place : `${source.place} (“${name}”)`;
  const refuse = (code: string, message: string): Judged => ({
    ...NOTHING,
    name,
    notes: [importIssue(code, 'error', `${who}: ${message}`, { path: source.place })],
  });
  if (parsed === null) return refuse('bad-json', 'it is not valid JSON.');
  if (source.fault !== undefined) return refuse('bad-coordinates', source.fault);
  const { sketch } = properties;
  const isPlaced = parsed.geometry !== null || typeof sketch !== 'object' || sketch === null;
  const asFile = isPlaced
    ? readShape(parsed.geometry, context.rules, context.toLonLat)
    : readShape(sketch, { isSwapped: false }, null);
  const turned = isPlaced ? readTurned(asFile, parsed.geometry, context) : null;
  const read = turned ?? asFile;
  if (!read.ok) return refuse(read.fault.code, read.fault.message);
  const { polygons, lines, points } = read.shape;
  const first = firstOf(read.shape);
  if (!first) return refuse('empty', 'it has no shape.');
  const notes: Issue[] = [];
  const tell = (code: string, severity: Issue['severity'], message: string) =>
    notes.push(importIssue(code, severity, `${who}: ${message}`, { path: source.place, position: first }));
  const isTurned = turned !== null;
  if (isTurned) {
    tell(
      'swapped-order',
      'warning',
      'as it stands it would lie far from the rest, but near it with latitude and longitude swapped. Tick it to bring it in swapped.',
    );
  } else if (isPlaced && first[1] <= SOUTHERNMOST_DEG && Math.abs(first[0]) <= 90) {
    return refuse(
      'swapped-order',
      `it would lie in Antarctica (latitude ${first[1].toFixed(4)}); latitude and longitude look swapped.`,
    );
  }
  const isHole = properties['@source'] === 'track' && properties.type === 'hole';
  if (isHole)
    tell(
      'gpx-hole',
      'note',
      'it is a hole in the zone before it, which a GPX file cannot hold in one piece.',
    );

  if (polygons.length === 0 && lines.length === 0) {
    const guess = guessKind(name, properties, source.layer, true);
    const isOne = points.length === 1;
    const isMark = isOne && guess.kind !== null && isMarkKind(guess.kind);
    return {
      ...NOTHING,
      outcome: isMark ? (isTurned ? 'offered' : 'mark') : 'kept',
      kind: isMark ? (guess.kind ?? 'gate') : 'gate',
      name,
      corners: points.length,
      box: boxOf(points),
      position: isOne ? first : null,
      notes,
    };
  }

  const walk = polygons.length === 0 ? ringOfWalk(lines, properties) : null;
  let isOffered = isTurned || isHole;
  let rough: readonly (readonly Ring[])[] = polygons;
  if (walk !== null) {
    for (const note of walk.notes) tell(note.code, note.severity, note.message);
    if (walk.ring === null) return keep();
    rough = [[walk.ring]];
  } else if (polygons.length === 0) {
    const closed = ringsOfLines(lines, context.rules.closeGapM);
    if (closed.rings.length === 0) return keep();
    for (const gap of closed.gaps) {
      const words = formatLength(gap.gapM, context.units);
      if (gap.isSmall)
        tell('line-closed', 'note', `its ends are ${words} apart; it was closed by a straight side.`);
      else
        tell(
          'line-open',
          'warning',
          `it is a line whose ends are ${words} apart. Tick it to close it by a straight side.`,
        );
    }
    isOffered ||= closed.gaps.some((gap) => !gap.isSmall);
    rough = closed.rings.map((ring) => [ring]);
  } else if (lines.length + points.length > 0) {
    tell('mixed-shapes', 'note', 'it also holds lines or points; its areas alone come in.');
  }
  const widthM = widthOf(rough.flat(2), first);
  if (widthM > WIDEST_M) {
    return refuse(
      'too-wide',
      `it is ${formatLength(widthM, context.units)} across; a zone is at most ${formatLength(WIDEST_M, context.units)}.`,
    );
  }
  const ground: SoundGround = soundGround(rough, context.rules.fill, first);
  for (const change of ground.changes) {
    const area = (m2: number) => formatArea(m2, context.units);
    if (change.type === 'mended') {
      const rule =
        context.rules.fill === 'non-zero'
          ? 'ground it goes round more than once counts once'
          : 'ground it goes round twice is left out';
      tell(
        'self-crossing',
        'warning',
        `its outline crosses itself near ${change.at[1].toFixed(6)}, ${change.at[0].toFixed(6)}. Mended: ${rule}. As drawn it sums to ${area(change.beforeM2)}; it comes in as ${area(change.afterM2)} in ${change.parts === 1 ? 'one part' : `${change.parts} parts`}.`,
      );
    } else if (change.type === 'thinned') {
      tell(
        'thinned',
        'note',
        `${change.before.toLocaleString('en-US')} corners were thinned to ${change.after.toLocaleString('en-US')}; no place moved by more than ${formatLength(change.toleranceM, context.units)}. Area before ${area(change.beforeM2)}, after ${area(change.afterM2)}.`,
      );
    } else tell('ring-closed', 'note', 'a ring of it did not end where it began and was closed.');
  }
  if (ground.fault !== null) return refuse(ground.fault.code, ground.fault.message);
  const box = isPlaced ? boxOf(ground.parts.flatMap((rings) => rings[0] ?? [])) : null;
  const areaM2 = ground.areaM2;
  const twin = box && context.rules.checksTwins && context.existing.find((zone) => isTwin(zone, areaM2, box));
  if (twin)
    tell(
      'duplicate',
      'warning',
      `the yard has this outline already (“${twin.name}”). Tick it to bring it in again.`,
    );
  const guess = guessKind(name, properties, source.layer, false);
  const kind = guess.kind ?? 'other';
  const outcome = isOffered || twin ? 'offered' : kind === 'parcel' ? 'parcel' : 'zone';
  return {
    outcome,
    kind,
    name,
    corners: ground.corners,
    areaM2,
    box,
    notes,
    parts: ground.parts,
    position: null,
    sigmaM: walk?.sigmaM ?? null,
    method: walk === null ? 'imported' : 'walked',
    isPlaced,
  };

  function keep(): Judged {
    const all = [...lines.flat(), ...points];
    if (notes.length === 0) tell('encloses-nothing', 'note', 'it is a line that encloses no ground.');
    return { ...NOTHING, outcome: 'kept', name, corners: all.length, box: boxOf(all), notes };
  }
}

const NOTHING: Judged = {
  outcome: 'refused',
  kind: 'other',
  name: '',
  corners: 0,
  areaM2: 0,
  box: null,
  notes: [],
  parts: [],
  position: null,
  sigmaM: null,
  method: 'imported',
  isPlaced: true,
};

/** The judgement without the shape, to be kept for every feature of a large file. */
export function candidateOf({ outcome, kind, name, corners, areaM2, box, notes }: Judged): Candidate {
  return { outcome, kind, name, corners, areaM2, box, notes };
}

/** The feature in the text of its reader; null when it is no JSON object. */
export function parseFeature(text: string): {
  readonly [member: string]: unknown;
  readonly properties: Record<string, unknown>;
  readonly geometry: unknown;
} | null {
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
    const { properties, geometry, ...more } = value as Record<string, unknown>;
    const isObject = typeof properties === 'object' && properties !== null && !Array.isArray(properties);
    return {
      ...more,
      properties: isObject ? (properties as Record<string, unknown>) : {},
      geometry: geometry ?? null,
    };
  } catch {
    return null;
  }
}

/**
 * The shape with latitude and longitude swapped, when as it stands it lies nowhere or far from the anchor
 * and swapped it lies near it; else null.
 */
function readTurned(
  asFile: ReturnType<typeof readShape>,
  geometry: unknown,
  { rules, anchor, toLonLat }: JudgeContext,
): Extract<ReturnType<typeof readShape>, { ok: true }> | null {
  if (anchor === null) return null;
  const at = asFile.ok ? firstOf(asFile.shape) : null;
  const isAstray = at ? roughM(at, anchor) > FAR_M : !asFile.ok && asFile.fault.code === 'swapped-order';
  if (!isAstray) return null;
  const turned = readShape(geometry, { isSwapped: !rules.isSwapped }, toLonLat);
  const there = turned.ok ? firstOf(turned.shape) : null;
  return turned.ok && there && roughM(there, anchor) <= NEAR_M ? turned : null;
}

function firstOf({ polygons, lines, points }: ReadShape): Position | undefined {
  return polygons[0]?.[0]?.[0] ?? lines[0]?.[0] ?? points[0];
}

/** Distance on a sphere, m; good to 1 % and enough to tell near from far. */
export function roughM(a: Position, b: Position): number {
  const rad = Math.PI / 180;
  const h =
    Math.sin(((b[1] - a[1]) * rad) / 2) ** 2 +
    Math.cos(a[1] * rad) * Math.cos(b[1] * rad) * Math.sin(((b[0] - a[0]) * rad) / 2) ** 2;
  return 2 * 6_371_000 * Math.asin(Math.min(1, Math.sqrt(h)));
}

function widthOf(corners: readonly Position[], at: Position): number {
  if (Math.abs(at[1]) >= 89.9) return 0;
  const plane = createPlane([at[0], at[1]]);
  let [west, south, east, north] = [0, 0, 0, 0];
  for (const corner of corners) {
    const [x, y] = plane.toPlane(corner);
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  return Math.max(east - west, north - south);
}

function boxOf(positions: readonly Position[]): Box | null {
  const [first] = positions;
  if (!first) return null;
  let [west, south, east, north] = [first[0], first[1], first[0], first[1]];
  for (const [given, lat] of positions) {
    const lon = given - 360 * Math.round((given - first[0]) / 360);
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  return [west, south, east, north];
}

/** Whether a zone of the yard has the same outline, by its box and area. */
export function isTwin(zone: ZonePrint, areaM2: number, box: Box): boolean {
  return (
    box.every((edge, i) => Math.abs(edge - (zone.box[i] ?? Number.NaN)) <= SAME_DEG) &&
    Math.abs(zone.areaM2 - areaM2) <= 1e-3 * areaM2 + 0.01
  );
}
