import type { Issue } from '../../yard/types';
import { spacingOf } from '../usual';
import { flowOfFill, shareOfDraw, shareOfRatio } from './flow';
import { apart, areaOf, broken, type CalibrationCase, type Found, figure, odd, single, told } from './found';
import { meanOfReadings, type Readings, readingList, readingOf } from './readings';
import { rateOfCourse } from './sprayOutput';
import { judged } from './spreadTests';
import { speedOfWalk } from './walk';

/** Time to fill a known volume, and how much of what comes out is product. */
export function bucketTest(readings: Readings, { equipment }: CalibrationCase): Found {
  const volumeL = readingOf(readings, 'volumeL');
  const time = meanOfReadings(readingList(readings, 'timeS'));
  const measured = volumeL !== null && time !== null ? flowOfFill(volumeL, time.mean) : null;
  const flowLPerS = measured ?? equipment.flowLPerS;
  const draw = drawOf(readings, flowLPerS);
  const { share } = draw;
  return {
    figures: [
      measured === null || time === null || volumeL === null
        ? null
        : figure('flow', measured, time, (timeS) => flowOfFill(volumeL, timeS)),
      share === null ? null : single('product-share', share),
      share === null || flowLPerS === null ? null : single('product-flow', flowLPerS * share),
    ],
    change: {
      ...(measured === null ? {} : { flowLPerS: measured }),
      ...(share === null ? {} : { productShare: share }),
    },
    issues: [apart(time, 'times'), draw.issue],
  };
}

/** The share of product in the spray, or why there is none. */
interface DrawnShare {
  readonly share: number | null;
  readonly issue: Issue | null;
}

/** The share of product by the ratio, else by a bottle that was emptied, else by what was gone: each by its own readings. */
function drawOf(readings: Readings, flowLPerS: number | null): DrawnShare {
  // no water at all: undiluted
  const waterParts = readings.waterParts === 0 ? 0 : readingOf(readings, 'waterParts');
  if (waterParts !== null) return { share: shareOfRatio(waterParts), issue: null };
  const pairs = [
    [readingOf(readings, 'emptiedL'), readingOf(readings, 'emptiedS')],
    [readingOf(readings, 'goneL'), readingOf(readings, 'goneS')],
  ] as const;
  for (const [goneL, goneS] of pairs) {
    if (goneL === null || goneS === null) continue;
    const message =
      'How long the bottle lasts says how much product goes out; time the bucket as well, for its share.';
    return drawnShare(goneL, goneS, flowLPerS, message);
  }
  return { share: null, issue: null };
}

/** The share by what was drawn in a time. @param unmeasured what to say where the flow is not known */
function drawnShare(goneL: number, timeS: number, flowLPerS: number | null, unmeasured: string): DrawnShare {
  if (flowLPerS === null) return { share: null, issue: told('flow-needed', unmeasured, 'note') };
  const share = shareOfDraw(goneL, timeS, flowLPerS);
  const message =
    'More product would have left the bottle than spray came out in all: look at both volumes and both times.';
  return { share, issue: share === null ? told('draw-too-strong', message, 'error') : null };
}

/** A course of known size, how long it took, what was used on it. */
export function courseTest(readings: Readings, about: CalibrationCase): Found {
  const { equipment } = about;
  const areaM2 = areaOf(readings);
  const time = meanOfReadings(readingList(readings, 'timeS'));
  if (areaM2 === null) return {};
  const widthM = readingOf(readings, 'widthM');
  // by hand there are no passes to count
  const off = widthM === null || equipment.applicator === 'by-hand' ? null : broken(widthM, about);
  const usedL = readingOf(readings, 'usedL');
  const usedKg = readingOf(readings, 'usedKg');
  const walkedM = areaM2 / spacingOf(equipment);
  const speed =
    time === null
      ? null
      : figure('speed', speedOfWalk(walkedM, time.mean), time, (timeS) => speedOfWalk(walkedM, timeS));
  const change = speed === null ? {} : { speedMPerS: speed.value };
  if (usedKg !== null) {
    const rate = rateOfCourse(usedKg, areaM2);
    return {
      figures: [single('product-rate', rate), speed],
      change,
      // the passes of the course overlapped as they are meant to
      settingKgPerM2: equipment.applicator === 'by-hand' ? null : rate * (1 - equipment.overlapShare),
      issues: [off, apart(time, 'times'), odd(speed), ...judged(rate, about)],
    };
  }
  if (usedL === null) return { figures: [speed], change, issues: [off, apart(time, 'times'), odd(speed)] };
  // what is used from a hose-end bottle is product, from a tank finished spray
  if (equipment.applicator === 'hose-end') {
    const unmeasured = 'With the bucket test done first, this gives the share of product as well.';
    const { share, issue } =
      time === null
        ? { share: null, issue: null }
        : drawnShare(usedL, time.mean, equipment.flowLPerS, unmeasured);
    return {
      figures: [
        single('product-volume-rate', rateOfCourse(usedL, areaM2)),
        share === null ? null : single('product-share', share),
        speed,
      ],
      change: { ...change, ...(share === null ? {} : { productShare: share }) },
      issues: [off, apart(time, 'times'), odd(speed), issue],
    };
  }
  const flow =
    time === null
      ? null
      : figure('flow', flowOfFill(usedL, time.mean), time, (timeS) => flowOfFill(usedL, timeS));
  return {
    figures: [single('spray-rate', rateOfCourse(usedL, areaM2)), flow, speed],
    change: { ...change, ...(flow === null ? {} : { flowLPerS: flow.value }) },
    issues: [off, apart(time, 'times'), odd(speed)],
  };
}

/** 1/128 acre: the time it takes, and what is caught in that time. */
export function smallPlotTest(readings: Readings): Found {
  const lengthM = readingOf(readings, 'lengthM');
  const areaM2 = areaOf(readings);
  const time = meanOfReadings(readingList(readings, 'timeS'));
  const caught = meanOfReadings(readingList(readings, 'caughtL'));
  const speed =
    lengthM === null || time === null
      ? null
      : figure('speed', speedOfWalk(lengthM, time.mean), time, (timeS) => speedOfWalk(lengthM, timeS));
  const rate =
    areaM2 === null || caught === null
      ? null
      : figure('spray-rate', rateOfCourse(caught.mean, areaM2), caught, (value) =>
          rateOfCourse(value, areaM2),
        );
  const flow =
    time === null || caught === null
      ? null
      : figure('flow', flowOfFill(caught.mean, time.mean), caught, (value) => flowOfFill(value, time.mean));
  return {
    figures: [rate, flow, speed],
    change: {
      ...(flow === null ? {} : { flowLPerS: flow.value }),
      ...(speed === null ? {} : { speedMPerS: speed.value }),
    },
    issues: [apart(time, 'times'), apart(caught, 'catches'), odd(speed)],
  };
}
