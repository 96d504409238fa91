import { DEFAULT_SETTINGS, emptyYard, newDose, newVisit } from '../../src/yard/defaults';
import type { NutrientNeed, Position, Program, SoilTest, Yard, ZoneChoice } from '../../src/yard/types';
import { townhouseEquipment } from './equipment';
import { box, createFrame, type DrawnMark, type DrawnZone, placeMark, placeZone, TAPE } from './frame';
import { townhouseProducts } from './products';
import { withProgramVisits } from './withProgramVisits';

/** Middle of an invented lot, in open country south of the equator. */
const MIDDLE: Position = [146.3127, -34.2184];

/** A lot of 8 m by 26 m, taped from its fences, turned 20 degrees. */
export const townhouseFrame = createFrame(MIDDLE, [8, 26], 20);

export const townhouseZones: readonly DrawnZone[] = [
  {
    id: 'front-patch',
    name: 'Front patch',
    kind: 'turf',
    parts: [[box(0, 0, 5, 7)]],
    // square to the street: the plan is turned 20 degrees
    fields: { mowing: 'regular', slope: 0.025, downhillDeg: 160 },
    survey: TAPE,
  },
  {
    id: 'rear-lawn',
    name: 'Rear lawn',
    kind: 'turf',
    parts: [[box(0, 20, 8, 26)]],
    fields: { mowing: 'low-cut' },
    survey: TAPE,
  },
  { id: 'lavender', name: 'Lavender bed', kind: 'bed', parts: [[box(6.2, 0, 8, 7)]], survey: TAPE },
  { id: 'fence-bed', name: 'Fence bed', kind: 'bed', parts: [[box(0, 20, 0.8, 26)]], survey: TAPE },
  { id: 'house', name: 'House', kind: 'structure', parts: [[box(0, 7, 8, 17)]], survey: TAPE },
  { id: 'shed', name: 'Bicycle shed', kind: 'structure', parts: [[box(5.5, 23.5, 8, 26)]], survey: TAPE },
  {
    id: 'path',
    name: 'Front path',
    kind: 'hardscape',
    parts: [[box(5, 0, 6.2, 7)]],
    fields: { material: 'pavers' },
    survey: TAPE,
  },
  {
    id: 'terrace',
    name: 'Terrace',
    kind: 'hardscape',
    parts: [[box(0, 17, 8, 20)]],
    fields: { material: 'wood' },
    survey: TAPE,
  },
];

export const townhouseMarks: readonly DrawnMark[] = [
  { id: 'drain', name: 'Street drain', kind: 'storm-drain', at: [2, -2] },
  { id: 'tap', name: 'Tap', kind: 'hose-bib', at: [7.5, 17] },
  { id: 'gate', name: 'Front gate', kind: 'gate', at: [5.6, 0] },
];

const LAWNS: ZoneChoice = { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: [] };
const REAR: ZoneChoice = { classes: ['turf-low-cut'], include: [], exclude: [] };
const PROGRAM = 'program-liquid';

const soilTest: SoilTest = {
  id: 'soil-rear',
  name: 'Rear lawn',
  zones: REAR,
  date: '2027-08-02',
  lab: 'A made-up laboratory',
  extractant: 'olsen',
  labUnit: 'ppm',
  mgPerKg: { P: 16, K: 150 },
  ph: 7.2,
  bufferPh: null,
  organicMatterPct: 3.4,
  cecCmolPerKg: null,
  depthM: 0.1,
  tableId: '',
  labLevels: {},
  limeKgPerM2: null,
  sulfurKgPerM2: null,
  labAdvice: '',
  note: '',
};

const need: NutrientNeed = {
  id: 'need-lawns',
  name: 'Both lawns',
  zones: LAWNS,
  speciesId: 'tall-fescue',
  season: 'cool-season',
  guideId: '',
  nKgPerM2: 0.008,
  split: { kind: 'growth' },
  hold: null,
};

const program: Program = {
  id: PROGRAM,
  name: 'Lawn liquid on the rear lawn',
  from: '2027-10-03',
  to: '2027-11-14',
  pace: { kind: 'every', days: 21 },
  zones: REAR,
  doses: [
    {
      id: 'liquid',
      productId: 'p-lawn-liquid',
      useId: null,
      amount: { kind: 'label', rateFactor: 1 },
      zones: null,
    },
  ],
  tankL: 5,
};

const granules: Program = {
  id: 'program-granules',
  name: 'Fine granules on both lawns',
  from: '2027-09-26',
  to: '2027-11-30',
  pace: { kind: 'every', days: 63 },
  zones: LAWNS,
  doses: [
    {
      id: 'granules',
      productId: 'p-fine-granules',
      useId: null,
      amount: { kind: 'label', rateFactor: 1 },
      zones: null,
    },
  ],
  tankL: null,
};

/** A small yard kept in metric units. */
export function townhouseYard(): Yard {
  return withProgramVisits({
    ...emptyYard('sample-townhouse', 'Number nine, townhouse row'),
    zones: townhouseZones.map((zone) => placeZone(townhouseFrame, zone)),
    parcel: null,
    marks: townhouseMarks.map((mark) => placeMark(townhouseFrame, mark)),
    products: townhouseProducts,
    equipment: townhouseEquipment,
    visits: [
      newVisit('visit-september', {
        name: 'Spring start',
        date: '2027-09-12',
        zones: LAWNS,
        doses: [newDose('dose-liquid', 'p-lawn-liquid')],
        tankL: 5,
        startMarkId: 'gate',
      }),
    ],
    soilTests: [soilTest],
    needs: [need],
    programs: [program, granules],
    climate: {
      monthlyMeanC: [24.2, 23.6, 20.8, 16.3, 11.9, 8.9, 8.1, 9.4, 12.3, 15.8, 19.4, 22.3],
      source: 'Made up for this sample: no weather station',
    },
    settings: {
      ...DEFAULT_SETTINGS,
      units: 'metric',
      strips: { stormDrainM: 3, wellM: 15, waterM: 5 },
      hose: { lengthM: 15, flowLPerS: 0.25 },
      stepM: 0.7,
    },
  });
}
