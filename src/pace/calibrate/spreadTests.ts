import { formatAmountRate, formatLength, formatPercent } from '../../units/format';
import type { Equipment, Issue, UnitSystem } from '../../yard/types';
import { landedRate } from '../usual';
import { apart, areaOf, type CalibrationCase, type Found, figure, odd, single, told } from './found';
import { judgeRate } from './judgeRate';
import { meanOfReadings, panReadings, type Readings, readingList, readingOf } from './readings';
import { rateOfCourse } from './sprayOutput';
import { swathOfPans } from './swathOfPans';
import { speedOfWalk } from './walk';

/** How far the two sides of a spreader's throw may differ before it is told; common practice, no source. */
const MOST_LOPSIDED = 0.2;

/**
 * What a spreader leaves in a pan, or loses of its weight, over a known run: the setting by the width of one pass, the
 * rate on the ground with passes as far apart as they are meant to be.
 */
export function catchTest(readings: Readings, about: CalibrationCase): Found {
  const lengthM = readingOf(readings, 'lengthM');
  const areaM2 = areaOf(readings);
  const caught = meanOfReadings(readingList(readings, 'caughtKg'));
  const time = meanOfReadings(readingList(readings, 'timeS'));
  const speed =
    lengthM === null || time === null
      ? null
      : figure('speed', speedOfWalk(lengthM, time.mean), time, (timeS) => speedOfWalk(lengthM, timeS));
  const change = speed === null ? {} : { speedMPerS: speed.value };
  const issues = [apart(time, 'times'), apart(caught, 'weights'), odd(speed)];
  if (areaM2 === null || caught === null) return { figures: [speed], change, issues };
  const onePass = (kg: number) => rateOfCourse(kg, areaM2);
  const landed = (kg: number) => landedRate(onePass(kg), about.equipment);
  const rate = figure('product-rate', landed(caught.mean), caught, landed);
  return {
    figures: [rate, speed],
    change,
    settingKgPerM2: onePass(caught.mean),
    issues: [...issues, ...judged(rate.value, about)],
  };
}

/** Pans across the path of a broadcast spreader. */
export function panTest(readings: Readings, { equipment, units }: CalibrationCase): Found {
  const apartM = readingOf(readings, 'apartM');
  const pans = panReadings(readings);
  const isWhole = pans.length === (readingOf(readings, 'pans') ?? pans.length);
  if (apartM === null || !isWhole || pans.length < 3 || pans.length % 2 === 0) return {};
  const { swathM, leftM, rightM } = swathOfPans(pans, apartM);
  const reaches = [
    leftM === null ? null : single('left-reach', leftM),
    rightM === null ? null : single('right-reach', rightM),
  ];
  if (swathM === null || leftM === null || rightM === null) {
    const message =
      (pans[(pans.length - 1) / 2] ?? 0) > 0
        ? 'The outermost pan still holds more than half of the middle one: set out pans farther to that side.'
        : 'The middle pan holds nothing: walk straight over it, the spreader open before the row and shut behind it.';
    return { figures: reaches, issues: [told('pans-short', message)] };
  }
  const off = Math.abs(leftM - rightM) / (swathM / 2);
  const message = `It throws farther to the ${leftM > rightM ? 'left' : 'right'}: look whether plate, gate and level are right, and walk the passes all in alternating directions.`;
  return {
    figures: [single('swath', swathM), ...reaches],
    change: { swathM },
    issues: [
      off > MOST_LOPSIDED ? told('pans-lopsided', message) : null,
      staleSettings(swathM, equipment, units),
    ],
  };
}

/** The rate found against the one wanted: within 5 % it is good. */
export function judged(kgPerM2: number, { wantedKgPerM2, units }: CalibrationCase): readonly Issue[] {
  if (wantedKgPerM2 === null || !(wantedKgPerM2 > 0)) return [];
  const { off, isGood } = judgeRate(kgPerM2, wantedKgPerM2);
  const wanted = formatAmountRate({ unit: 'kg', value: wantedKgPerM2 }, units);
  const words = `${formatPercent(Math.abs(off))} ${off > 0 ? 'more' : 'less'} than the ${wanted} wanted`;
  if (isGood) return [told('rate-good', `${words}: within 5 %, the setting is good.`, 'note')];
  return [told('rate-off', `${words}: ${off > 0 ? 'close' : 'open'} the setting a little and do it again.`)];
}

/** What was caught was spread over the swath of then: on another one the settings put out another rate. */
function staleSettings(
  swathM: number,
  { swathM: before, settings }: Equipment,
  units: UnitSystem,
): Issue | null {
  if (settings.length === 0 || judgeRate(swathM, before).isGood) return null;
  const message = `Its settings were found at a swath of ${formatLength(before, units)}: do their catch tests again.`;
  return told('settings-stale', message);
}
