import { type Issue, type Rings, type Yard, ZONE_KINDS, type Zone } from '../yard/types';
import { differenceOf, planeAreaOf, unionOf } from './clip';
import { checkRing } from './crossings';
import { areaOfPartsM2, perimeterOfPartsM } from './geodesic';
import { createPlane, ringsToLonLat, ringsToPlane } from './plane';
import { totalsByKind } from './totals';
import type { CutBy, LocalPlane, MeasuredYard, MeasuredZone, PlaneRings } from './types';
import { gradientOf, sigmaOfGradient } from './uncertainty';

/** Mean Earth radius R1, m. Source: IUGG 1980 (Moritz); used only for the scale of elevation. */
const EARTH_RADIUS_M = 6371008.8;
/** A plane is kept while the yard's middle stays this near to its origin, degrees (about 2 km). */
const PLANE_REACH_DEG = 0.02;

/** [min x, min y, max x, max y], m. */
type Box = readonly [number, number, number, number];

/** A zone in the plane, made once for each zone object. */
interface Prepared {
  readonly zone: Zone;
  readonly plane: LocalPlane;
  readonly planeParts: readonly PlaneRings[];
  readonly box: Box;
  readonly issues: readonly Issue[];
}
const prepared = new WeakMap<Zone, Prepared>();

/** What a measured zone came from: it is good while these are the same objects. */
interface Origin {
  readonly zone: Zone;
  readonly cutters: readonly Zone[];
  readonly plane: LocalPlane;
  readonly elevationM: number | null;
}
const origins = new WeakMap<MeasuredZone, Origin>();

/**
 * Gross and net area of every zone with its error, and the totals by kind.
 *
 * Kinds cut each other in the order of ZONE_KINDS; a zone that says `cutsSameKind` also cuts those of
 * its kind drawn before it. Areas are geodesic on WGS 84, times (1 + h/R)² where the yard has an
 * elevation h. A zone whose outline crosses itself or has too few corners is left out and listed in
 * `issues`: it neither counts nor cuts.
 * @param previous the last result; zones whose inputs are the same objects are taken over from it
 */
export function measureYard(yard: Yard, previous?: MeasuredYard): MeasuredYard {
  const plane = planeFor(yard, previous);
  const all = yard.zones.map((zone) => prepare(zone, plane));
  const usable = all.filter((each) => each.issues.length === 0);
  const { elevationM } = yard.settings;
  const zones = new Map<string, MeasuredZone>();
  usable.forEach((subject, index) => {
    const cutters = cuttersOf(subject, index, usable);
    const before = previous?.zones.get(subject.zone.id);
    const origin: Origin = { zone: subject.zone, cutters: cutters.map((c) => c.zone), plane, elevationM };
    const measured =
      before && isSame(origins.get(before), origin) ? before : measureZone(subject, cutters, origin);
    zones.set(subject.zone.id, measured);
  });
  const totals = totalsByKind(
    usable.map(({ zone }) => zone),
    zones,
    plane,
    areaScale(elevationM),
  );
  return { plane, zones, totals, issues: all.flatMap((each) => each.issues) };
}

function areaScale(elevationM: number | null): number {
  return (1 + (elevationM ?? 0) / EARTH_RADIUS_M) ** 2;
}

function measureZone(subject: Prepared, cutters: readonly Prepared[], origin: Origin): MeasuredZone {
  const { zone, plane } = { zone: subject.zone, plane: origin.plane };
  const scale = areaScale(origin.elevationM);
  const whole = subject.planeParts.length > 1 ? unionOf(subject.planeParts) : subject.planeParts;
  const grossM2 = scale * areaOfPartsM2(subject.planeParts.length > 1 ? toLonLat(whole, plane) : zone.parts);
  let netPlaneParts = whole;
  let netM2 = grossM2;
  const cutBy: CutBy[] = [];
  const realCutters: Zone[] = [];
  for (const cutter of cutters) {
    const left = differenceOf(netPlaneParts, cutter.planeParts);
    const takenM2 = planeAreaOf(netPlaneParts) - planeAreaOf(left);
    if (takenM2 < 1e-5) continue;
    const leftM2 = scale * areaOfPartsM2(toLonLat(left, plane));
    cutBy.push({ zoneId: cutter.zone.id, areaM2: netM2 - leftM2 });
    realCutters.push(cutter.zone);
    netPlaneParts = left;
    netM2 = leftM2;
  }
  const netParts =
    cutBy.length === 0 && zone.parts.length === 1 ? zone.parts : toLonLat(netPlaneParts, plane);
  const gradient = gradientOf(netPlaneParts, [zone, ...realCutters], plane);
  const linear = Math.sqrt(scale);
  const measured: MeasuredZone = {
    zoneId: zone.id,
    grossM2,
    netM2,
    netSigmaM2: linear * sigmaOfGradient(gradient),
    netPerimeterM: linear * perimeterOfPartsM(netParts),
    netParts,
    netPlaneParts,
    cutBy,
    gradient,
  };
  origins.set(measured, origin);
  return measured;
}

function toLonLat(parts: readonly PlaneRings[], plane: LocalPlane): Rings[] {
  return parts.map((rings) => ringsToLonLat(rings, plane));
}

/** Zones that take ground from `subject`, in the order in which they take it. */
function cuttersOf(subject: Prepared, index: number, all: readonly Prepared[]): Prepared[] {
  const own = ZONE_KINDS.indexOf(subject.zone.kind);
  const cutters: { order: number; cutter: Prepared }[] = [];
  all.forEach((other, otherIndex) => {
    if (other === subject || !boxesMeet(subject.box, other.box)) return;
    const order = ZONE_KINDS.indexOf(other.zone.kind);
    const cutsOwnKind = order === own && other.zone.cutsSameKind && otherIndex > index;
    if (order < own || cutsOwnKind) cutters.push({ order, cutter: other });
  });
  return cutters.sort((a, b) => a.order - b.order).map(({ cutter }) => cutter);
}

function isSame(a: Origin | undefined, b: Origin): boolean {
  return (
    a !== undefined &&
    a.zone === b.zone &&
    a.plane === b.plane &&
    a.elevationM === b.elevationM &&
    a.cutters.length === b.cutters.length &&
    a.cutters.every((zone, i) => zone === b.cutters[i])
  );
}

function prepare(zone: Zone, plane: LocalPlane): Prepared {
  const kept = prepared.get(zone);
  if (kept?.plane === plane) return kept;
  const issues = kept ? kept.issues : zoneIssues(zone);
  const planeParts = zone.parts.map((rings) => ringsToPlane(rings, plane));
  const made = { zone, plane, planeParts, box: boxOf(planeParts), issues };
  prepared.set(zone, made);
  return made;
}

function zoneIssues(zone: Zone): Issue[] {
  const place = { zoneId: zone.id };
  const named = zone.name === '' ? 'A zone without a name' : `“${zone.name}”`;
  if (zone.parts.length === 0 || zone.parts.some((rings) => rings.length === 0)) {
    const message = `${named} has no outline and is not measured.`;
    return [{ code: 'zone-empty', severity: 'error', message, place }];
  }
  return zone.parts
    .flatMap((rings) => rings.flatMap((ring) => checkRing(ring)))
    .map((issue) => ({
      ...issue,
      message: `${named} is not measured: ${issue.message.charAt(0).toLowerCase()}${issue.message.slice(1)}`,
      place: { ...issue.place, ...place },
    }));
}

function boxOf(parts: readonly PlaneRings[]): Box {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const rings of parts) {
    for (const [x, y] of rings[0] ?? []) {
      x0 = Math.min(x0, x);
      y0 = Math.min(y0, y);
      x1 = Math.max(x1, x);
      y1 = Math.max(y1, y);
    }
  }
  return [x0, y0, x1, y1];
}

function boxesMeet(a: Box, b: Box): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}

/** The previous plane while it is near enough, else one at the middle of the yard. */
function planeFor(yard: Yard, previous: MeasuredYard | undefined): LocalPlane {
  const first = yard.zones[0]?.parts[0]?.[0]?.[0] ?? yard.marks[0]?.position;
  if (!first || !first.every(Number.isFinite) || Math.abs(first[1]) >= 90)
    return previous?.plane ?? createPlane([0, 0]);
  if (previous) {
    const [lon, lat] = previous.plane.origin;
    const reachLon = PLANE_REACH_DEG / Math.cos((lat * Math.PI) / 180);
    if (Math.abs(first[1] - lat) < PLANE_REACH_DEG && Math.abs(first[0] - lon) < reachLon)
      return previous.plane;
  }
  return createPlane(first);
}
