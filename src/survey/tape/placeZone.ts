import { findAllCurves, flattenCurve } from '../../measure/curves';
import { createPlane } from '../../measure/plane';
import { boxOf } from '../../measure/planeBox';
import type { ShapeResult } from '../../measure/shapes';
import type { LocalPlane, XY } from '../../measure/types';
import { replaceZone } from '../../yard/edits';
import { lockedIssue } from '../../yard/locks';
import type { Curve, Position, Ring, Yard, Zone } from '../../yard/types';

const RAD = Math.PI / 180;
/** The plane in which every zone without a place is kept. */
const NOWHERE: LocalPlane = createPlane([0, 0]);

/**
 * Gives a zone without a place its place on the ground; size and shape stay as they are.
 * @param at where the middle of its box comes to lie, degrees
 * @param turnDeg how far it is turned clockwise from its sketch, degrees
 * @returns refused when the zone is gone, has its place already, or is locked
 */
export function placeZone(yard: Yard, zoneId: string, at: Position, turnDeg: number): ShapeResult {
  const zone = yard.zones.find((each) => each.id === zoneId);
  if (!zone) return refuse('zone-not-found', 'This zone is no longer in the yard.', zoneId);
  if (zone.isPlaced) return refuse('zone-placed', 'This zone has its place on the map already.', zoneId);
  if (zone.isLocked) return { ok: false, issue: lockedIssue(zone) };
  if (!Number.isFinite(turnDeg))
    return refuse('turn-not-number', 'The direction is degrees from north, such as 90.', zoneId);
  if (!Number.isFinite(at[0]) || !(Math.abs(at[1]) < 90))
    return refuse('place-unusable', 'That is no place on the map.', zoneId);
  return { ok: true, yard: replaceZone(yard, carryZone(zone, createPlane(at), turnDeg)) };
}

function refuse(code: string, message: string, zoneId: string): ShapeResult {
  return { ok: false, issue: { code, severity: 'error', message, place: { zoneId } } };
}

function middleOf(zone: Zone): XY {
  const box = boxOf(zone.parts.map((rings) => rings.map((ring) => ring.map((p) => NOWHERE.toPlane(p)))));
  return [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
}

/** Carries a zone from nowhere to a plane, metre by metre; its curves are flattened anew at their new place. */
function carryZone(zone: Zone, to: LocalPlane, turnDeg: number): Zone {
  const middle = middleOf(zone);
  const [sin, cos] = [Math.sin(turnDeg * RAD), Math.cos(turnDeg * RAD)];
  const carry = (p: Position): Position => {
    const [px, py] = NOWHERE.toPlane(p);
    const [x, y] = [px - middle[0], py - middle[1]];
    const [lon, lat] = to.toLonLat([x * cos + y * sin, y * cos - x * sin]);
    return [Math.round(lon * 1e11) / 1e11, Math.round(lat * 1e11) / 1e11];
  };
  const { found } = findAllCurves(zone);
  const carried = new Map(found.map(({ curve }) => [curve, { ...curve, points: curve.points.map(carry) }]));
  const parts = zone.parts.map((rings, part) =>
    rings.map((ring, ringIndex) => {
      const runs = found.filter((each) => each.part === part && each.ring === ringIndex);
      return carryRing(
        ring,
        carry,
        runs.map((run) => ({ ...run, curve: carried.get(run.curve) ?? run.curve })),
      );
    }),
  );
  return { ...zone, parts, curves: [...carried.values()], isPlaced: true };
}

interface Run {
  readonly curve: Curve;
  readonly from: number;
  readonly to: number;
  readonly isTurned: boolean;
}

function carryRing(ring: Ring, carry: (p: Position) => Position, runs: readonly Run[]): Ring {
  const open = ring.slice(0, -1);
  const count = open.length;
  const start = runs[0]?.from ?? 0;
  const made: Position[] = [];
  for (let step = 0; step < count; ) {
    const index = (start + step) % count;
    const run = runs.find((each) => each.from === index);
    const corner = open[index];
    if (run) {
      const { curve } = run;
      const course = run.isTurned ? { ...curve, points: curve.points.toReversed() } : curve;
      made.push(...flattenCurve(course).slice(0, -1));
      step += (run.to - run.from + count) % count || count;
    } else {
      if (corner) made.push(carry(corner));
      step += 1;
    }
  }
  const [first] = made;
  return first ? [...made, first] : [];
}
