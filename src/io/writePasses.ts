import { legNumbers } from '../cover/marks/legNumbers';
import type { DoseCoverage, Leg, RunOutMark, VisitCoverage } from '../cover/passTypes';
import type { LocalPlane, XY } from '../measure/types';
import { dateOfVisit } from '../plan/heldWith';
import type { VisitFigures } from '../plan/types';
import type { Issue, Position, Yard } from '../yard/types';
import { importIssue } from './importTypes';
import { fileNameOf } from './writeGeoJson';

/** What is written of the walks of a visit. */
export interface PassesExport {
  readonly yard: Yard;
  /** the plane the walks are laid in (`MeasuredYard.plane`). */
  readonly plane: LocalPlane;
  readonly visit: VisitFigures;
  readonly coverage: VisitCoverage;
  /** null: every dose of the visit. */
  readonly doseId: string | null;
  /** what a mark is called: "bottle 2 at one half". */
  readonly markName: (doseId: string, mark: RunOutMark) => string;
}

/** One leg ready to be written. */
export interface WrittenLeg {
  readonly leg: Leg;
  readonly index: number;
  /** of its kind within its zone and coat, from 1. */
  readonly number: number;
  readonly zoneName: string;
  /** longitude and latitude, degrees, 9 decimals (a tenth of a millimetre). */
  readonly line: readonly Position[];
}

/** One dose ready to be written. */
export interface WrittenDose {
  readonly dose: DoseCoverage;
  readonly productName: string;
  readonly legs: readonly WrittenLeg[];
  readonly marks: readonly {
    readonly mark: RunOutMark;
    readonly name: string;
    readonly zoneName: string;
    readonly at: Position;
  }[];
}

/** Decimals of a degree: 1e-9 of latitude is 0.11 mm. */
const DECIMALS = 9;

/** The walks with names and positions in degrees; a dose without any leg is left out. */
export function writtenDoses(input: PassesExport): readonly WrittenDose[] {
  const { yard, plane, visit, coverage, doseId } = input;
  const toDegrees = (point: XY): Position => {
    const [lon, lat] = plane.toLonLat(point);
    return [tidy(lon >= 180 ? lon - 360 : lon < -180 ? lon + 360 : lon), tidy(lat)];
  };
  const zoneNames = new Map(yard.zones.map(({ id, name }) => [id, name]));
  const nameOf = (zoneId: string | null) => (zoneId === null ? '' : (zoneNames.get(zoneId) ?? ''));
  return coverage.doses.flatMap((dose): WrittenDose | [] => {
    if ((doseId !== null && dose.doseId !== doseId) || dose.legs.length === 0) return [];
    const figures = visit.doses.find((each) => each.dose.id === dose.doseId);
    const numbers = legNumbers(dose.legs);
    const legs = dose.legs.map((leg, index): WrittenLeg => {
      const number = numbers[index]?.number ?? 0;
      return { leg, index, number, zoneName: nameOf(leg.zoneId), line: leg.line.map(toDegrees) };
    });
    const marks = dose.marks.map((mark) => ({
      mark,
      name: input.markName(dose.doseId, mark),
      zoneName: nameOf(mark.zoneId),
      at: toDegrees(mark.at),
    }));
    return { dose, productName: figures?.product.name ?? '', legs, marks };
  });
}

/** What to know of the written file. */
export function passesIssues({ yard }: PassesExport, doses: readonly WrittenDose[]): readonly Issue[] {
  const issues: Issue[] = [];
  if (yard.settings.isLocal) {
    const message =
      'This yard has no true place: its coordinates stand near latitude 0, longitude 0. In other programs and on a receiver the passes will lie in the sea off Africa; their lengths are right.';
    issues.push(importIssue('local-yard', 'warning', message));
  }
  if (doses.length === 0) {
    issues.push(
      importIssue('no-passes', 'warning', 'There are no passes to write: none of the doses has a walk.'),
    );
  }
  return issues;
}

/** "corner-lot-passes-2026-05-04.gpx": the yard's file name, the day of the visit (or its name). */
export function passesFileName({ yard, visit }: PassesExport, ending: string): string {
  const stemOf = (name: string) => fileNameOf({ ...yard, name }).replace(/\.geojson$/, '');
  const day = dateOfVisit(visit.visit);
  const which = day ?? (visit.visit.name.trim() === '' ? '' : stemOf(visit.visit.name));
  return `${[stemOf(yard.name), 'passes', which].filter((part) => part !== '').join('-')}${ending}`;
}

function tidy(degrees: number): number {
  return Number(degrees.toFixed(DECIMALS)) + 0;
}
