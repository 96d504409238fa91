import { addZone, replaceZone, setParcel } from '../yard/edits';
import { isLockedZone, lockedIssue } from '../yard/locks';
import type { Parcel, Rings, Survey, Yard, Zone } from '../yard/types';
import { unionOf } from './clip';
import { createCornerBook, insertCorners } from './corners';
import { checkRing } from './crossings';
import { dropStaleCurves } from './curves';
import { nameInText } from './nameInText';
import { parcelAsZone } from './parcel';
import { ringsToPlane } from './plane';
import { layZone } from './planeZone';
import { joinParts, type ShapeResult } from './shapes';
import { trimSpikes } from './trimSpikes';
import type { LocalPlane } from './types';
import { gradientOfParts, ownSigmaOfWhole, varianceOfGradients } from './uncertainty';

function refuse(code: string, message: string, zoneId?: string): ShapeResult {
  return { ok: false, issue: { code, severity: 'warning', message, place: { zoneId } } };
}

/** Outline of the property round all that some zones cover, with the loosest of their corner errors. */
export function parcelFromZones(yard: Yard, zoneIds: readonly string[], plane: LocalPlane): ShapeResult {
  const zones = yard.zones.filter((zone) => zoneIds.includes(zone.id) && zone.isPlaced);
  const laid = zones.map((zone) => layZone(zone, plane)).filter((one) => one.isSound);
  if (laid.length === 0)
    return refuse('parcel-no-zones', 'None of the chosen zones has an outline on the map.');
  // holes between the zones belong to the property too
  const whole = unionOf(laid.flatMap((one) => one.parts)).map((rings) => rings.slice(0, 1));
  const book = createCornerBook(yard.zones, plane);
  const survey = zones.reduce<Survey>(
    (loosest, zone) => (zone.survey.vertexSigmaM > loosest.vertexSigmaM ? zone.survey : loosest),
    zones[0]?.survey as Survey,
  );
  const [only] = zones;
  const isPlain = only && zones.length === 1 && only.parts.every((rings) => rings.length === 1);
  const parcel: Parcel = {
    name: yard.parcel?.name ?? '',
    parts: isPlain ? only.parts : book.toRings(unionOf(whole)),
    curves: isPlain ? only.curves : [],
    survey,
    extra: yard.parcel?.extra ?? {},
  };
  return { ok: true, yard: setParcel(yard, parcel) };
}

/**
 * Makes a zone of a piece that belongs to none; neighbours get its corners on their border. Its corner
 * error is the one by which it errs as the piece does: by the outline and the neighbours that bound it.
 * @param zone its parts are replaced, and its survey's errors
 */
export function zoneFromPiece(
  yard: Yard,
  piece: readonly Rings[],
  zone: Zone,
  plane: LocalPlane,
): ShapeResult {
  const book = createCornerBook(
    yard.parcel ? [...yard.zones, ...parcelRings(yard.parcel)] : yard.zones,
    plane,
  );
  const parts = book.toRings(trimSpikes(piece.map((rings) => ringsToPlane(rings, plane))));
  if (parts.length === 0 || hasFault(parts))
    return refuse(
      'piece-touches-itself',
      'The outline of this piece would touch itself. Give it to a neighbour, or draw the zone by hand.',
    );
  const made = addZone(yard, withSigmaOfPiece(yard, { ...zone, parts }, plane));
  return { ok: true, yard: insertCorners(made, parts.flat(2), plane, [zone.id]) };
}

/**
 * Every stretch of the piece's border is known as well as the outline or the neighbour that it was taken
 * from. The zone's own formula has one error for all its corners: here the one that gives the same ±.
 */
function withSigmaOfPiece(yard: Yard, zone: Zone, plane: LocalPlane): Zone {
  const sources = yard.zones.filter((each) => each.isPlaced);
  if (yard.parcel) sources.push(parcelAsZone(yard.parcel));
  const ground = layZone(zone, plane).parts;
  const variance = varianceOfGradients([gradientOfParts(ground, sources, plane)]);
  const unit: Zone = { ...zone, survey: { ...zone.survey, vertexSigmaM: 1, scaleSigma: 0 } };
  const perMetre = ownSigmaOfWhole(ground, unit, plane);
  if (!(perMetre > 0)) return zone;
  const vertexSigmaM = Math.sqrt(variance) / perMetre;
  return { ...zone, survey: { ...zone.survey, vertexSigmaM, scaleSigma: 0, source: '' } };
}

/** Gives a piece that belongs to no zone to the neighbour with the longest border on it that is not locked. */
export function givePiece(
  yard: Yard,
  piece: { readonly parts: readonly Rings[]; readonly neighbourIds: readonly string[] },
  plane: LocalPlane,
): ShapeResult {
  const neighbours = piece.neighbourIds.flatMap((id) => yard.zones.find((zone) => zone.id === id) ?? []);
  const [first] = neighbours;
  if (!first)
    return refuse('piece-no-neighbour', 'No zone lies along this piece; make it a zone of its own.');
  const owner = neighbours.find((zone) => !isLockedZone(zone));
  if (!owner) return { ok: false, issue: lockedIssue(first) };
  const ground = piece.parts.map((rings) => ringsToPlane(rings, plane));
  const parts = trimSpikes(joinParts(layZone(owner, plane).parts, ground));
  const book = createCornerBook(
    yard.parcel ? [...yard.zones, ...parcelRings(yard.parcel)] : yard.zones,
    plane,
  );
  const whole = book.toRings(parts);
  if (hasFault(whole))
    return refuse(
      'piece-touches-itself',
      `With this piece the outline of ${nameInText(owner)} would touch itself. Make the piece a zone of its own.`,
      owner.id,
    );
  const made = replaceZone(yard, dropStaleCurves({ ...owner, parts: whole }));
  return { ok: true, yard: insertCorners(made, book.added(), plane, [owner.id]) };
}

/** Whether an outline could not be measured: one that touches itself at a corner. */
function hasFault(parts: readonly Rings[]): boolean {
  return parts.some((rings) => rings.some((ring) => checkRing(ring).length > 0));
}

/** What a corner book reads of a parcel. */
function parcelRings({ parts }: Parcel): Pick<Zone, 'parts'>[] {
  return [{ parts }];
}
