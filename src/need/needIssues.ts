import { formatNutrientRate } from '../units/format';
import { chosenZones } from '../yard/choose';
import type { Issue, NutrientNeed, Yard, Zone } from '../yard/types';
import { zoneNames } from '../yard/zoneNames';
import { heldNeed } from './flushHold';
import { monthlyNeed } from './monthlyNeed';
import { turfWithoutNeed } from './needOfZone';
import { findGuide } from './nitrogenGuides';
import { findSpecies } from './species';

/** Less than this of nitrogen is nothing but rounding, kg/m². */
const TRACE = 1e-9;

/**
 * What is not sound in the yard's needs: ground claimed twice or not at all, splits that give nothing, a season
 * that is not the grass's, a value outside the range it was taken from, nitrogen that a hold leaves no month for.
 * @returns issues with `place.needId`; of turf without a need with its `place.zoneId`
 */
export function needIssues(yard: Yard): readonly Issue[] {
  const taken = new Map<string, NutrientNeed>();
  const issues = yard.needs.flatMap((need) => {
    const ground = chosenZones(yard, need.zones);
    const twice = ground.filter((zone) => taken.has(zone.id));
    const own = [...groundIssues(need, ground, twice, taken), ...ownIssues(yard, need)];
    for (const zone of ground) if (!taken.has(zone.id)) taken.set(zone.id, need);
    return own;
  });
  return yard.needs.length === 0 ? issues : [...issues, ...bareIssues(turfWithoutNeed(yard))];
}

function groundIssues(
  need: NutrientNeed,
  ground: readonly Zone[],
  twice: readonly Zone[],
  taken: ReadonlyMap<string, NutrientNeed>,
): readonly Issue[] {
  if (ground.length === 0)
    return [issue(need, 'need-no-ground', 'warning', 'It covers no ground: choose its zones.')];
  const first = twice[0];
  if (first === undefined) return [];
  const ids = twice.map((zone) => zone.id);
  const other = taken.get(first.id)?.name || 'an earlier one';
  const message = `${zoneNames({ zones: twice }, ids)}: already covered by “${other}”, which goes first. Leave it out of one of the two.`;
  return [issue(need, 'need-claimed-twice', 'warning', message)];
}

function ownIssues(yard: Yard, need: NutrientNeed): readonly Issue[] {
  const found: Issue[] = [];
  const { units } = yard.settings;
  const species = findSpecies(need.speciesId);
  if (species && species.season !== need.season) {
    const words = species.season === 'cool-season' ? 'a cool-season' : 'a warm-season';
    found.push(issue(need, 'need-season', 'warning', `${species.name} is ${words} grass.`, 'season'));
  }
  const guide = findGuide(need.guideId);
  const isOutside =
    guide && (need.nKgPerM2 < guide.minKgPerM2 - TRACE || need.nKgPerM2 > guide.maxKgPerM2 + TRACE);
  if (guide && isOutside) {
    const range =
      guide.minKgPerM2 === guide.maxKgPerM2
        ? formatNutrientRate(guide.minKgPerM2, units)
        : `${formatNutrientRate(guide.minKgPerM2, units)} to ${formatNutrientRate(guide.maxKgPerM2, units)}`;
    const message = `${formatNutrientRate(need.nKgPerM2, units)} a year is outside the published ${range}.`;
    found.push(issue(need, 'need-outside-guide', 'note', message, 'nKgPerM2'));
  }
  if (need.nKgPerM2 === 0)
    found.push(issue(need, 'need-none', 'note', 'No nitrogen is wanted in the year.', 'nKgPerM2'));
  const months = monthlyNeed(need, yard.climate);
  if (months === null) found.push(issue(need, 'need-no-split', 'warning', splitWords(yard, need), 'split'));
  else if (need.hold) {
    const { leftOverKgPerM2 } = heldNeed(months, need.hold);
    if (leftOverKgPerM2 > TRACE) {
      const message = `The hold leaves no later month for ${formatNutrientRate(leftOverKgPerM2, units)} of the year.`;
      found.push(issue(need, 'need-hold-leftover', 'warning', message, 'hold'));
    }
  }
  return found;
}

function splitWords(yard: Yard, need: NutrientNeed): string {
  if (need.split.kind === 'typed') return 'The twelve shares are all zero: type how the year is shared out.';
  if (yard.climate.monthlyMeanC === null)
    return 'Sharing out by growth wants the monthly mean temperatures: type or paste them under Climate.';
  return 'By these temperatures the grass never grows: share the year out in another way.';
}

function bareIssues(bare: readonly Zone[]): readonly Issue[] {
  return bare.map((zone) => ({
    code: 'turf-without-need',
    severity: 'note',
    message: `${zone.name || 'Unnamed turf'} goes by no need: the season is not held against one there.`,
    place: { zoneId: zone.id },
  }));
}

function issue(
  need: NutrientNeed,
  code: string,
  severity: Issue['severity'],
  message: string,
  path?: string,
): Issue {
  return { code, severity, message, place: { needId: need.id, ...(path === undefined ? {} : { path }) } };
}
