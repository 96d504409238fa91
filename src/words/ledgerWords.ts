import type { LedgerItem } from '../season/ledgerSums';
import { spanWords } from '../season/yearDayWords';
import { formatLeastLength, formatMostRate, formatPercent } from '../units/format';
import { formatDay } from '../units/formatDay';
import { ELEMENT_NAMES } from '../yard/elementNames';
import { ELEMENTS, type LocalRule, type RuleTerms, type UnitSystem } from '../yard/types';
import { NUTRIENT_WORDS } from './productWords';

/** What the ledger counts, as a column is headed. */
export const ITEM_WORDS: Readonly<Record<LedgerItem, string>> = {
  ...NUTRIENT_WORDS,
  solubleN: 'Soluble N',
  ...(Object.fromEntries(ELEMENTS.map((element) => [element, element])) as Record<
    (typeof ELEMENTS)[number],
    string
  >),
};

/** The same in full, as a choice: "P₂O₅ (phosphate)". */
export const ITEM_LONG_WORDS: Readonly<Record<LedgerItem, string>> = {
  N: 'N (nitrogen)',
  solubleN: 'Soluble N',
  P2O5: 'P₂O₅ (phosphate)',
  K2O: 'K₂O (potash)',
  ...(Object.fromEntries(
    ELEMENTS.map((element) => [element, `${element} (${ELEMENT_NAMES[element].toLowerCase()})`]),
  ) as Record<(typeof ELEMENTS)[number], string>),
};

/** Kinds of rules, as they are added. */
export const RULE_KIND_WORDS: Readonly<Record<RuleTerms['kind'], string>> = {
  'no-phosphorus': 'No phosphorus',
  blackout: 'Days without feeding',
  buffer: 'Strip left untreated',
  cap: 'Most of a nutrient',
  'slow-share': 'Least slow-release share',
};

/** What a strip goes round. */
export const ROUND_WORDS: Readonly<Record<'water' | 'storm-drain' | 'well', string>> = {
  water: 'along water',
  'storm-drain': 'round a storm drain',
  well: 'round a well',
};

/** A rule in one line, as the person filled it in. */
export function ruleTermsWords(terms: RuleTerms, units: UnitSystem): string {
  switch (terms.kind) {
    case 'no-phosphorus': {
      const years =
        terms.testYears === null
          ? ''
          : ` of the last ${terms.testYears === 1 ? 'year' : `${terms.testYears} years`}`;
      const ways = [
        ...(terms.unlessSoilTest ? [`a soil test${years} that shows a need`] : []),
        ...(terms.unlessNewLawn ? ['turf sown or laid within a year'] : []),
      ];
      return ways.length === 0 ? 'No phosphorus' : `No phosphorus but with ${ways.join(' or ')}`;
    }
    case 'blackout': {
      const what = terms.nutrients.map((one) => NUTRIENT_WORDS[one]).join(' or ');
      return `No ${what || 'nutrient'} from ${spanWords(terms)}`;
    }
    case 'buffer':
      return `At least ${formatLeastLength(terms.widthM, units)} left untreated ${ROUND_WORDS[terms.round]}`;
    case 'cap': {
      const what =
        terms.isSolubleOnly && terms.nutrient === 'N' ? 'soluble N' : NUTRIENT_WORDS[terms.nutrient];
      const when = terms.per === 'dose' ? 'at once' : 'in a calendar year';
      return `At most ${formatMostRate(terms.maxKgPerM2, units)} of ${what} ${when}`;
    }
    case 'slow-share':
      return `At least ${formatPercent(terms.minPct / 100)} of a product's nitrogen slow-release`;
  }
}

/** Where a rule was read and when, or what is still to fill in. */
export function ruleSourceWords({ source, readOn }: Pick<LocalRule, 'source' | 'readOn'>): string {
  const from = source.trim().replace(/\.$/, '');
  if (from === '') return 'Where it was read is not filled in.';
  return readOn === null
    ? `${from}; the day it was read is not filled in.`
    : `${from}, read on ${formatDay(readOn, true)}.`;
}
