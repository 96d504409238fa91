import { replaceZone } from '../yard/edits';
import type { Yard, Zone } from '../yard/types';
import { bufferOf, intersectionOf, planeAreaOf, unionOf } from './clip';
import { createCornerBook } from './corners';
import { dropStaleCurves } from './curves';
import { nameInText } from './nameInText';
import { sharedLengthM } from './outline';
import { matchCorners, notNoise, refuse, type ShapeResult, withZone } from './shapeResult';
import type { LocalPlane, PlaneRings, XY } from './types';

/** Zones that share less border than this do not touch, m. */
const LEAST_BORDER_M = 0.001;

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
      const joined: Zone = dropStaleCurves({
        ...a,
        parts: book.toRings(parts),
        curves: [...a.curves, ...b.curves],
        survey: looserSurvey(a, b),
      });
      const zones = yard.zones.filter((one) => one.id !== idB);
      const yardLess = { ...yard, zones, visits: renamedChoices(yard, idB, idA) };
      return {
        ok: true,
        yard: matchCorners(replaceZone(yardLess, joined), joined.parts.flat(2), plane, [idA]),
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
