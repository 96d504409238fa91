import type { DosePace } from '../../pace/types';
import { USUAL_SPEED_M_PER_S } from '../../pace/usual';
import type { DoseCoverage, Vessel } from '../passTypes';
import { type DoseGround, type WalkProgress, walkProgress } from './walkProgress';
import { factorOf, type ZoneSpeed, zoneSpeeds } from './zoneSpeeds';

/** Walking speed where none is known, m/s: as spreaders are usually pushed. */
const UNKNOWN_SPEED_M_PER_S = USUAL_SPEED_M_PER_S['broadcast-spreader'];

/** Time to change to the next vessel, s: fill and mix a tank or fill a hopper; hang on the next bottle or open a bag. Common practice, no source. */
export const REFILL_S: Readonly<Record<Vessel['kind'], number>> = {
  'tank-load': 120,
  'hopper-fill': 120,
  container: 30,
};

/** Ground within this share of the dose is the same place. */
const SAME = 1e-6;

/** A stretch of time in which the walker goes along one leg, or stands and fills. */
export interface TimeSpan {
  readonly fromS: number;
  readonly toS: number;
  readonly legIndex: number;
  /** m along that leg; the same while standing. */
  readonly fromM: number;
  readonly toM: number;
  /** vessel in hand, index from 0; while standing, the one that is made ready; after the last is used up, their number: none. */
  readonly vessel: number;
  readonly isRefill: boolean;
}

/** A dose as it is walked, by the clock. */
export interface WalkTimeline {
  readonly dose: DoseCoverage;
  readonly progress: WalkProgress;
  /** how much faster or slower than the pace each zone is walked. */
  readonly speeds: readonly ZoneSpeed[];
  /** without gaps, from 0 s to `totalS`. */
  readonly spans: readonly TimeSpan[];
  readonly totalS: number;
  /** m along all legs. */
  readonly totalM: number;
  /** of the total, s: product goes out; turns; ways with the applicator shut; standing to refill. */
  readonly workingS: number;
  readonly turnS: number;
  readonly carryS: number;
  readonly refillS: number;
}

/**
 * The clock of a walk: laps and passes at the speed of the dose's pace (a usual one where it has none) as each zone
 * asks for it (see `zoneSpeeds`: so much time is worked on a zone as its amount needs to go out), turns at the
 * speed with the applicator shut and so much longer as each loses, ways at that speed, and a stand at each
 * place where a vessel runs out and another follows. The first vessel is ready at the start.
 * @param zones ground that the dose counts, m² (such as `DoseFigures.zones`)
 * @param spacingM distance between passes that the pace is for, m (`spacingOf`)
 */
export function walkTimeline(
  dose: DoseCoverage,
  zones: readonly DoseGround[],
  pace: Pick<DosePace, 'speedMPerS' | 'shutSpeedMPerS' | 'turnS'>,
  spacingM: number,
): WalkTimeline {
  const progress = walkProgress(dose.legs, zones);
  const wholeM2 = (progress.startM2.at(-1) ?? 0) * (1 - SAME);
  // the last one counts where ground is left that it does not do
  const ends = dose.marks.filter(
    ({ left, vessel, doneM2 }) => left === 0 && (vessel + 1 < dose.vessels.length || doneM2 < wholeM2),
  );
  const speed = usable(pace.speedMPerS);
  const shut = usable(pace.shutSpeedMPerS);
  const speeds = zoneSpeeds(dose.legs, zones, spacingM);
  const spans: TimeSpan[] = [];
  const sums = { lap: 0, pass: 0, turn: 0, carry: 0 };
  let [clock, vessel, refillS] = [0, 0, 0];
  const add = (legIndex: number, fromM: number, toM: number, seconds: number, isRefill = false) => {
    if (!(seconds > 0)) return;
    spans.push({ fromS: clock, toS: clock + seconds, legIndex, fromM, toM, vessel, isRefill });
    clock += seconds;
  };
  dose.legs.forEach((leg, i) => {
    const isWorking = leg.kind === 'lap' || leg.kind === 'pass';
    const legSpeed = isWorking ? speed * factorOf(speeds, leg) : shut;
    let fromM = 0;
    const walkTo = (toM: number, lostS = 0) => {
      const seconds = (toM - fromM) / legSpeed + lostS;
      add(i, fromM, toM, seconds);
      sums[leg.kind] += seconds;
      fromM = toM;
    };
    for (const end of ends) {
      if (end.legIndex !== i) continue;
      walkTo(Math.min(leg.lengthM, Math.max(fromM, end.alongM)));
      vessel = end.vessel + 1;
      const next = dose.vessels[vessel];
      const pause = next ? REFILL_S[next.kind] : 0;
      add(i, fromM, fromM, pause, true);
      refillS += pause;
    }
    walkTo(leg.lengthM, leg.kind === 'turn' ? Math.max(0, pace.turnS) : 0);
  });
  return {
    dose,
    progress,
    speeds,
    spans,
    totalS: clock,
    totalM: progress.startM.at(-1) ?? 0,
    workingS: sums.lap + sums.pass,
    turnS: sums.turn,
    carryS: sums.carry,
    refillS,
  };
}

function usable(speedMPerS: number | null): number {
  return speedMPerS !== null && Number.isFinite(speedMPerS) && speedMPerS > 0
    ? speedMPerS
    : UNKNOWN_SPEED_M_PER_S;
}
