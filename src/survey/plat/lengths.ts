import { M_PER_FT, M_PER_IN, M_PER_MILE, M_PER_YD } from '../../units/factors';
import { readNumber } from '../../units/parse';

/** Which foot a plat means. */
export type Foot = 'international' | 'us-survey';

/** What numbers without a unit are. */
export const BARE_UNITS = ['ft', 'm', 'chain', 'rod'] as const;
/** One unit for bare numbers. */
export type BareUnit = (typeof BARE_UNITS)[number];

/**
 * metres in one US survey foot, exactly 1200/3937; out of use since 31 Dec 2022, yet older plats are in it.
 * Source: Federal Register notice 2020-21902 (date); the value as NOAA gives it.
 */
export const M_PER_US_SURVEY_FT = 1200 / 3937;
/**
 * Feet in a surveyor's chain; 100 links make a chain, 4 rods (poles, perches) too.
 * Source: BLM, Manual of Surveying Instructions 1973, sect. 2-1.
 */
const FT_PER_CHAIN = 66;

/** metres in one unit of a bare number. */
export function metresPerBareUnit(unit: BareUnit, foot: Foot): number {
  const ft = foot === 'us-survey' ? M_PER_US_SURVEY_FT : M_PER_FT;
  return { ft, m: 1, chain: FT_PER_CHAIN * ft, rod: (FT_PER_CHAIN / 4) * ft }[unit];
}

/** A number as plats write it: 1,200.5, 12 1/2, 3/4, .5 */
export const NUMBER = String.raw`\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+\/\d+|\d*\.\d+|\d+(?:\s+\d+\/\d+)?`;

const END = '(?![a-z])';
const FEET = String.raw`(?:ft|feet|foot)${END}\.?|'(?!')`;
const INCHES = String.raw`(?:inch(?:es)?|in)${END}\.?|"`;
const LINKS = String.raw`(?:links?|lks?)${END}\.?`;
/** "ch" before a number or a bearing is a label of the chord. */
const CHAINS = String.raw`(?:chains?${END}|chs?${END}(?!\s*[=:]?\s*(?:\d|[ns][\s\d])))\.?`;
const RODS = String.raw`(?:rods?|rds?|poles?|perch(?:es)?)${END}\.?`;
const JOIN = String.raw`[\s,-]*(?:and\s+)?`;
const SURVEY_FEET = String.raw`(?:u\.?s\.?\s*)?survey\s+(?:ft|feet|foot)${END}\.?|(?:us)?sft${END}\.?`;

type Kind = { readonly pattern: RegExp; metres(first: number, second: number, ftM: number): number };

const KINDS: readonly Kind[] = [
  kind(SURVEY_FEET, null, (a) => a * M_PER_US_SURVEY_FT),
  kind(FEET, INCHES, (a, b, ft) => (a + b / 12) * ft),
  kind(CHAINS, LINKS, (a, b, ft) => (a + b / 100) * FT_PER_CHAIN * ft),
  kind(RODS, LINKS, (a, b, ft) => (a / 4 + b / 100) * FT_PER_CHAIN * ft),
  kind(LINKS, null, (a, _b, ft) => (a / 100) * FT_PER_CHAIN * ft),
  kind(INCHES, null, (a) => a * M_PER_IN),
  kind(String.raw`(?:yards?|yds?)${END}\.?`, null, (a) => a * M_PER_YD),
  kind(String.raw`(?:miles?|mi)${END}\.?`, null, (a) => a * M_PER_MILE),
  kind(String.raw`(?:millimet(?:er|re)s?|mm)${END}\.?`, null, (a) => a / 1000),
  kind(String.raw`(?:centimet(?:er|re)s?|cm)${END}\.?`, null, (a) => a / 100),
  kind(String.raw`(?:met(?:er|re)s?|m)${END}\.?`, null, (a) => a),
];

function kind(unit: string, second: string | null, metres: Kind['metres']): Kind {
  const more = second === null ? '' : `(?:${JOIN}(${NUMBER})\\s*-?\\s*(?:${second}))?`;
  return { pattern: new RegExp(`(${NUMBER})\\s*-?\\s*(?:${unit})${more}`, 'y'), metres };
}

/**
 * The length with a unit that stands at a place of a text in small letters: `120.5 ft`, `12' 6"`,
 * `3 chains 25 links`, `2 rods`, `33.2 m`, `100 US survey feet`.
 * @returns metres and where it ends; null when none stands there
 */
export function lengthAt(text: string, at: number, foot: Foot): { lengthM: number; end: number } | null {
  const ftM = foot === 'us-survey' ? M_PER_US_SURVEY_FT : M_PER_FT;
  for (const { pattern, metres } of KINDS) {
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (!match) continue;
    const [whole, first = '', second] = match;
    return {
      lengthM: metres(readNumber(first), second === undefined ? 0 : readNumber(second), ftM),
      end: at + whole.length,
    };
  }
  return null;
}
