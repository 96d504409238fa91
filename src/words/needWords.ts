import type { SuggestedHold } from '../need/flushHold';
import { monthsOfRange } from '../need/monthlyNeed';
import type { GuideSource, NitrogenGuide } from '../need/nitrogenGuides';
import { findSpecies } from '../need/species';
import { unitChoices } from '../units/choices';
import { formatNumber, formatNutrientRate } from '../units/format';
import type { FlushHold, GrassSeason, NitrogenSplit, NutrientNeed, UnitSystem } from '../yard/types';
import { MONTH_NAMES } from '../yard/yearDay';

export const SEASON_WORDS: Readonly<Record<GrassSeason, string>> = {
  'cool-season': 'Cool-season',
  'warm-season': 'Warm-season',
};

export const SPLIT_WORDS: Readonly<Record<NitrogenSplit['kind'], string>> = {
  growth: 'By growth, from the monthly temperatures',
  even: 'Alike over a run of months',
  typed: 'As typed, month by month',
};

const STATUS_WORDS: Readonly<Record<GuideSource['status'], string>> = {
  read: '',
  copy: 'from a copy or a column that quotes it',
  memory: 'from memory',
};

/** "2 to 3.5 lb per 1,000 sq ft", or one number where least and most are alike. */
export function rangeWords(minKgPerM2: number, maxKgPerM2: number, units: UnitSystem): string {
  const most = formatNutrientRate(maxKgPerM2, units);
  if (minKgPerM2 === maxKgPerM2) return most;
  const unit = unitChoices('mass-per-area', units)[0];
  return `${formatNumber(unit?.fromSI(minKgPerM2) ?? minKgPerM2)} to ${most}`;
}

/** "Virginia", "Florida, north", "Kansas, athletic field": where and for what care a range was printed. */
export function guidePlaceWords(guide: NitrogenGuide): string {
  const { region, isTrial } = guide.source;
  return `${[region, guide.detail].filter((part) => part !== '').join(', ')}${isTrial ? ' (a trial)' : ''}`;
}

/** Source of a range with its year, as printed and how it was come by, as sentences. */
export function guideSourceWords(guide: NitrogenGuide): string {
  const { words, year, status, note } = guide.source;
  const printed =
    guide.printedMin === guide.printedMax
      ? `${guide.printedMax} ${guide.unit}`
      : `${guide.printedMin} to ${guide.printedMax} ${guide.unit}`;
  const told = [year === null ? words : `${words}, ${year}`, STATUS_WORDS[status]].filter(
    (part) => part !== '',
  );
  return `${told.join('; ')}. Printed as ${printed} a year.${note === '' ? '' : ` ${note}`}`;
}

/** "1 March", for a day of any year; the text itself where it is no day. */
export function yearDayWords(yearDay: string): string {
  const [month, day] = yearDay.split('-').map(Number);
  const name = MONTH_NAMES[(month ?? 0) - 1];
  return name && day ? `${day} ${name}` : yearDay;
}

/** How the year is shared out, in few words. */
export function splitWords(split: NitrogenSplit): string {
  if (split.kind === 'growth') return 'by growth';
  if (split.kind === 'typed') return 'as typed';
  const count = monthsOfRange(split.fromMonth, split.toMonth).length;
  if (count === 12) return 'alike over the year';
  const [from, to] = [MONTH_NAMES[split.fromMonth - 1], MONTH_NAMES[split.toMonth - 1]];
  return count === 1 ? `all in ${from}` : `alike from ${from} to ${to}`;
}

/** A need on one line: grass, year, split. */
export function needWords(need: NutrientNeed, units: UnitSystem): string {
  const grass = findSpecies(need.speciesId)?.name ?? `${SEASON_WORDS[need.season]} grass`;
  return `${grass}; ${formatNutrientRate(need.nKgPerM2, units)} of N a year, ${splitWords(need.split)}`;
}

/** What a hold says, as a sentence. */
export function holdWords(hold: FlushHold, units: UnitSystem): string {
  const most =
    hold.maxNKgPerM2 === 0 ? 'no nitrogen' : `at most ${formatNutrientRate(hold.maxNKgPerM2, units)} of N`;
  return `From ${yearDayWords(hold.from)} to ${yearDayWords(hold.to)}: ${most}.`;
}

/** What a suggested hold rests on, as sentences. */
export function holdBasisWords({ basis, source }: SuggestedHold): string {
  const days =
    basis === 'growth'
      ? 'The days follow the growth of this yard’s spring'
      : 'The days are the usual ones of the season; with monthly temperatures they follow this yard’s spring';
  return `${days}. The amount: ${source}.`;
}
