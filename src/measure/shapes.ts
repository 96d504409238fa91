import { addZone, replaceZone } from '../yard/edits';
import {
  type Issue,
  type Position,
  type Ring,
  type Rings,
  type Yard,
  ZONE_KINDS,
  type Zone,
} from '../yard/types';
import { bufferOf, differenceOf, intersectionOf, planeAreaOf, unionOf } from './clip';
import { createCornerBook, insertCorners, roundPosition } from './corners';
import { checkRing } from './crossings';
import { nameInText } from './nameInText';
import { sharedLengthM } from './outline';
import { createPlane, ringsToPlane } from './plane';
import { boxOf } from './planeBox';
import { layZone } from './planeZone';
import { leftOfLine } from './splitLine';
import type { LocalPlane, PlaneRings, XY } from './types';

export { makeCircle } from './makeCircle';
export { makeRectangle, makeRectangleFromCorner } from './makeRectangle';
export { ringFromCorners } from './ringFromCorners';
export { type Closure, closureOfSides, ringFromSides, type Side } from './ringFromSides';

/** A new document, or why the edit cannot be made. */
export type ShapeResult =
  | { readonly ok: true; readonly yard: Yard }
  | { readonly ok: false; readonly issue: Issue };

/** Pieces smaller than this are noise of the grid, m². */
const NOISE_M2 = 1e-4;
/** Zones that share less border than this do not touch, m. */
const LEAST_BORDER_M = 0.001;

function refuse(code: string, message: string, zoneId?: string, position?: Position): ShapeResult {
  return { ok: false, issue: { code, severity: 'error', message, place: { zoneId, position } } };
}

function withZone(
  yard: Yard,
  zoneId: string,
  plane: LocalPlane,
  edit: (zone: Zone, parts: readonly PlaneRings[]) => ShapeResult,
): ShapeResult {
  const zone = yard.zones.find((one) => one.id === zoneId);
  if (!zone) return refuse('zone-not-found', 'This zone is no longer in the yard.', zoneId);
  const laid = layZone(zone, plane);
  const fault = laid.issues[0];
  return laid.isSound || !fault ? edit(zone, laid.parts) : { ok: false, issue: fault };
}

function notNoise(parts: readonly PlaneRings[]): PlaneRings[] {
  return parts.filter((rings) => planeAreaOf([rings]) >= NOISE_M2);
}

/**
 * Splits a zone by a line in two: the larger side keeps the id, the other becomes `newId`, placed after
 * it in the list with the same name and " 2". A line that ends inside is carried on straight. New corners are the
 * same in both halves and in neighbours that share the border.
 * @param line two or more positions, degrees
 */
export function splitZone(
  yard: Yard,
  zoneId: string,
  line: readonly Position[],
  newId: string,
  plane: LocalPlane,
): ShapeResult {
  return withZone(yard, zoneId, plane, (zone, parts) => {
    const path = line.map((p) => plane.toPlane(p)).filter((p, i, all) => i === 0 || !same(p, all[i - 1]));
    if (path.length < 2)
      return refuse('split-line-short', 'The dividing line needs two different points.', zoneId);
    const left = leftOfLine(path, parts);
    if (!left) {
      const message = `Carried on straight, this line would cut ${nameInText(zone)} at another place. Draw it right across the zone, both ends outside.`;
      return refuse('split-line-ambiguous', message, zoneId, line[0]);
    }
    const sides = [notNoise(intersectionOf(parts, [left])), notNoise(differenceOf(parts, [left]))];
    sides.sort((a, b) => planeAreaOf(b) - planeAreaOf(a));
    const [large = [], small = []] = sides;
    if (small.length === 0) {
      return refuse('split-line-outside', `The line does not divide ${nameInText(zone)}.`, zoneId, line[0]);
    }
    const book = createCornerBook(yard.zones, plane, [line]);
    const kept: Zone = { ...zone, parts: book.toRings(large) };
    const half: Zone = {
      ...zone,
      id: newId,
      name: zone.name && `${zone.name} 2`,
      parts: book.toRings(small),
    };
    if (yard.zones.some((one) => one.id === newId))
      throw new Error(`The yard already has a zone "${newId}".`);
    const zones = yard.zones.flatMap((one) => (one.id === zoneId ? [kept, half] : [one]));
    const corners = [...kept.parts, ...half.parts].flat(2);
    return { ok: true, yard: insertCorners({ ...yard, zones }, corners, plane) };
  });
}

function same(a: XY, b: XY | undefined): boolean {
  return b !== undefined && a[0] === b[0] && a[1] === b[1];
}

/** Joins two zones of one kind that touch or overlap; the first keeps its id, name and fields, the second goes. */
export function joinZones(yard: Yard, [idA, idB]: readonly [string, string], plane: LocalPlane): ShapeResult {
  return withZone(yard, idA, plane, (a, partsA) =>
    withZone(yard, idB, plane, (b, partsB) => {
      if (idA === idB) return refuse('join-one-zone', 'Choose two different zones to join.', idA);
      if (a.kind !== b.kind) {
        const message = `${nameInText(a, 'start')} is ${a.kind} and ${nameInText(b)} is ${b.kind}: only zones of one kind can be joined.`;
        return refuse('join-kinds-differ', message, idB);
      }
      const isOverlapping = notNoise(intersectionOf(partsA, partsB)).length > 0;
      if (!isOverlapping && sharedLengthM(partsA, partsB) < LEAST_BORDER_M) {
        const message = `${nameInText(a, 'start')} and ${nameInText(b)} do not touch along a border, so they cannot be joined.`;
        return refuse('join-apart', message, idB);
      }
      const parts = joinParts(partsA, partsB);
      const book = createCornerBook([a, b], plane);
      const joined: Zone = { ...a, parts: book.toRings(parts), survey: looserSurvey(a, b) };
      const zones = yard.zones.filter((one) => one.id !== idB);
      const yardLess = { ...yard, zones, visits: renamedChoices(yard, idB, idA) };
      return {
        ok: true,
        yard: insertCorners(replaceZone(yardLess, joined), joined.parts.flat(2), plane, [idA]),
      };
    }),
  );
}

/** Union that also heals cracks of a few grid steps along a border whose corners do not match. */
export function joinParts(a: readonly PlaneRings[], b: readonly PlaneRings[]): PlaneRings[] {
  const seam = intersectionOf(bufferOf({ parts: a }, 1e-4), bufferOf({ parts: b }, 1e-4));
  const plain = unionOf([...a, ...b]);
  const isWhole = plain.length < a.length + b.length && !plain.some((rings) => rings.slice(1).some(isCrack));
  return (isWhole ? plain : unionOf([...a, ...b, ...seam])).map((rings) =>
    rings.filter((ring, i) => i === 0 || !isCrack(ring)),
  );
}

function isCrack(ring: readonly XY[]): boolean {
  return planeAreaOf([[ring]]) < 1e-3;
}

function looserSurvey(a: Zone, b: Zone): Zone['survey'] {
  return b.survey.vertexSigmaM > a.survey.vertexSigmaM ? b.survey : a.survey;
}

/** Visits that named the zone that goes name the one that stays. */
function renamedChoices(yard: Yard, fromId: string, toId: string): Yard['visits'] {
  const swap = (ids: readonly string[]) =>
    ids.includes(fromId) ? [...new Set(ids.map((id) => (id === fromId ? toId : id)))] : ids;
  const choice = <C extends { include: readonly string[]; exclude: readonly string[] }>(c: C): C => {
    const [include, exclude] = [swap(c.include), c.exclude.filter((id) => id !== fromId)];
    return { ...c, include, exclude };
  };
  const names = (c: { include: readonly string[]; exclude: readonly string[] } | null) =>
    c !== null && (c.include.includes(fromId) || c.exclude.includes(fromId));
  return yard.visits.map((visit) =>
    names(visit.zones) || visit.doses.some((dose) => names(dose.zones))
      ? {
          ...visit,
          zones: choice(visit.zones),
          doses: visit.doses.map((dose) => (dose.zones ? { ...dose, zones: choice(dose.zones) } : dose)),
        }
      : visit,
  );
}

/** Takes a ring out of a zone for good; neighbours' corners on the new edge are matched. */
export function cutHole(yard: Yard, zoneId: string, ring: Ring, plane: LocalPlane): ShapeResult {
  return withZone(yard, zoneId, plane, (zone, parts) => {
    const fault = checkRing(ring)[0];
    if (fault) return { ok: false, issue: { ...fault, place: { ...fault.place, zoneId } } };
    const cut = ringsToPlane([ring], plane);
    if (notNoise(intersectionOf(parts, [cut])).length === 0) {
      return refuse('cut-outside', `The shape does not lie on ${nameInText(zone)}.`, zoneId, ring[0]);
    }
    const left = notNoise(differenceOf(parts, [cut]));
    if (left.length === 0)
      return refuse('cut-all', `Nothing of ${nameInText(zone)} would be left.`, zoneId, ring[0]);
    const book = createCornerBook(yard.zones, plane, [ring]);
    const made = replaceZone(yard, { ...zone, parts: book.toRings(left) });
    return { ok: true, yard: insertCorners(made, book.added(), plane, [zoneId]) };
  });
}

/**
 * Makes `newZone` on the ground of a zone, with `ring` as its outline. Where kinds cut each other
 * (a bed on turf) the zone below keeps its drawn shape; else (turf on turf) the ring is taken out of it.
 */
export function cutOut(
  yard: Yard,
  zoneId: string,
  ring: Ring,
  newZone: Zone,
  plane: LocalPlane,
): ShapeResult {
  return withZone(yard, zoneId, plane, (zone, parts) => {
    const fault = checkRing(ring)[0];
    if (fault) return { ok: false, issue: { ...fault, place: { ...fault.place, zoneId } } };
    if (notNoise(intersectionOf(parts, [ringsToPlane([ring], plane)])).length === 0) {
      return refuse('cut-outside', `The shape does not lie on ${nameInText(zone)}.`, zoneId, ring[0]);
    }
    const made: Zone = { ...newZone, parts: [[ring]] };
    const [below, above] = [ZONE_KINDS.indexOf(zone.kind), ZONE_KINDS.indexOf(made.kind)];
    const cutsByItself = above < below || (above === below && made.cutsSameKind);
    if (cutsByItself) return { ok: true, yard: addZone(yard, made) };
    const cut = cutHole(yard, zoneId, ring, plane);
    if (!cut.ok) return cut;
    const corners = cut.yard.zones.find((one) => one.id === zoneId)?.parts.flat(2) ?? [];
    const both = addZone(cut.yard, made);
    const others = both.zones.flatMap((one) => (one.id === made.id ? [] : [one.id]));
    return { ok: true, yard: insertCorners(both, corners, plane, others) };
  });
}

/** Moves a zone by metres east and north; its size on the ground stays. */
export function moveZone(yard: Yard, zoneId: string, by: XY, plane: LocalPlane): ShapeResult {
  if (!by.every(Number.isFinite))
    return refuse('move-not-number', 'Type how far to move, in each direction.', zoneId);
  return withZone(yard, zoneId, plane, (zone) => {
    const here = createPlane(middleOf(zone, plane));
    const target = here.toLonLat(by);
    if (!(Math.abs(target[1]) < 90))
      return refuse('move-too-far', 'That would carry the zone past a pole.', zoneId);
    const there = createPlane(target);
    return {
      ok: true,
      yard: replaceZone(
        yard,
        mapZone(zone, (p) => there.toLonLat(here.toPlane(p))),
      ),
    };
  });
}

/** Turns a zone round the middle of its box. @param degrees clockwise */
export function rotateZone(yard: Yard, zoneId: string, degrees: number, plane: LocalPlane): ShapeResult {
  if (!Number.isFinite(degrees))
    return refuse('turn-not-number', 'Type by how many degrees to turn.', zoneId);
  return withZone(yard, zoneId, plane, (zone) => {
    const here = createPlane(middleOf(zone, plane));
    const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
    const turned = mapZone(zone, (p) => {
      const [x, y] = here.toPlane(p);
      return here.toLonLat([x * cos + y * sin, y * cos - x * sin]);
    });
    return { ok: true, yard: replaceZone(yard, turned) };
  });
}

function middleOf(zone: Zone, plane: LocalPlane): Position {
  const box = boxOf(layZone(zone, plane).drawn);
  return plane.toLonLat([(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]);
}

function mapZone(zone: Zone, place: (p: Position) => Position): Zone {
  const parts: Rings[] = zone.parts.map((rings) =>
    rings.map((ring) => ring.map((p) => roundPosition(place(p)))),
  );
  return { ...zone, parts };
}

/** Moves the corner at `from`, in every zone that has it, to `to`. Refused when an outline would cross itself. */
export function moveSharedCorner(yard: Yard, from: Position, to: Position): ShapeResult {
  const isFrom = (p: Position) => p[0] === from[0] && p[1] === from[1];
  const touched: Zone[] = [];
  const zones = yard.zones.map((zone) => {
    if (!zone.parts.some((rings) => rings.some((ring) => ring.some(isFrom)))) return zone;
    const parts = zone.parts.map((rings) =>
      rings.map((ring) => (ring.some(isFrom) ? ring.map((p) => (isFrom(p) ? to : p)) : ring)),
    );
    const made = { ...zone, parts };
    touched.push(made);
    return made;
  });
  if (touched.length === 0)
    return refuse('corner-not-found', 'No zone has a corner at this place.', undefined, from);
  for (const zone of touched) {
    const fault = zone.parts.flatMap((rings) => rings.flatMap((ring) => checkRing(ring)))[0];
    if (fault) {
      const message = `${nameInText(zone, 'start')}: ${fault.message}`;
      return { ok: false, issue: { ...fault, message, place: { ...fault.place, zoneId: zone.id } } };
    }
  }
  return { ok: true, yard: { ...yard, zones } };
}
