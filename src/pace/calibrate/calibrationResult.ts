import type { CalibrationKind } from '../../yard/types';
import { apart, type CalibrationCase, type Found, figure, impossible, odd } from './found';
import { meanOfReadings, type Readings, readingList, readingOf } from './readings';
import { bucketTest, courseTest, smallPlotTest } from './sprayTests';
import { catchTest, panTest } from './spreadTests';
import type { CalibrationResult } from './types';
import { speedOfWalk, stepOfWalk } from './walk';

/**
 * What comes out of the readings of one calibration, as far as they go. Names of readings: bucket `volumeL`,
 * `timeS1…`, then `waterParts` (0: undiluted), or `emptiedL` and `emptiedS`, or `goneL` and `goneS`; course `lengthM`, `widthM`,
 * `timeS1…`, `usedL` or `usedKg`; small-plot `lengthM`, `widthM`, `timeS1…`, `caughtL1…`; catch `lengthM`,
 * `widthM`, `caughtKg1…`, `timeS1…`; pans `apartM`, `pans` (how many), `pan1…pan15`; walk `distanceM`, `timeS1…`, `steps1…`.
 */
export function calibrationResult(
  kind: CalibrationKind,
  readings: Readings,
  about: CalibrationCase,
): CalibrationResult {
  const found = BY_KIND[kind](readings, about);
  const figures = (found.figures ?? []).filter((figure) => figure !== null);
  const issues = (found.issues ?? []).filter((issue) => issue !== null);
  const slip = impossible(figures, about.units);
  if (slip) {
    const others = issues.filter(({ code }) => code !== 'walk-odd');
    return { figures, change: {}, settingKgPerM2: null, stepM: null, issues: [slip, ...others] };
  }
  return {
    figures,
    change: found.change ?? {},
    settingKgPerM2: found.settingKgPerM2 ?? null,
    stepM: found.stepM ?? null,
    issues,
  };
}

const BY_KIND: Readonly<Record<CalibrationKind, (readings: Readings, about: CalibrationCase) => Found>> = {
  bucket: bucketTest,
  course: courseTest,
  'small-plot': smallPlotTest,
  catch: catchTest,
  pans: panTest,
  walk: walkTest,
};

/** Time and steps over a known distance. */
function walkTest(readings: Readings): Found {
  const distanceM = readingOf(readings, 'distanceM');
  if (distanceM === null) return {};
  const time = meanOfReadings(readingList(readings, 'timeS'));
  const steps = meanOfReadings(readingList(readings, 'steps'));
  const speed =
    time === null
      ? null
      : figure('speed', speedOfWalk(distanceM, time.mean), time, (timeS) => speedOfWalk(distanceM, timeS));
  const step =
    steps === null
      ? null
      : figure('step', stepOfWalk(distanceM, steps.mean), steps, (count) => stepOfWalk(distanceM, count));
  return {
    figures: [speed, step],
    change: speed === null ? {} : { speedMPerS: speed.value },
    stepM: step?.value ?? null,
    issues: [apart(time, 'times'), apart(steps, 'counts of steps'), odd(speed)],
  };
}
