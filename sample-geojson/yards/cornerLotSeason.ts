import { KG_PER_LB, L_PER_GAL, M2_PER_1000_SQFT } from '../../src/units/factors';
import { DEFAULT_CAPS, DEFAULT_PASSES, newDose, newVisit } from '../../src/yard/defaults';
import type {
  Climate,
  LocalRule,
  NutrientCaps,
  NutrientNeed,
  Program,
  SoilTest,
  Visit,
  ZoneChoice,
} from '../../src/yard/types';

/** A season of the corner lot: place, laboratory, weather and rules are all made up. */

const LB_PER_1000 = KG_PER_LB / M2_PER_1000_SQFT;
const TANK_L = 4 * L_PER_GAL;
const LOW_CUT: ZoneChoice = { classes: ['turf-low-cut'], include: [], exclude: [] };
const REGULAR: ZoneChoice = { classes: ['turf-regular'], include: [], exclude: [] };
const MADE_UP = 'Made up for this sample. Read the code of your own place.';

export const cornerLotClimate: Climate = {
  monthlyMeanC: [-3.5, -1.6, 4.1, 10.3, 16.2, 21.3, 23.8, 22.6, 18.1, 11.5, 4.8, -1.3],
  source: 'Made up for this sample: no weather station',
};

export const cornerLotSoilTests: readonly SoilTest[] = [
  {
    id: 'soil-lawns',
    name: 'Lawns',
    zones: REGULAR,
    date: '2026-10-05',
    lab: 'A made-up laboratory',
    extractant: 'mehlich-3',
    labUnit: 'ppm',
    mgPerKg: { P: 148, K: 101, Ca: 1460, Mg: 172 },
    ph: 6.5,
    bufferPh: null,
    organicMatterPct: 4.2,
    cecCmolPerKg: 11.4,
    depthM: 0.1,
    tableId: '',
    labLevels: {},
    limeKgPerM2: null,
    sulfurKgPerM2: null,
    labAdvice: 'No phosphorus is needed.',
    note: '',
  },
  {
    id: 'soil-low-cut',
    name: 'Low-cut square',
    zones: LOW_CUT,
    date: '2026-10-05',
    lab: 'A made-up laboratory',
    extractant: 'mehlich-3',
    labUnit: 'ppm',
    mgPerKg: { P: 41, K: 88, Ca: 720, Mg: 96 },
    ph: 5.8,
    bufferPh: 6.7,
    organicMatterPct: 2.1,
    cecCmolPerKg: 5.2,
    depthM: 0.1,
    tableId: '',
    labLevels: {},
    limeKgPerM2: 25 * LB_PER_1000,
    sulfurKgPerM2: null,
    labAdvice: 'Lime once in autumn, 25 lb of effective lime per 1,000 sq ft.',
    note: 'Sandy soil.',
  },
];

export const cornerLotNeeds: readonly NutrientNeed[] = [
  {
    id: 'need-low-cut',
    name: 'Low-cut square',
    zones: LOW_CUT,
    speciesId: 'perennial-ryegrass',
    season: 'cool-season',
    guideId: '',
    nKgPerM2: 1.75 * LB_PER_1000,
    split: { kind: 'growth' },
    hold: { from: '04-01', to: '05-20', maxNKgPerM2: 0.25 * LB_PER_1000 },
  },
  {
    id: 'need-regular',
    name: 'Lawns',
    zones: REGULAR,
    speciesId: 'kentucky-bluegrass',
    season: 'cool-season',
    guideId: '',
    nKgPerM2: 2.5 * LB_PER_1000,
    split: { kind: 'growth' },
    hold: null,
  },
];

export const cornerLotPrograms: readonly Program[] = [
  {
    id: 'program-light',
    name: 'Light liquid, low-cut',
    from: '2027-05-29',
    to: '2027-10-02',
    pace: { kind: 'every', days: 14 },
    zones: LOW_CUT,
    doses: [
      {
        id: 'light',
        productId: 'p-light',
        useId: 'tank',
        amount: { kind: 'label', rateFactor: 1 },
        zones: null,
      },
    ],
    tankL: TANK_L,
  },
  {
    id: 'program-granules',
    name: 'Granules, regular',
    from: '2027-07-10',
    to: '2027-10-02',
    // with every fourth of the light visits, which is 56 days
    pace: { kind: 'with', programId: 'program-light', nth: 4, offsetDays: 0 },
    zones: REGULAR,
    doses: [
      {
        id: 'granules',
        productId: 'p-granules',
        useId: null,
        amount: { kind: 'label', rateFactor: 1 },
        zones: null,
      },
    ],
    tankL: null,
  },
];

export const cornerLotCaps: NutrientCaps = { ...DEFAULT_CAPS, nPerYear: 3 * LB_PER_1000 };

export const cornerLotRules: readonly LocalRule[] = [
  {
    id: 'rule-winter',
    name: 'Example, not law: winter stop',
    isOn: true,
    terms: { kind: 'blackout', from: '11-15', to: '03-01', nutrients: ['N', 'P2O5'] },
    source: MADE_UP,
    readOn: null,
  },
  {
    id: 'rule-phosphorus',
    name: 'Example, not law: phosphorus by soil test only',
    isOn: true,
    terms: { kind: 'no-phosphorus', unlessSoilTest: true, testYears: 3, unlessNewLawn: true },
    source: MADE_UP,
    readOn: null,
  },
];

/** The two visits made by hand in spring, and the one of last autumn, which is done. */
export const cornerLotVisits: readonly Visit[] = [
  newVisit('visit-april', {
    name: 'First light feeding',
    date: '2027-04-17',
    zones: { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: [] },
    doses: [
      newDose('dose-april-iron', 'p-iron', { passes: { ...DEFAULT_PASSES, headerLaps: 2 } }),
      newDose('dose-april-light', 'p-light', {
        zones: { classes: ['turf-low-cut'], include: ['front-lawn'], exclude: [] },
        passes: { ...DEFAULT_PASSES, headerLaps: 1 },
      }),
    ],
    tankL: TANK_L,
    startMarkId: 'bib-front',
    note: 'Iron first, from the tank; rinse the walks before the hose-end bottle.',
  }),
  newVisit('visit-may', {
    name: 'Slow-release granules',
    date: '2027-05-15',
    zones: REGULAR,
    doses: [
      newDose('dose-may-granules', 'p-granules', {
        passes: { ...DEFAULT_PASSES, coats: 2, isGuarded: true },
      }),
      newDose('dose-may-humic', 'p-humic', {
        rateFactor: 0.5,
        zones: { classes: ['turf-low-cut', 'bed'], include: [], exclude: ['corner-bed'] },
      }),
    ],
    tankL: TANK_L,
    startMarkId: 'gate',
    endMarkId: 'gate',
    note: 'Blow granules off the walks before watering in.',
  }),
  newVisit('visit-october', {
    name: 'Autumn granules and lime',
    date: '2026-10-10',
    zones: REGULAR,
    doses: [
      newDose('dose-october-granules', 'p-granules', { actual: { unit: 'kg', value: 14.6 } }),
      newDose('dose-october-lime', 'p-lime', { zones: LOW_CUT }),
    ],
    doneOn: '2026-10-11',
    note: 'Done a day late: wind on Saturday.',
  }),
];
