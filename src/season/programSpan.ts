import { addDays } from '../yard/calendar';
import { chosenZones } from '../yard/choose';
import type { Nutrient, Yard, ZoneChoice } from '../yard/types';
import { isInStretch } from '../yard/yearDay';
import { needsByZone } from './needsByZone';

/** Growing season that a program begins with, MM-DD; the person moves it. Common practice, no source. */
const FIRST_DAY = '04-01';
const LAST_DAY = '10-15';

/**
 * First and last day that a new program begins with: the longest stretch of the growing season that lies in no hold
 * before the spring flush of its ground and in no stretch that a rule bars for what it carries; all of the season
 * where every day is barred.
 * @param nutrients what the program's products carry
 * @returns days YYYY-MM-DD
 */
export function programSpan(
  yard: Yard,
  year: number,
  zones: ZoneChoice,
  nutrients: readonly Nutrient[],
): { readonly from: string; readonly to: string } {
  const needs = needsByZone(yard);
  const holds = nutrients.includes('N')
    ? chosenZones(yard, zones).flatMap(({ id }) => needs.get(id)?.hold ?? [])
    : [];
  const barred = yard.rules.flatMap(({ isOn, terms }) =>
    isOn && terms.kind === 'blackout' && terms.nutrients.some((one) => nutrients.includes(one))
      ? [terms]
      : [],
  );
  const stretches = [...holds, ...barred];
  const [first, last] = [`${year}-${FIRST_DAY}`, `${year}-${LAST_DAY}`];
  const runs: { from: string; to: string; days: number }[] = [];
  let isOpen = false;
  for (let day = first; day <= last; day = addDays(day, 1) ?? '9999') {
    if (stretches.some(({ from, to }) => isInStretch(day, from, to))) {
      isOpen = false;
      continue;
    }
    const run = isOpen ? runs.at(-1) : undefined;
    isOpen = true;
    if (run) Object.assign(run, { to: day, days: run.days + 1 });
    else runs.push({ from: day, to: day, days: 1 });
  }
  const longest = Math.max(...runs.map((run) => run.days));
  const best = runs.find((run) => run.days === longest);
  return best ? { from: best.from, to: best.to } : { from: first, to: last };
}
