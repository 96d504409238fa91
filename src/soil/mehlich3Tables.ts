import {
  bandsOfDelaware,
  bandsOfFloor,
  bandsOfRange,
  bandsOfRutgers,
  bandsOfRutgersMicro,
  bandsUpTo,
} from './bands';
import type { SoilTable } from './types';

/** Where the sufficiency ranges are from. */
export const SLAN_SOURCE =
  'Carrow, Stowell, Gelernter and others 2003, sufficiency ranges for turf, as tabled in a trade resource guide 2021-2022; meaning of the ranges (low: response likely; medium: about half; high: little or none) as quoted by Woods 2017';
/** What a figure above the range means. */
export const SLAN_WORDS = 'Above the range a response to more is unlikely.';

/** Published tables of the Mehlich-3 extractant. */
export const MEHLICH_3_TABLES: readonly SoilTable[] = [
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
      P: bandsOfRutgers(24, 45, 71, 137),
      K: bandsOfRutgers(40, 81, 145, 277),
      Mg: bandsOfRutgers(45, 83, 143, 295),
      Ca: bandsOfRutgers(615, 1007, 1400, 1790),
      Zn: bandsOfRutgersMicro(1, 50),
      Cu: bandsOfRutgersMicro(0.5, 20),
      B: bandsOfRutgersMicro(0.5, 20),
      Fe: bandsOfRutgersMicro(50, 100),
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
      P: bandsOfDelaware(25, 50, 100),
      K: bandsOfDelaware(70, 140, 280),
      Mg: bandsOfDelaware(55, 110, 220),
      Ca: bandsOfDelaware(450, 900, 1800),
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
      P: bandsOfRange(27, 54),
      K: bandsOfRange(75, 176),
      Ca: bandsOfRange(500, 750),
      Mg: bandsOfRange(70, 140),
      S: bandsOfRange(15, 40),
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
      P: bandsOfRange(27, 54),
      K: bandsOfRange(50, 116),
      Ca: bandsOfRange(500, 750),
      Mg: bandsOfRange(60, 120),
      S: bandsOfRange(15, 40),
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
    bands: {
      P: bandsOfFloor(21),
      K: bandsOfFloor(37),
      Ca: bandsOfFloor(331),
      Mg: bandsOfFloor(47),
      S: bandsOfFloor(7),
    },
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
      P: bandsUpTo(['low', 'low', 25], ['medium', 'medium', 45], ['high', 'high']),
      K: bandsUpTo(['low', 'low', 35], ['medium', 'medium', 60], ['high', 'high']),
      Mg: bandsUpTo(['low', 'low', 20], ['medium', 'medium', 40], ['high', 'high']),
    },
    noPhosphorusFrom: 'high',
    phosphorusWords: '“High” calls for no phosphorus.',
  },
];
