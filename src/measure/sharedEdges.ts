import { isLockedZone } from '../yard/locks';
import type { Curve, Issue, Ring, Rings, Zone } from '../yard/types';
import { type LinkedRing, linkRing } from './borderLinks';
import { runsBetween, walkRing } from './borderRuns';
import { carryRing, placeOf, type RingRun } from './carryRing';
import { checkRing } from './crossings';
import { dropStaleCurves } from './curves';
import { nameInText } from './nameInText';
import { collapseParts, expandParts, type NodeParts } from './outlineNodes';
import { type Box, boxesNear, boxOf } from './planeBox';
import type { LocalPlane } from './types';

/** An outline as it is to be. */
export interface CarriedOutline {
  readonly zoneId: string;
  readonly parts: readonly Rings[];
  readonly curves: readonly Curve[];
}

/** Neighbours that go along with a zone whose outline changes. */
export interface Carrier {
  /** whether any neighbour touches the zone at all. */
  readonly hasNeighbours: boolean;
  /** outlines of the neighbours that change, for a drag under way: quick and unchecked. */
  follow(after: NodeParts): CarriedOutline[];
  /** the same to be kept: curves found anew; neighbours that are locked, or would cross themselves, stay and are told. */
  settle(after: NodeParts): { outlines: CarriedOutline[]; issues: Issue[] };
}

interface Linked {
  readonly zone: Zone;
  readonly rings: readonly (readonly LinkedRing[])[];
}

const NEAR_M = 0.001;

/**
 * Makes ready to take neighbours along while a zone is reshaped: corners and sides that lie on its
 * outline stay on it, curves they share become the new curve, corners of the zone on a neighbour's side
 * become corners of it. What was one border stays one.
 * @param zones of the yard, the one in hand and those without a place passed over
 */
export function createCarrier(zones: readonly Zone[], zoneId: string, plane: LocalPlane): Carrier {
  const own = zones.find((zone) => zone.id === zoneId);
  const before = own ? collapseParts(own) : [];
  const rings = (own?.parts ?? []).flat().map((ring) => walkRing(ring, plane));
  const box = boxOf([rings.map((ring) => ring.corners)]);
  const linked = zones.flatMap((zone): Linked[] => {
    if (zone.id === zoneId || !zone.isPlaced || !own?.isPlaced || !isNear(zone, box, plane)) return [];
    const made = collapseParts(zone).map((part) => part.map((ring) => linkRing(ring, rings, plane)));
    return made.flat().some((ring) => ring.isTouched) ? [{ zone, rings: made }] : [];
  });
  const ringsM = rings.map((ring) => ring.lengthM);
  const runsOf = (after: NodeParts) => ringRuns(before, after, ringsM, plane);
  return {
    hasNeighbours: linked.length > 0,
    follow: (after) => {
      const runs = runsOf(after);
      return linked.flatMap((one): CarriedOutline[] => {
        const parts = isLockedZone(one.zone) ? null : carryParts(one, runs);
        return parts ? [{ zoneId: one.zone.id, parts, curves: one.zone.curves }] : [];
      });
    },
    settle: (after) => settle(linked, runsOf(after), expandParts(after).curves),
  };
}

function settle(linked: readonly Linked[], runs: readonly RingRun[], curves: readonly Curve[]) {
  const outlines: CarriedOutline[] = [];
  const issues: Issue[] = [];
  for (const one of linked) {
    const parts = carryParts(one, runs);
    if (!parts) continue;
    const { zone } = one;
    const fault = isLockedZone(zone)
      ? 'it is locked'
      : parts.flat().some((ring) => checkRing(ring).length > 0)
        ? 'its outline would cross itself'
        : null;
    if (fault) {
      const message = `${nameInText(zone, 'start')} stays where it was: ${fault}.`;
      issues.push({ code: 'neighbour-stays', severity: 'warning', message, place: { zoneId: zone.id } });
      continue;
    }
    const bent = ownCurves(one, runs);
    outlines.push({
      zoneId: zone.id,
      ...dropStaleCurves({ parts, curves: [...bent, ...zone.curves, ...curves] }),
    });
  }
  return { outlines, issues };
}

function isNear(zone: Zone, box: Box, plane: LocalPlane): boolean {
  const corners = zone.parts.map((rings) => rings.map((ring) => ring.map((p) => plane.toPlane(p))));
  return boxesNear(box, boxOf(corners), NEAR_M);
}

function ringRuns(
  before: NodeParts,
  after: NodeParts,
  ringsM: readonly number[],
  plane: LocalPlane,
): RingRun[] {
  if (before.length !== after.length) return [];
  let index = -1;
  return before.flatMap((part, p) =>
    part.flatMap((ring, r): RingRun[] => {
      index += 1;
      const own = index;
      const now = after[p]?.[r];
      if (!now || after[p]?.length !== part.length || now === ring) return [];
      return runsBetween(ring, now, plane).map((run) => ({ ...run, ring: own, ringM: ringsM[own] ?? 0 }));
    }),
  );
}

/** The neighbour's rings on the new course; null when it is not touched by what changed. */
function carryParts({ zone, rings }: Linked, runs: readonly RingRun[]): Rings[] | null {
  let isChanged = false;
  const parts = rings.map((part, p) =>
    part.map((linked, r): Ring => {
      const old = zone.parts[p]?.[r] ?? [];
      const made = linked.isTouched ? carryRing(linked, runs) : null;
      if (made) isChanged = true;
      return made ?? old;
    }),
  );
  return isChanged ? parts : null;
}

/** The neighbour's own curves with ends that moved. */
function ownCurves({ rings }: Linked, runs: readonly RingRun[]): Curve[] {
  return rings.flat().flatMap(({ items }) =>
    items.flatMap((item, i): Curve[] => {
      const next = items[(i + 1) % items.length];
      if (!item.bend || !next) return [];
      return [
        { kind: item.bend.kind, points: [placeOf(item, runs), ...item.bend.inner, placeOf(next, runs)] },
      ];
    }),
  );
}
