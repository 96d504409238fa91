import { addZone, replaceZone } from '../yard/edits';
import type { Position, Yard, Zone } from '../yard/types';
import { roundPosition } from './corners';
import { collapseParts, expandParts, transformNodes } from './outlineNodes';
import { createPlane } from './plane';
import { boxOf, middleOfBox } from './planeBox';
import { layZone } from './planeZone';
import { refuse, type ShapeResult, withZone } from './shapeResult';
import { turnClockwise } from './turnClockwise';
import type { LocalPlane, XY } from './types';

/** Moves a zone by metres east and north; its size on the ground stays, and its curves. */
export function moveZone(yard: Yard, zoneId: string, by: XY, plane: LocalPlane): ShapeResult {
  if (!by.every(Number.isFinite))
    return refuse('move-not-number', 'Type how far to move, in each direction.', zoneId);
  return withZone(yard, zoneId, plane, (zone) => {
    const moved = shifted(zone, by, plane);
    if (!moved) return refuse('move-too-far', 'That would carry the zone past a pole.', zoneId);
    return { ok: true, yard: replaceZone(yard, moved) };
  });
}

/** Turns a zone round the middle of its box. @param degrees clockwise */
export function rotateZone(yard: Yard, zoneId: string, degrees: number, plane: LocalPlane): ShapeResult {
  if (!Number.isFinite(degrees))
    return refuse('turn-not-number', 'Type by how many degrees to turn.', zoneId);
  return withZone(yard, zoneId, plane, (zone) => {
    const here = createPlane(middleOf(zone, plane));
    const turn = turnClockwise(degrees);
    const turned = mapZone(zone, (p) => here.toLonLat(turn(here.toPlane(p))));
    return { ok: true, yard: replaceZone(yard, turned) };
  });
}

/** Turns a zone over, about a line through the middle of its box. @param bearingDeg of that line, degrees from north */
export function flipZone(yard: Yard, zoneId: string, bearingDeg: number, plane: LocalPlane): ShapeResult {
  if (!Number.isFinite(bearingDeg))
    return refuse('flip-not-number', 'Type the direction of the line to flip about.', zoneId);
  return withZone(yard, zoneId, plane, (zone) => {
    const here = createPlane(middleOf(zone, plane));
    const twice = (2 * bearingDeg * Math.PI) / 180;
    const [sin, cos] = [Math.sin(twice), Math.cos(twice)];
    const flipped = mapZone(zone, (p) => {
      const [x, y] = here.toPlane(p);
      return here.toLonLat([-x * cos + y * sin, x * sin + y * cos]);
    });
    return { ok: true, yard: replaceZone(yard, flipped) };
  });
}

/**
 * Adds copies of a zone in a row, each `by` metres east and north of the one before, unlocked, after
 * the others in the list.
 * @param copies id and name of each
 */
export function repeatZone(
  yard: Yard,
  zoneId: string,
  copies: readonly { readonly id: string; readonly name: string }[],
  by: XY,
  plane: LocalPlane,
): ShapeResult {
  if (!by.every(Number.isFinite) || Math.hypot(...by) === 0)
    return refuse('repeat-no-distance', 'Type how far apart the copies stand.', zoneId);
  return withZone(
    yard,
    zoneId,
    plane,
    (zone) => {
      let made = yard;
      for (const [i, copy] of copies.entries()) {
        const twin = shifted(
          { ...zone, ...copy, isLocked: false },
          [by[0] * (i + 1), by[1] * (i + 1)],
          plane,
        );
        if (!twin) return refuse('move-too-far', 'That would carry a copy past a pole.', zoneId);
        made = addZone(made, twin);
      }
      return { ok: true, yard: made };
    },
    true,
  );
}

function shifted(zone: Zone, by: XY, plane: LocalPlane): Zone | null {
  const here = createPlane(middleOf(zone, plane));
  const target = here.toLonLat(by);
  if (!(Math.abs(target[1]) < 90)) return null;
  const there = createPlane(target);
  return mapZone(zone, (p) => there.toLonLat(here.toPlane(p)));
}

function middleOf(zone: Zone, plane: LocalPlane): Position {
  return plane.toLonLat(middleOfBox(boxOf(layZone(zone, plane).drawn)));
}

/** Every corner and curve point through a change of place; curves are laid anew, so that they stay editable. */
export function mapZone(zone: Zone, place: (p: Position) => Position): Zone {
  return { ...zone, ...expandParts(transformNodes(collapseParts(zone), (p) => roundPosition(place(p)))) };
}
