import type { DoseCoverage, Leg, Vessel, WalkNote } from '../passTypes';
import { legNumbers } from './legNumbers';
import { levelOf } from './momentAt';
import { areaOfLeg, type DoseGround, walkProgress } from './walkProgress';

/** Ground within this share of the dose is the same place: no pass is so narrow. */
const SAME = 1e-6;

/**
 * What a person checks while walking, in order: each mark, and at the end of each zone (of each coat) what
 * should be left by then. A mark that falls on such an end is one line with it.
 * @param zones ground that the dose counts, m² (such as `DoseFigures.zones`)
 */
export function walkNotes(dose: DoseCoverage, zones: readonly DoseGround[]): readonly WalkNote[] {
  const { legs, marks, vessels } = dose;
  const progress = walkProgress(legs, zones);
  const total = progress.startM2.at(-1) ?? 0;
  const numbers = legNumbers(legs);
  const ends = zoneEnds(legs);
  const noteAt = (legIndex: number, alongM: number) => {
    const leg = legs[legIndex] as Leg;
    return {
      zoneId: leg.zoneId ?? '',
      coat: leg.coat,
      legKind: leg.kind,
      legNumber: numbers[legIndex]?.number ?? 0,
      walkedM: (progress.startM[legIndex] ?? 0) + alongM,
    };
  };
  const endNotes = ends.map((legIndex): WalkNote => {
    const doneM2 = progress.startM2[legIndex + 1] ?? total;
    const mark = marks.findLast(
      (each) => each.zoneId === legs[legIndex]?.zoneId && Math.abs(each.doneM2 - doneM2) <= SAME * total,
    );
    const vessel = mark?.vessel ?? vesselAt(vessels, doneM2 - SAME * total);
    return {
      ...noteAt(legIndex, legs[legIndex]?.lengthM ?? 0),
      mark: mark ?? null,
      isZoneEnd: true,
      doneM2,
      vessel,
      left: mark?.left ?? (vessel === null ? null : levelOf(vessels, vessel, doneM2)),
    };
  });
  const taken = new Set(endNotes.map(({ mark }) => mark));
  const markNotes = marks
    .filter((mark) => !taken.has(mark))
    .map((mark): WalkNote => {
      const { doneM2, vessel, left } = mark;
      return { ...noteAt(mark.legIndex, mark.alongM), mark, isZoneEnd: false, doneM2, vessel, left };
    });
  return [...markNotes, ...endNotes].toSorted((a, b) => a.doneM2 - b.doneM2 || a.walkedM - b.walkedM);
}

/** The vessel in hand when so much is done; null: there is none, or all are used up before. */
function vesselAt(vessels: readonly Vessel[], doneM2: number): number | null {
  let sum = 0;
  for (const [index, vessel] of vessels.entries()) {
    sum += vessel.areaM2;
    if (doneM2 <= sum) return index;
  }
  return null;
}

/** The last leg of each zone and coat that takes on ground. */
function zoneEnds(legs: readonly Leg[]): readonly number[] {
  const last = new Map<string, number>();
  legs.forEach((leg, i) => {
    if (leg.zoneId !== null && areaOfLeg(leg) > 0) last.set(`${leg.coat}:${leg.zoneId}`, i);
  });
  return [...last.values()].toSorted((a, b) => a - b);
}
