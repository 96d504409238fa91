import { KG_PER_M2_OF_LB_PER_1000_SQFT, M2_PER_HA } from '../units/factors';
import type { MowingClass } from '../yard/types';

/*
 * Yearly nitrogen as published, by grass. The ranges differ from state to state and from one care to another:
 * each is shown with its source, none is law, and the person moves the value.
 */

/** Where ranges were published. */
export interface GuideSource {
  readonly id: string;
  readonly words: string;
  /** null: the page bears no date. */
  readonly year: number | null;
  /** where it is meant for. */
  readonly region: string;
  /** `read`: on the publisher's own page; `copy`: on a copy or a column that quotes it; `memory`: recalled. */
  readonly status: 'read' | 'copy' | 'memory';
  /** what the source says beside the numbers. */
  readonly note: string;
  /** a trial reports what was tried and how it did; it is no advice, and no need begins with it. */
  readonly isTrial: boolean;
}

/** One published range, as printed and in SI. */
export interface NitrogenGuide {
  /** stable, kept in the document. */
  readonly id: string;
  readonly speciesId: string;
  readonly source: GuideSource;
  /** part of the source's region, level of care, or kind; empty: none told. */
  readonly detail: string;
  /** the class of mowing the range was printed for; null: the source does not tell (lawns). */
  readonly mowing: MowingClass | null;
  readonly unit: 'lb per 1,000 sq ft' | 'kg/ha';
  /** least and most as printed, in `unit`; alike where one number is printed. */
  readonly printedMin: number;
  readonly printedMax: number;
  readonly minKgPerM2: number;
  readonly maxKgPerM2: number;
}

const SI = { 'lb per 1,000 sq ft': KG_PER_M2_OF_LB_PER_1000_SQFT, 'kg/ha': 1 / M2_PER_HA } as const;

function source(
  id: string,
  words: string,
  year: number | null,
  region: string,
  status: GuideSource['status'],
  note = '',
): GuideSource {
  return { id, words, year, region, status, note, isTrial: false };
}

const UF = source(
  'uf-ifas',
  'UF/IFAS, Guide to Florida-Friendly Landscaping, table 2 (EP221)',
  null,
  'Florida',
  'copy',
  'It advises no more than the lowest of the range, with clippings left on the lawn.',
);
const TAMU = source('tamu', 'Duble, McAfee and Novosad, Lawn Fertilization in Texas', null, 'Texas', 'copy');
const ILLINOIS = source(
  'illinois',
  'University of Illinois, lawn nitrogen by grass',
  1995,
  'Illinois',
  'copy',
  'At most 1 lb at once.',
);
const VIRGINIA = source(
  'virginia-dcr',
  'Virginia Dept. of Conservation and Recreation, home lawn nitrogen table (slow-release)',
  null,
  'Virginia',
  'read',
  'The higher amounts only for those who will mow more often.',
);
const KANSAS_WARM = source(
  'kansas-warm',
  'Kansas State Research and Extension (Upham), warm-season lawns',
  null,
  'Kansas',
  'copy',
  'Last application no later than mid-August.',
);
const KANSAS_COOL = source(
  'kansas-cool',
  'Kansas State Research and Extension (Eckert), cool-season lawns',
  null,
  'Kansas',
  'copy',
  'No need for more than 4 lb a year; not in March or April.',
);
const NC_STATE = source(
  'nc-state',
  'NC State Extension, Caring for Your Lawn and the Environment',
  null,
  'North Carolina',
  'read',
  'Many lawns do well with 1 or 2 lb a year.',
);
const UGA = source('uga', 'UGA Extension, Appling County, centipedegrass', null, 'Georgia', 'read');
const PENN_STATE = source(
  'penn-state',
  'Landschoot (Penn State), Nitrogen programs for cool-season turfgrasses, in a trade journal',
  null,
  'Pennsylvania',
  'copy',
  'Fine fescue above 4 lb a year suffers more from drought, heat and leaf spot.',
);
const IOWA = source(
  'iowa-state',
  'Iowa State Extension, How often should I fertilize my lawn?',
  null,
  'Iowa',
  'read',
  'One to three applications of 1 lb by what is expected of the lawn.',
);
/** Volume 99 is of 2007; the id, kept in documents, has the year it was accepted. */
const SCHLOSSBERG: GuideSource = {
  ...source(
    'schlossberg-2006',
    'Schlossberg and Schmidt, Agronomy Journal 99:99-106, putting green of bentgrass and annual bluegrass',
    2007,
    'Pennsylvania',
    'read',
    'A trial, no advice: rates from 69 to 402 kg/ha were put down, and quality was acceptable above 244.',
  ),
  isTrial: true,
};

type Row = readonly [speciesId: string, detail: string, min: number, max?: number];

function rows(from: GuideSource, list: readonly Row[], rest: Partial<NitrogenGuide> = {}): NitrogenGuide[] {
  const unit = rest.unit ?? 'lb per 1,000 sq ft';
  return list.map(([speciesId, detail, printedMin, printedMax = printedMin]) => ({
    id: [from.id, speciesId, detail.toLowerCase().replace(/[^a-z]+/g, '-')]
      .filter((part) => part !== '')
      .join('/'),
    speciesId,
    source: from,
    detail,
    mowing: null,
    ...rest,
    unit,
    printedMin,
    printedMax,
    minKgPerM2: printedMin * SI[unit],
    maxKgPerM2: printedMax * SI[unit],
  }));
}

/** Every published range, by source. */
export const NITROGEN_GUIDES: readonly NitrogenGuide[] = [
  ...rows(VIRGINIA, [
    ['kentucky-bluegrass', '', 2, 3.5],
    ['tall-fescue', '', 2, 3.5],
    ['perennial-ryegrass', '', 2, 3.5],
    ['fine-fescue', '', 1, 2],
    ['bermudagrass', '', 2, 4],
    ['st-augustinegrass', '', 2, 4],
    ['zoysiagrass', '', 1, 2],
    ['centipedegrass', '', 1, 2],
  ]),
  ...rows(ILLINOIS, [
    ['kentucky-bluegrass', '', 1, 4],
    ['tall-fescue', '', 2, 4],
    ['perennial-ryegrass', '', 2, 4],
    ['fine-fescue', '', 1, 3],
    ['creeping-bentgrass', '', 2, 6],
    ['buffalograss', '', 1, 3],
    ['zoysiagrass', '', 2, 4],
  ]),
  ...rows(SCHLOSSBERG, [['creeping-bentgrass', 'putting green', 244, 402]], {
    unit: 'kg/ha',
    mowing: 'low-cut',
  }),
  ...rows(SCHLOSSBERG, [['annual-bluegrass', 'putting green', 244, 402]], {
    unit: 'kg/ha',
    mowing: 'low-cut',
  }),
  ...rows(PENN_STATE, [
    ['kentucky-bluegrass', '', 3, 4],
    ['perennial-ryegrass', '', 3, 4],
    ['tall-fescue', '', 2],
    ['fine-fescue', '', 2],
  ]),
  ...rows(IOWA, [['kentucky-bluegrass', '', 1, 3]]),
  ...rows(KANSAS_COOL, [
    ['kentucky-bluegrass', 'low maintenance', 1],
    ['kentucky-bluegrass', 'medium maintenance', 2],
    ['kentucky-bluegrass', 'high maintenance', 3, 4],
    ['tall-fescue', 'low maintenance', 1],
    ['tall-fescue', 'medium maintenance', 2],
    ['tall-fescue', 'high maintenance', 3, 4],
    ['perennial-ryegrass', 'low maintenance', 1],
    ['perennial-ryegrass', 'medium maintenance', 2],
    ['perennial-ryegrass', 'high maintenance', 3, 4],
  ]),
  ...rows(KANSAS_WARM, [
    ['bermudagrass', 'low maintenance', 2],
    ['bermudagrass', 'high-quality home lawn', 3],
    ['bermudagrass', 'athletic field', 4],
    ['zoysiagrass', '', 1.5, 2],
    ['buffalograss', '', 0, 2],
  ]),
  ...rows(NC_STATE, [
    ['bahiagrass', '', 1],
    ['bermudagrass', '', 4],
    ['centipedegrass', '', 0.5],
    ['tall-fescue', '', 2.5, 3],
    ['kentucky-bluegrass', '', 2.5, 3],
    ['st-augustinegrass', '', 2.5],
    ['zoysiagrass', '', 1.5],
  ]),
  ...rows(UF, [
    ['bahiagrass', 'north', 2, 3],
    ['bahiagrass', 'central', 2, 4],
    ['bahiagrass', 'south', 2, 4],
    ['bermudagrass', 'north', 3, 5],
    ['bermudagrass', 'central', 4, 6],
    ['bermudagrass', 'south', 5, 7],
    ['centipedegrass', 'north', 1, 2],
    ['centipedegrass', 'central', 2, 3],
    ['centipedegrass', 'south', 2, 3],
    ['st-augustinegrass', 'north', 2, 4],
    ['st-augustinegrass', 'central', 2, 5],
    ['st-augustinegrass', 'south', 4, 6],
    ['zoysiagrass', 'north', 3, 5],
    ['zoysiagrass', 'central', 3, 6],
    ['zoysiagrass', 'south', 4, 6],
  ]),
  ...rows(TAMU, [
    ['bermudagrass', 'hybrid', 5, 7],
    ['bermudagrass', 'common', 4, 6],
    ['st-augustinegrass', '', 2, 5],
    ['zoysiagrass', '', 3, 5],
    ['centipedegrass', '', 1, 2],
    ['buffalograss', '', 1],
    ['tall-fescue', '', 2, 5],
    ['perennial-ryegrass', '', 4, 6],
  ]),
  ...rows(UGA, [
    ['centipedegrass', '', 1],
    ['centipedegrass', 'on sand', 2],
  ]),
];

/**
 * Published ranges of one grass, trials last.
 * @param mowing puts those printed for that class first; null keeps the order of the sources
 * @returns none for a grass that is not told or has no row
 */
export function guidesFor(speciesId: string, mowing: MowingClass | null = null): readonly NitrogenGuide[] {
  const own = NITROGEN_GUIDES.filter((guide) => guide.speciesId === speciesId);
  const rank = ({ mowing: own, source }: NitrogenGuide) =>
    (source.isTrial ? 3 : 0) + (own === null ? 1 : own === mowing ? 0 : 2);
  return [...own].sort((a, b) => rank(a) - rank(b));
}

/** @returns the range of that id; null where the value was typed, or the id is not known here. */
export function findGuide(id: string): NitrogenGuide | null {
  return NITROGEN_GUIDES.find((guide) => guide.id === id) ?? null;
}
