import { addZone, replaceZone } from '../yard/edits';
import {
  type Curve,
  type Position,
  type Ring,
  type Rings,
  type Yard,
  ZONE_KINDS,
  type Zone,
} from '../yard/types';
import { differenceOf, intersectionOf, planeAreaOf } from './clip';
import { createCornerBook } from './corners';
import { checkRing } from './crossings';
import { dropStaleCurves } from './curves';
import { nameInText } from './nameInText';
import { ringsToPlane } from './plane';
import { matchCorners, notNoise, refuse, type ShapeResult, withZone } from './shapeResult';
import { leftOfLine } from './splitLine';
import type { LocalPlane, PlaneRings, XY } from './types';

export { joinParts, joinZones } from './joinZones';
export { makeCircle } from './makeCircle';
export { makeRectangle, makeRectangleFromCorner } from './makeRectangle';
export { flipZone, moveZone, repeatZone, rotateZone } from './moveZone';
export { ringFromCorners } from './ringFromCorners';
export type { ShapeResult } from './shapeResult';

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
    const kept = dropStaleCurves({ ...zone, parts: book.toRings(large) });
    const half: Zone = dropStaleCurves({
      ...zone,
      id: newId,
      name: zone.name && `${zone.name} 2`,
      parts: book.toRings(small),
    });
    if (yard.zones.some((one) => one.id === newId))
      throw new Error(`The yard already has a zone "${newId}".`);
    const zones = yard.zones.flatMap((one) => (one.id === zoneId ? [kept, half] : [one]));
    const corners = [...kept.parts, ...half.parts].flat(2);
    return { ok: true, yard: matchCorners({ ...yard, zones }, corners, plane) };
  });
}

function same(a: XY, b: XY | undefined): boolean {
  return b !== undefined && a[0] === b[0] && a[1] === b[1];
}

/**
 * Takes a ring out of a zone for good; neighbours' corners on the new edge are matched.
 * @param curves of the ring; the zone's new edge keeps them
 */
export function cutHole(
  yard: Yard,
  zoneId: string,
  ring: Ring,
  plane: LocalPlane,
  curves: readonly Curve[] = [],
): ShapeResult {
  return cutParts(yard, zoneId, [[ring]], curves, plane);
}

/** As cutHole, by whole parts. */
export function cutParts(
  yard: Yard,
  zoneId: string,
  taken: readonly Rings[],
  curves: readonly Curve[],
  plane: LocalPlane,
): ShapeResult {
  return withZone(yard, zoneId, plane, (zone, parts) => {
    const fault = faultOf(zone, parts, taken, plane);
    if (fault) return fault;
    const left = notNoise(differenceOf(parts, partsToPlane(taken, plane)));
    if (left.length === 0)
      return refuse('cut-all', `Nothing of ${nameInText(zone)} would be left.`, zoneId, taken[0]?.[0]?.[0]);
    const book = createCornerBook(yard.zones, plane, taken.flat());
    const kept = dropStaleCurves({ ...zone, parts: book.toRings(left), curves: [...zone.curves, ...curves] });
    return { ok: true, yard: matchCorners(replaceZone(yard, kept), book.added(), plane, [zoneId]) };
  });
}

function partsToPlane(parts: readonly Rings[], plane: LocalPlane): PlaneRings[] {
  return parts.map((rings) => ringsToPlane(rings, plane));
}

/** Why the shape cannot be cut from the zone: it crosses itself or lies elsewhere. */
function faultOf(
  zone: Zone,
  parts: readonly PlaneRings[],
  taken: readonly Rings[],
  plane: LocalPlane,
): Extract<ShapeResult, { ok: false }> | null {
  const fault = taken.flat().flatMap((ring) => checkRing(ring))[0];
  if (fault) return { ok: false, issue: { ...fault, place: { ...fault.place, zoneId: zone.id } } };
  if (notNoise(intersectionOf(parts, partsToPlane(taken, plane))).length > 0) return null;
  return refuse('cut-outside', `The shape does not lie on ${nameInText(zone)}.`, zone.id, taken[0]?.[0]?.[0]);
}

/**
 * Makes `newZone` on the ground of a zone, with `ring` as its outline. Where kinds cut each other
 * (a bed on turf) the zone below keeps its drawn shape, locked or not; else (turf on turf) the ring is
 * taken out of it.
 */
export function cutOut(
  yard: Yard,
  zoneId: string,
  ring: Ring,
  newZone: Zone,
  plane: LocalPlane,
): ShapeResult {
  return layOnZone(yard, zoneId, { ...newZone, parts: [[ring]] }, plane);
}

/** As cutOut, for a new zone that has its parts already. */
export function layOnZone(yard: Yard, zoneId: string, made: Zone, plane: LocalPlane): ShapeResult {
  const find = (zone: Zone) => ZONE_KINDS.indexOf(zone.kind);
  const check = (zone: Zone, parts: readonly PlaneRings[]): ShapeResult => {
    const fault = faultOf(zone, parts, made.parts, plane);
    if (fault) return fault;
    const cutsByItself = find(made) < find(zone) || (find(made) === find(zone) && made.cutsSameKind);
    if (cutsByItself) return { ok: true, yard: addZone(yard, made) };
    const cut = cutParts(yard, zoneId, made.parts, made.curves, plane);
    if (!cut.ok) return cut;
    const corners = cut.yard.zones.find((one) => one.id === zoneId)?.parts.flat(2) ?? [];
    const both = addZone(cut.yard, made);
    const others = both.zones.flatMap((one) => (one.id === made.id ? [] : [one.id]));
    return { ok: true, yard: matchCorners(both, corners, plane, others) };
  };
  return withZone(yard, zoneId, plane, check, true);
}

/**
 * Adds a zone whose corners on neighbours' edges become corners of those neighbours, and theirs of it,
 * so that shared borders stay shared. Locked neighbours stay as they are.
 */
export function addMatched(yard: Yard, zone: Zone, plane: LocalPlane): Yard {
  const both = matchCorners(addZone(yard, zone), zone.parts.flat(2), plane, [zone.id]);
  const others = both.zones.flatMap((one) => (one.id === zone.id ? [] : [one.id]));
  const theirs = both.zones.flatMap((one) => (one.id === zone.id || !one.isPlaced ? [] : one.parts.flat(2)));
  return matchCorners(both, theirs, plane, others);
}
