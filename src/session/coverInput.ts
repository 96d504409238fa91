import { drawnFrom } from '../cover/marks/vesselsOf';
import type { CoverDose, CoverInput, CoverZone } from '../cover/passTypes';
import { sourcesNear, stripSources } from '../cover/sources';
import { stripAround } from '../cover/strips';
import { ringsToPlane } from '../measure/plane';
import type { PlaneRings, XY } from '../measure/types';
import { spacingOf } from '../pace/usual';
import { equipmentOfDose } from '../plan/equipmentOfDose';
import { isSprayed } from '../plan/sprayRate';
import { stockAtDose } from '../plan/stockAtDose';
import type { DoseFigures, DoseZone, VisitFigures } from '../plan/types';
import type { Parcel, Yard, ZoneKind } from '../yard/types';
import type { Derived, DerivedVisit } from './types';

/** What no one walks through, nor drags a hose over; a bed that a dose treats is walked all the same. */
const OBSTACLES: readonly ZoneKind[] = ['structure', 'water', 'bed'];

/**
 * All that the walks of a visit hang on, as plain data in the plane of `derived.measured`: for each dose that can be
 * planned its equipment's swath, its treated ground with the strips beside it, and what it is drawn from. A zone without a
 * place is kept without ground, so that it can be told of. Headings count from the plane's north, which is true
 * north to within the plane's own error.
 * @returns null when there is no such visit, or none of its doses can be planned
 */
export function coverInput(yard: Yard, derived: Derived, visitId: string): CoverInput | null {
  const visit = derived.visit(visitId);
  if (!visit || visit.figures.doses.length === 0) return null;
  const { plane } = derived.measured;
  const all = yard.visits.flatMap((each) => derived.visit(each.id)?.figures ?? []);
  const strips = createStrips(yard, derived);
  const doses = visit.figures.doses.map((dose) => coverDoseOf(yard, dose, visit, all, strips));
  const markAt = (id: string | null): XY | null => {
    const mark = id === null ? undefined : yard.marks.find((each) => each.id === id);
    return mark ? plane.toPlane(mark.position) : null;
  };
  const bibs = yard.marks
    .filter(({ kind }) => kind === 'hose-bib')
    .map(({ position }) => plane.toPlane(position));
  const { lengthM } = yard.settings.hose;
  const { startMarkId, endMarkId } = visit.figures.visit;
  return {
    visitId,
    doses,
    obstacles: yard.zones
      .filter(({ kind, isPlaced }) => isPlaced && OBSTACLES.includes(kind))
      .flatMap(({ id }) => derived.measured.zones.get(id)?.netPlaneParts ?? []),
    ...(yard.parcel === null ? {} : { property: propertyOf(yard, yard.parcel, derived) }),
    start: markAt(startMarkId),
    end: markAt(endMarkId),
    hose:
      lengthM !== null && bibs.length > 0 && doses.some(({ byHose }) => byHose) ? { bibs, lengthM } : null,
    units: yard.settings.units,
  };
}

/** The property and what is drawn beside it: a verge along the street is walked too. */
function propertyOf(yard: Yard, parcel: Parcel, { measured }: Derived): PlaneRings[] {
  const drawn = yard.zones.filter(({ isPlaced }) => isPlaced);
  return [
    ...parcel.parts.map((rings) => ringsToPlane(rings, measured.plane)),
    ...drawn.flatMap(({ id }) => measured.zones.get(id)?.netPlaneParts ?? []),
  ];
}

type Strips = (zoneId: string) => readonly PlaneRings[];

/** No-apply strips that may reach a zone, whole: those beyond the zone are spared by its swaths too. */
function createStrips(yard: Yard, { measured }: Derived): Strips {
  const sources = stripSources(yard, measured.plane);
  return (zoneId) => {
    const net = measured.zones.get(zoneId)?.netPlaneParts ?? [];
    return sourcesNear(sources, net).flatMap((source) => stripAround(source));
  };
}

function coverDoseOf(
  yard: Yard,
  figures: DoseFigures,
  { treated, figures: { visit } }: DerivedVisit,
  all: readonly VisitFigures[],
  strips: Strips,
): CoverDose {
  const { dose, product } = figures;
  const { equipment } = equipmentOfDose(yard, dose, product);
  const isWet = isSprayed(product);
  const isGuarded = dose.passes.isGuarded && equipment.hasEdgeGuard;
  const drawn = drawnFrom(figures, equipment, stockAtDose(all, visit.id, figures).onHand);
  const zoneOf = ({ zoneId, name, areaM2, isPlaced }: DoseZone): CoverZone => {
    const heading = dose.passes.headings[zoneId];
    return {
      zoneId,
      name,
      areaM2,
      parts: isPlaced === false ? [] : (treated.get(zoneId)?.planeParts ?? []),
      keepOff: isPlaced === false ? [] : strips(zoneId),
      headingDeg: heading === undefined || !Number.isFinite(heading) ? null : ((heading % 180) + 180) % 180,
    };
  };
  return {
    doseId: dose.id,
    spacingM: spacingOf(equipment),
    swathM: equipment.swathM,
    // a guard helps only where one walks along the edge
    headerLaps: dose.passes.headerLaps ?? (isGuarded ? 1 : null),
    lapsFirst: !isWet,
    coats: dose.passes.coats,
    zones: figures.zones.filter(({ areaM2 }) => areaM2 > 0).map(zoneOf),
    vessels: drawn.vessels,
    ...(drawn.count > drawn.vessels.length ? { tooManyVessels: drawn.count } : {}),
    staysWet: isWet,
    byHose: equipment.applicator === 'hose-end',
    ...(isGuarded ? { isGuarded } : {}),
  };
}
