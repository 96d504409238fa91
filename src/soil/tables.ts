import type { Extractant, SoilLevel } from '../yard/types';
import type { Band, SoilTable } from './types';

/*
 * Published interpretation tables. Each row has the source's own words; the levels follow the document's
 * meaning: `high` is enough, `very-high` more than enough. A table that counts only what is enough
 * ("optimum") has no `medium`. Bounds are as printed: "0-24, 25-45" gives 24 and 45, each included, and
 * what lies between two printed numbers belongs to the upper band; "below 45" gives 45, not included.
 */

type Row = readonly [level: SoilLevel, word: string, upTo?: number];

const make = (rows: readonly Row[], isUpToIncluded: boolean): readonly Band[] =>
  rows.map(([level, word, upTo]) => ({ level, word, upTo: upTo ?? null, isUpToIncluded }));
/** Bands whose printed bounds belong to them. */
const upTo = (...rows: readonly Row[]) => make(rows, true);

const RUTGERS_WORDS = ['very low', 'low', 'medium', 'high (optimum)', 'very high (excessive)'] as const;
const rutgers = (a: number, b: number, c: number, d: number) =>
  upTo(
    ['very-low', RUTGERS_WORDS[0], a],
    ['low', RUTGERS_WORDS[1], b],
    ['medium', RUTGERS_WORDS[2], c],
    ['high', RUTGERS_WORDS[3], d],
    ['very-high', RUTGERS_WORDS[4]],
  );
const delaware = (a: number, b: number, c: number) =>
  upTo(['low', 'low', a], ['medium', 'medium', b], ['high', 'optimum', c], ['very-high', 'excessive']);
/** A range of sufficiency "27-54": below it low, in it (both ends) medium, above it high. */
const range = (
  from: number,
  to: number,
  words: readonly [string, string, string] = ['low', 'medium', 'high'],
): readonly Band[] => [
  { level: 'low', word: words[0], upTo: from, isUpToIncluded: false },
  { level: 'medium', word: words[1], upTo: to, isUpToIncluded: true },
  { level: 'high', word: words[2], upTo: null, isUpToIncluded: true },
];
/** "Optimum 4-14": below it low, in it (both ends) enough, above it more than enough. */
const optimum = (from: number, to: number): readonly Band[] => [
  { level: 'low', word: 'below optimum', upTo: from, isUpToIncluded: false },
  { level: 'high', word: 'optimum', upTo: to, isUpToIncluded: true },
  { level: 'very-high', word: 'above optimum', upTo: null, isUpToIncluded: true },
];
/** A least level: below it low, from it on enough. */
const floor = (least: number): readonly Band[] => [
  { level: 'low', word: 'below the minimum', upTo: least, isUpToIncluded: false },
  { level: 'high', word: 'at or above the minimum', upTo: null, isUpToIncluded: true },
];

const SLAN_SOURCE =
  'Carrow, Stowell, Gelernter and others 2003, sufficiency ranges for turf, as tabled in a trade resource guide 2021-2022; meaning of the ranges (low: response likely; medium: about half; high: little or none) as quoted by Woods 2017';
const SLAN_WORDS = 'Above the range a response to more is unlikely.';

export const SOIL_TABLES: readonly SoilTable[] = [
  {
    id: 'rutgers-m3',
    name: 'Rutgers NJAES, relative levels of nutrients',
    shortName: 'Rutgers NJAES',
    source: 'Rutgers NJAES Soil Testing Laboratory, Relative Levels of Nutrients, Mehlich-3 (general crops)',
    date: '',
    state: 'read',
    extractant: 'mehlich-3',
    use: 'general',
    unit: 'lb-per-acre',
    bands: {
      P: rutgers(24, 45, 71, 137),
      K: rutgers(40, 81, 145, 277),
      Mg: rutgers(45, 83, 143, 295),
      Ca: rutgers(615, 1007, 1400, 1790),
    },
    noPhosphorusFrom: 'very-high',
    phosphorusWords: '“High” is optimum fertility; “very high” is above optimum (excessive).',
  },
  {
    id: 'penn-state-lawn-m3',
    name: 'Penn State, phosphorus of home lawns',
    shortName: 'Penn State',
    source:
      'Landschoot and Wolf, Penn State, Five-Year Summary of Mehlich-3 P Data From Home Lawn Soil Tests, abstract 103-9, ASA-CSSA-SSSA meeting',
    date: '2011-10-17',
    state: 'read',
    extractant: 'mehlich-3',
    use: 'turf',
    unit: 'ppm',
    bands: {
      P: [
        { level: 'low', word: 'phosphorus is recommended', upTo: 45, isUpToIncluded: false },
        { level: 'high', word: 'none is recommended', upTo: 200, isUpToIncluded: true },
        {
          level: 'very-high',
          word: 'above the threshold for run-off risk',
          upTo: null,
          isUpToIncluded: true,
        },
      ],
    },
    noPhosphorusFrom: 'high',
    phosphorusWords:
      'Lawns below 45 ppm get a phosphorus recommendation; above 200 ppm loss to water is a risk.',
  },
  {
    id: 'delaware-m3',
    name: 'University of Delaware, soil test categories',
    shortName: 'Univ. of Delaware',
    source:
      'University of Delaware Cooperative Extension, Nutrient Management Recommendations, Agronomic Crops; excessive P above 100 ppm also in Shober, Defining High Phosphorus Soils in Delaware',
    date: '2025-02',
    state: 'read',
    extractant: 'mehlich-3',
    use: 'general',
    unit: 'ppm',
    bands: {
      P: delaware(25, 50, 100),
      K: delaware(70, 140, 280),
      Mg: delaware(55, 110, 220),
      Ca: delaware(450, 900, 1800),
    },
    noPhosphorusFrom: 'very-high',
    phosphorusWords: 'Above optimum more phosphorus raises the risk of loss to water.',
  },
  {
    id: 'slan-m3',
    name: 'Carrow and others, sufficiency ranges for turf, soils other than sand',
    shortName: 'Carrow sufficiency range',
    source: SLAN_SOURCE,
    date: '2003',
    state: 'copy',
    extractant: 'mehlich-3',
    use: 'turf',
    unit: 'ppm',
    bands: {
      P: range(27, 54),
      K: range(75, 176),
      Ca: range(500, 750),
      Mg: range(70, 140),
      S: range(15, 40),
    },
    noPhosphorusFrom: 'high',
    phosphorusWords: SLAN_WORDS,
  },
  {
    id: 'slan-sand-m3',
    name: 'Carrow and others, sufficiency ranges for turf on sand',
    shortName: 'Carrow sufficiency range, sand',
    source: SLAN_SOURCE,
    date: '2003',
    state: 'copy',
    extractant: 'mehlich-3',
    use: 'turf',
    unit: 'ppm',
    bands: {
      P: range(27, 54),
      K: range(50, 116),
      Ca: range(500, 750),
      Mg: range(60, 120),
      S: range(15, 40),
    },
    noPhosphorusFrom: 'high',
    phosphorusWords: SLAN_WORDS,
  },
  {
    id: 'mlsn-m3',
    name: 'Minimum levels for sustainable nutrition (MLSN) of turf',
    shortName: 'MLSN',
    source: 'PACE Turf and Asian Turfgrass Center, MLSN guidelines, reference sheet; sulfur as sulfate',
    date: '2014-09',
    state: 'copy',
    extractant: 'mehlich-3',
    use: 'turf',
    unit: 'ppm',
    bands: { P: floor(21), K: floor(37), Ca: floor(331), Mg: floor(47), S: floor(7) },
    noPhosphorusFrom: null,
    phosphorusWords:
      'A floor alone: what is wanted hangs on the expected use as well, and no level of excess is named.',
  },
  {
    id: 'ifas-m3',
    name: 'UF/IFAS, Mehlich-3 interpretations for acid mineral soils of Florida',
    shortName: 'UF/IFAS',
    source: 'Mylavarapu and others, UF/IFAS SL407, Extraction of Soil Nutrients Using Mehlich-3',
    date: '2014-05',
    state: 'from memory',
    extractant: 'mehlich-3',
    use: 'general',
    unit: 'ppm',
    bands: {
      P: upTo(['low', 'low', 25], ['medium', 'medium', 45], ['high', 'high']),
      K: upTo(['low', 'low', 35], ['medium', 'medium', 60], ['high', 'high']),
      Mg: upTo(['low', 'low', 20], ['medium', 'medium', 40], ['high', 'high']),
    },
    noPhosphorusFrom: 'high',
    phosphorusWords: '“High” calls for no phosphorus.',
  },
  {
    id: 'purdue-lawn-bray',
    name: 'Purdue, phosphorus of home lawns',
    shortName: 'Purdue',
    source:
      'Nemitz, Caceres, Walker, Bigelow and Richmond, Purdue University, A Survey of Home Lawn Soil Phosphorus Levels in North Central Indiana, abstract (Purdue’s recommended levels)',
    date: '2006-11-15',
    state: 'read',
    extractant: 'bray-1',
    use: 'turf',
    unit: 'ppm',
    bands: {
      P: [
        { level: 'low', word: 'low', upTo: 12.5, isUpToIncluded: false },
        { level: 'high', word: 'acceptable', upTo: 25, isUpToIncluded: true },
        { level: 'very-high', word: 'high', upTo: null, isUpToIncluded: true },
      ],
    },
    noPhosphorusFrom: 'very-high',
    phosphorusWords: 'Above 25 ppm phosphorus is high for lawns.',
  },
  {
    id: 'slan-bray',
    name: 'Carrow and others, sufficiency range for turf, Bray-1',
    shortName: 'Carrow sufficiency range',
    source: SLAN_SOURCE,
    date: '2003',
    state: 'copy',
    extractant: 'bray-1',
    use: 'turf',
    unit: 'ppm',
    bands: { P: range(15, 30) },
    noPhosphorusFrom: 'high',
    phosphorusWords: SLAN_WORDS,
  },
  {
    id: 'wsu-lawn-bray',
    name: 'Washington State University, phosphorus of home lawns, soils of pH 7 or lower',
    shortName: 'Washington State Univ.',
    source: 'Washington State University, Phosphorus and Home Lawns: Quick Facts and Recommendations',
    date: '2012',
    state: 'copy',
    extractant: 'bray-1',
    use: 'turf',
    unit: 'ppm',
    bands: { P: upTo(['low', 'up to the minimum adequate level', 25], ['high', 'above it']) },
    noPhosphorusFrom: 'high',
    phosphorusWords: 'Above the minimum adequate level a lawn is unlikely to benefit from phosphorus.',
  },
  {
    id: 'wsu-lawn-olsen',
    name: 'Washington State University, phosphorus of home lawns, soils above pH 7',
    shortName: 'Washington State Univ.',
    source: 'Washington State University, Phosphorus and Home Lawns: Quick Facts and Recommendations',
    date: '2012',
    state: 'copy',
    extractant: 'olsen',
    use: 'turf',
    unit: 'ppm',
    bands: { P: upTo(['low', 'up to the minimum adequate level', 18], ['high', 'above it']) },
    noPhosphorusFrom: 'high',
    phosphorusWords: 'Above the minimum adequate level a lawn is unlikely to benefit from phosphorus.',
  },
  {
    id: 'slan-olsen',
    name: 'Carrow and others, sufficiency range for turf, Olsen',
    shortName: 'Carrow sufficiency range',
    source: SLAN_SOURCE,
    date: '2003',
    state: 'copy',
    extractant: 'olsen',
    use: 'turf',
    unit: 'ppm',
    bands: { P: range(12, 28) },
    noPhosphorusFrom: 'high',
    phosphorusWords: SLAN_WORDS,
  },
  {
    id: 'virginia-m1',
    name: 'Virginia, ratings of the Mehlich-1 test',
    shortName: 'Virginia',
    source: 'Virginia Cooperative Extension and Virginia DCR, ratings of the Mehlich-1 test (L, M, H, VH)',
    date: '',
    state: 'from memory',
    extractant: 'mehlich-1',
    use: 'general',
    unit: 'lb-per-acre',
    bands: {
      P: upTo(['low', 'L', 11], ['medium', 'M', 35], ['high', 'H', 110], ['very-high', 'VH']),
      K: upTo(['low', 'L', 75], ['medium', 'M', 175], ['high', 'H', 310], ['very-high', 'VH']),
    },
    noPhosphorusFrom: 'very-high',
    phosphorusWords: 'At “very high” no phosphorus is recommended.',
  },
  {
    id: 'ifas-m1',
    name: 'UF/IFAS, Mehlich-1 interpretations (in use until 2014)',
    shortName: 'UF/IFAS',
    source: 'Kidder and others, UF/IFAS, Standardized Fertilization Recommendations, Mehlich-1',
    date: '',
    state: 'from memory',
    extractant: 'mehlich-1',
    use: 'general',
    unit: 'ppm',
    bands: {
      P: [
        { level: 'very-low', word: 'very low', upTo: 10, isUpToIncluded: false },
        ...upTo(
          ['low', 'low', 15],
          ['medium', 'medium', 30],
          ['high', 'high', 60],
          ['very-high', 'very high'],
        ),
      ],
      K: [
        { level: 'very-low', word: 'very low', upTo: 20, isUpToIncluded: false },
        ...upTo(
          ['low', 'low', 35],
          ['medium', 'medium', 60],
          ['high', 'high', 125],
          ['very-high', 'very high'],
        ),
      ],
    },
    noPhosphorusFrom: 'high',
    phosphorusWords: '“High” and “very high” call for no phosphorus.',
  },
  {
    id: 'umass-morgan',
    name: 'UMass Amherst, optimum ranges, modified Morgan',
    shortName: 'UMass Amherst',
    source:
      'University of Massachusetts Amherst Soil and Plant Tissue Testing Laboratory, optimum ranges on its Soil Test Report; the bound between “very low” and “low” is not printed there',
    date: '2015-03-03',
    state: 'copy',
    extractant: 'morgan',
    use: 'general',
    unit: 'ppm',
    bands: {
      P: optimum(4, 14),
      K: optimum(100, 160),
      Ca: optimum(1000, 1500),
      Mg: optimum(50, 120),
    },
    noPhosphorusFrom: 'very-high',
    phosphorusWords: 'Above optimum no more is called for.',
  },
];

/** The table that is used where the person chose none. */
const USUAL_TABLES: Readonly<Record<Extractant, string | null>> = {
  'mehlich-3': 'rutgers-m3',
  'mehlich-1': 'virginia-m1',
  'bray-1': 'purdue-lawn-bray',
  olsen: 'wsu-lawn-olsen',
  morgan: 'umass-morgan',
  other: null,
};

/** The usual table of an extractant; null for `other`: only the lab's words count there. */
export function usualTable(extractant: Extractant): SoilTable | null {
  return SOIL_TABLES.find((table) => table.id === USUAL_TABLES[extractant]) ?? null;
}

/** Every table of an extractant, the usual one first. */
export function tablesOf(extractant: Extractant): readonly SoilTable[] {
  const own = SOIL_TABLES.filter((table) => table.extractant === extractant);
  const usual = usualTable(extractant);
  return usual === null ? own : [usual, ...own.filter((table) => table !== usual)];
}
