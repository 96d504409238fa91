import { areaScale } from '../measure/areaScale';
import { ARC_TOLERANCE_M, coverWithin, differenceOf, intersectionOf, planeAreaOf } from '../measure/clip';
import { areaOfPartsM2 } from '../measure/geodesic';
import { ringsToLonLat } from '../measure/plane';
import { surfaceFactor } from '../measure/slope';
import type { LocalPlane, MeasuredZone, PlaneRings, XY } from '../measure/types';
import { gradientOfParts, ownSigmaOfParts, sourcesOf } from '../measure/uncertainty';
import { zoneClass } from '../yard/choose';
import type { Issue, Rings, Yard, Zone } from '../yard/types';
import { type StripSource, sourcesNear, stripSources } from './sources';
import type { NoApplyStrip, TreatedZone } from './types';

/** Ground left smaller than this counts as none, m². */
const LEAST_GROUND_M2 = 1e-3;

/**
 * What is left of a zone to treat: its net shape less every strip round a drain, a well or water.
 * A strip is all ground within its source's width; a width of 0 asks for none. Corners of a strip are
 * round, drawn by lines that pass the arc by at most 5 mm: a strip is nowhere narrower than asked. Strips of several sources may overlap: `stripM2` counts each square metre once, so
 * areaM2 + stripM2 is the net area.
 *
 * Sigma: the inner edge of a strip is walked off from its source and adds no error of its own; the sides
 * that are left carry their corners' error (gradientOfParts). So ground round a well in the midst of a
 * lawn is as uncertain as the whole lawn, and ground that lost its far side is less so.
 *
 * Areas keep the scale of the measured net area (geodesic, at the yard's elevation). Where the yard asks
 * for it (`doseBySurface`) they are along the zone's slope. A zone without a place has no strips.
 * @returns issues: `zone-inside-strip` (error) when one strip covers the zone, `zone-nothing-left` and
 * `zone-not-treatable` (warnings), `zone-cut-by-strips` (note) when strips leave it in more parts than it had
 */
export function treatZone(
  measuredZone: MeasuredZone,
  zone: Zone,
  yard: Yard,
  plane: LocalPlane,
): { treated: TreatedZone; issues: Issue[] } {
  const flat = treatFlat(measuredZone, zone, yard, plane);
  const factor = yard.settings.doseBySurface ? surfaceFactor(zone.slope) : 1;
  return factor === 1 ? flat : { ...flat, treated: alongSlope(flat.treated, factor) };
}

/** The same ground by its area along the slope. */
function alongSlope(flat: TreatedZone, factor: number): TreatedZone {
  return {
    ...flat,
    areaM2: factor * flat.areaM2,
    areaSigmaM2: factor * flat.areaSigmaM2,
    stripM2: factor * flat.stripM2,
    gradient: new Map(
      [...flat.gradient].map(([key, { gx, gy, sigmaM }]) => [
        key,
        { gx: factor * gx, gy: factor * gy, sigmaM },
      ]),
    ),
    strips: flat.strips.map((strip) => ({ ...strip, areaM2: factor * strip.areaM2 })),
  };
}

function treatFlat(
  measuredZone: MeasuredZone,
  zone: Zone,
  yard: Yard,
  plane: LocalPlane,
): { treated: TreatedZone; issues: Issue[] } {
  if (zoneClass(zone) === null) {
    const message = `${nameOf(zone)} is ${zone.kind}, which is never treated.`;
    return { treated: emptyTreated(zone.id), issues: [warn('zone-not-treatable', message, zone)] };
  }
  if (measuredZone.netPlaneParts.length === 0) {
    const message = `Nothing is left of ${nameOf(zone)}: other zones cover all of it.`;
    return { treated: emptyTreated(zone.id), issues: [warn('zone-nothing-left', message, zone)] };
  }
  const net = measuredZone.netPlaneParts;
  const near = zone.isPlaced ? sourcesNear(stripSources(yard, plane), net) : [];
  let scale: number | null = null;
  const areaOf = (parts: readonly Rings[]): number => {
    scale ??= scaleOf(measuredZone);
    return scale * areaOfPartsM2(parts);
  };
  const toGround = (parts: readonly PlaneRings[]): Rings[] =>
    parts.map((rings) => ringsToLonLat(rings, plane));

  const issues: Issue[] = [];
  const strips: NoApplyStrip[] = [];
  const buffers: PlaneRings[] = [];
  for (const source of near) {
    const buffer = stripAround(source);
    const inside = intersectionOf(net, buffer);
    if (inside.length === 0) continue;
    const parts = toGround(inside);
    const areaM2 = areaOf(parts);
    if (areaM2 < LEAST_GROUND_M2) continue;
    buffers.push(...buffer);
    const { sourceId, sourceKind, widthM } = source;
    strips.push({ zoneId: zone.id, sourceId, sourceKind, widthM, areaM2, parts });
    if (measuredZone.netM2 - areaM2 < LEAST_GROUND_M2) issues.push(insideStrip(zone, source));
  }
  if (strips.length === 0) {
    const { netM2, netSigmaM2, netParts } = measuredZone;
    const { gradient } = measuredZone;
    const whole = { areaM2: netM2, areaSigmaM2: netSigmaM2, gradient, parts: netParts, planeParts: net };
    return { treated: { zoneId: zone.id, stripM2: 0, strips, ...whole }, issues };
  }
  const left = differenceOf(net, buffers);
  const parts = toGround(left);
  const leftM2 = Math.min(measuredZone.netM2, areaOf(parts));
  const isNothing = leftM2 < LEAST_GROUND_M2;
  const areaM2 = isNothing ? 0 : leftM2;
  if (isNothing && issues.length === 0) {
    const message = `Nothing is left of ${nameOf(zone)}: no-apply strips together cover all of it.`;
    issues.push(warn('zone-nothing-left', message, zone));
  }
  const bounds = sourcesOf(measuredZone);
  if (!isNothing) issues.push(...cutInParts(zone, net, left));
  const linear = Math.sqrt(areaScale(yard.settings.elevationM));
  const treated: TreatedZone = {
    zoneId: zone.id,
    areaM2,
    areaSigmaM2: isNothing ? 0 : linear * ownSigmaOfParts(left, zone, bounds, plane),
    gradient: gradientOfParts(isNothing ? [] : left, bounds, plane, zone),
    stripM2: measuredZone.netM2 - areaM2,
    strips,
    parts: isNothing ? [] : parts,
    planeParts: isNothing ? [] : left,
  };
  return { treated, issues };
}

/** What turns areas on the ellipsoid into those of the measured zone. */
function scaleOf({ netParts, netM2 }: MeasuredZone): number {
  const plainM2 = areaOfPartsM2(netParts);
  return plainM2 > 0 ? netM2 / plainM2 : 1;
}

const buffersKept = new WeakMap<StripSource, readonly PlaneRings[]>();

/** All ground within a source’s width of it, in the plane; kept for the source. */
export function stripAround(source: StripSource): readonly PlaneRings[] {
  const kept = buffersKept.get(source);
  if (kept) return kept;
  const { shape, widthM } = source;
  const made = 'point' in shape ? [[roundAbout(shape.point, widthM)]] : coverWithin(shape.parts, widthM);
  buffersKept.set(source, made);
  return made;
}

/** A regular polygon round a circle, its corners at most ARC_TOLERANCE_M outside. */
function roundAbout([x, y]: XY, radiusM: number): XY[] {
  const half = Math.min(Math.PI / 8, Math.acos(radiusM / (radiusM + ARC_TOLERANCE_M)));
  const count = Math.ceil(Math.PI / half);
  const outer = radiusM / Math.cos(Math.PI / count);
  const corner = (i: number): XY => {
    const turn = (2 * Math.PI * (i % count)) / count;
    return [x + outer * Math.cos(turn), y + outer * Math.sin(turn)];
  };
  return Array.from({ length: count + 1 }, (_, i) => corner(i));
}

function emptyTreated(zoneId: string): TreatedZone {
  const none = { areaM2: 0, areaSigmaM2: 0, gradient: new Map(), stripM2: 0 };
  return { zoneId, ...none, strips: [], parts: [], planeParts: [] };
}

function nameOf(zone: Zone): string {
  return zone.name.trim() === '' ? 'a zone without a name' : `“${zone.name.trim()}”`;
}

/** Parts smaller than this are no ground of their own to walk, m². */
const LEAST_PART_M2 = 0.1;

/** Tells of a zone that strips cut into separate parts. */
function cutInParts(zone: Zone, before: readonly PlaneRings[], after: readonly PlaneRings[]): Issue[] {
  const count = (parts: readonly PlaneRings[]): number =>
    parts.filter((rings) => planeAreaOf([rings]) >= LEAST_PART_M2).length;
  const [had, has] = [count(before), count(after)];
  if (has <= had) return [];
  const name = nameOf(zone).replace(/^a zone/, 'A zone');
  const message = `${name} is left in ${has} separate parts by no-apply strips; each is treated by itself.`;
  return [{ code: 'zone-cut-by-strips', severity: 'note', message, place: { zoneId: zone.id } }];
}

function insideStrip(zone: Zone, source: StripSource): Issue {
  return {
    code: 'zone-inside-strip',
    severity: 'error',
    message: `${nameOf(zone)} lies wholly inside the no-apply strip of ${source.label}; leave it out of the visit.`,
    place: { zoneId: zone.id },
  };
}

function warn(code: string, message: string, zone: Zone): Issue {
  return { code, severity: 'warning', message, place: { zoneId: zone.id } };
}
