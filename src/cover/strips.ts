import { bufferOf, differenceOf, intersectionOf } from '../measure/clip';
import { areaOfPartsM2 } from '../measure/geodesic';
import { ringsToLonLat } from '../measure/plane';
import type { LocalPlane, MeasuredYard, MeasuredZone, PlaneRings } from '../measure/types';
import { zoneClass } from '../yard/choose';
import type { Issue, Rings, Yard, Zone } from '../yard/types';
import { type StripSource, sourcesNear, stripSources } from './sources';
import type { NoApplyStrip, TreatedZone } from './types';

/** Ground left smaller than this counts as none, m². */
const LEAST_GROUND_M2 = 1e-3;

/**
 * What is left of a zone to treat: its net shape less every strip round a drain, a well or water.
 * A strip is all ground within its source's width; a width of 0 asks for none. Corners of a strip are
 * round, drawn by chords within 5 mm of the arc. Strips of several sources may overlap: `stripM2` counts each square metre once, so
 * areaM2 + stripM2 is the net area.
 *
 * Sigma: the inner edge of a strip is walked off from its source and adds no error of its own; what is
 * left of the outline carries the corners' error, whose variance goes with its share. The net sigma
 * times the square root of the share of ground left is used: never less than the plain share.
 *
 * Areas keep the scale of the measured net area (geodesic, at the yard's elevation).
 * @param _measured not looked at: water counts as drawn
 * @returns issues: `zone-inside-strip` (error) when one strip covers the zone, `zone-nothing-left` and
 * `zone-not-treatable` (warnings)
 */
export function treatZone(
  measuredZone: MeasuredZone,
  zone: Zone,
  yard: Yard,
  plane: LocalPlane,
  _measured?: MeasuredYard,
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
  const near = sourcesNear(stripSources(yard, plane), net);
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
    const buffer = bufferAround(source);
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
    const whole = { areaM2: netM2, areaSigmaM2: netSigmaM2, parts: netParts, planeParts: net };
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
  const treated: TreatedZone = {
    zoneId: zone.id,
    areaM2,
    areaSigmaM2:
      measuredZone.netM2 > 0 ? measuredZone.netSigmaM2 * Math.sqrt(areaM2 / measuredZone.netM2) : 0,
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

/** All ground within a source's width of it; kept for the source. */
function bufferAround(source: StripSource): readonly PlaneRings[] {
  const kept = buffersKept.get(source);
  if (kept) return kept;
  const made = bufferOf(source.shape, source.widthM);
  buffersKept.set(source, made);
  return made;
}

function emptyTreated(zoneId: string): TreatedZone {
  return { zoneId, areaM2: 0, areaSigmaM2: 0, stripM2: 0, strips: [], parts: [], planeParts: [] };
}

function nameOf(zone: Zone): string {
  return zone.name.trim() === '' ? 'a zone without a name' : `“${zone.name.trim()}”`;
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
