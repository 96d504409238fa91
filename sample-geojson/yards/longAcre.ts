import { KG_PER_LB, L_PER_GAL, M_PER_FT, M2_PER_1000_SQFT } from '../../src/units/factors';
import { DEFAULT_PASSES, DEFAULT_SETTINGS, emptyYard, newDose, newVisit } from '../../src/yard/defaults';
import type {
  LocalRule,
  Material,
  NutrientNeed,
  Position,
  Program,
  Yard,
  ZoneChoice,
} from '../../src/yard/types';
import { longAcreEquipment } from './equipment';
import {
  box,
  createFrame,
  type DrawnMark,
  type DrawnZone,
  type Metres,
  oval,
  placeMark,
  placeZone,
  TAPE,
  TRACED,
} from './frame';
import { longAcreProducts } from './products';
import { withProgramVisits } from './withProgramVisits';

/** Middle of an invented acre, in open country. */
const MIDDLE: Position = [-99.6083, 42.5176];

export const longAcreFrame = createFrame(MIDDLE, [88, 62]);

const WEST: Metres = [-4, 24];
const MID: Metres = [40, 26];
const SOUTH: Metres = [44, 2];
const EAST: Metres = [92, 36];
const NORTH: Metres = [46, 60];

/** The lot's corners in order, counter-clockwise. Every square metre of it is some zone's, but one rock. */
export const LONG_ACRE_LOT: readonly Metres[] = [
  [0, 0],
  SOUTH,
  [88, 4],
  EAST,
  [80, 57],
  NORTH,
  [6, 52],
  WEST,
];
/** Left out of every zone. */
export const LONG_ACRE_ROCK: readonly Metres[] = oval([78, 14], 1.6, 1.1, 24);

const treeRing = oval([10, 12], 2.5, 2.5, 40);
const loopInside = oval([54, 20], 4, 4, 60);
const pondIsland = oval([72, 48], 1.8, 1.2, 32);

function lawn(
  id: string,
  name: string,
  outlines: readonly (readonly Metres[])[],
  fall: DrawnZone['fields'] = {},
): DrawnZone {
  return {
    id,
    name,
    kind: 'turf',
    parts: [outlines],
    fields: { mowing: 'regular', ...fall },
    survey: TRACED,
  };
}
function bed(id: string, name: string, ...parts: (readonly Metres[])[]): DrawnZone {
  return { id, name, kind: 'bed', parts: parts.map((outline) => [outline]), survey: TRACED };
}
function building(id: string, name: string, outline: readonly Metres[]): DrawnZone {
  return { id, name, kind: 'structure', parts: [[outline]], survey: TAPE };
}
function hard(
  id: string,
  name: string,
  material: Material,
  parts: DrawnZone['parts'],
  cuts = false,
): DrawnZone {
  return { id, name, kind: 'hardscape', parts, fields: { material, cutsSameKind: cuts }, survey: TRACED };
}

export const longAcreZones: readonly DrawnZone[] = [
  lawn('southwest-lawn', 'Southwest lawn', [[[0, 0], SOUTH, MID, WEST], treeRing], {
    slope: 0.02,
    downhillDeg: 180,
  }),
  lawn('southeast-lawn', 'Southeast lawn', [[SOUTH, [88, 4], EAST, MID], LONG_ACRE_ROCK]),
  lawn('northeast-lawn', 'Northeast lawn', [[MID, EAST, [80, 57], NORTH]], { slope: 0.04, downhillDeg: 30 }),
  lawn('northwest-lawn', 'Northwest lawn', [[MID, NORTH, [6, 52], WEST]]),
  {
    id: 'rough',
    name: 'Rough pieces',
    kind: 'turf',
    parts: [[box(60, 40, 64, 44)], [box(80, 24, 86, 30)], [box(58, 54, 66, 57)]],
    fields: { mowing: 'regular', cutsSameKind: true, note: 'Mown twice a year.' },
    survey: TRACED,
  },
  {
    id: 'green',
    name: 'Putting green',
    kind: 'turf',
    parts: [[oval([22, 48], 5, 4, 64)]],
    fields: { mowing: 'low-cut', cutsSameKind: true },
    survey: TRACED,
  },
  bed('tree-ring', 'Oak ring', treeRing),
  bed('loop-bed', 'Loop bed', loopInside),
  bed('house-bed', 'House bed', box(29, 27, 47, 28.2)),
  bed('terrace-bed', 'Terrace bed', [
    [44, 40],
    [47, 40],
    [44, 46],
  ]),
  bed('willow', 'Willow island', pondIsland),
  bed(
    'orchard',
    'Orchard rings',
    ...[0, 1, 2].flatMap((i) => [0, 1].map((j) => oval([64 + 6 * i, 10 + 6 * j], 0.9, 0.9, 32))),
  ),
  bed('hedge', 'Road hedge', [
    [2, 0.09],
    [40, 1.82],
    [40, 3],
    [2, 1.4],
  ]),
  building('house', 'House', box(30, 28, 46, 40)),
  building('garage', 'Garage', box(50, 30, 58, 38)),
  building('shed', 'Tool shed', box(18, 30, 22, 33)),
  building('hens', 'Hen house', box(4, 44, 7, 46)),
  hard('driveway', 'Driveway', 'gravel', [[box(52, 2.6, 56, 13)], [box(52, 27, 56, 30.5)]]),
  hard('loop', 'Turning loop', 'gravel', [[oval([54, 20], 8, 8, 90), loopInside]], true),
  hard('terrace', 'Terrace', 'pavers', [[box(32, 39.5, 44, 46)]]),
  hard('garden-path', 'Garden path', 'stone', [
    [
      [
        [22, 31],
        [30, 31],
        [30, 32.2],
        [22, 32.2],
      ],
    ],
  ]),
  hard('front-path', 'Front path', 'concrete', [[box(46, 33, 50, 34.5)]]),
  {
    id: 'pond',
    name: 'Farm pond',
    kind: 'water',
    parts: [[oval([72, 48], 7, 5, 72), pondIsland]],
    survey: TRACED,
  },
  {
    id: 'ditch',
    name: 'West ditch',
    kind: 'water',
    parts: [
      [
        [
          [-1, 30],
          [0.2, 30],
          [4, 42],
          [2.8, 42],
        ],
      ],
    ],
    survey: TRACED,
  },
  { id: 'plot', name: 'Vegetable plot', kind: 'other', parts: [[box(8, 32, 16, 42)]], survey: TAPE },
  { id: 'compost', name: 'Compost bay', kind: 'other', parts: [[box(10, 46, 14, 48)]], survey: TAPE },
];

export const longAcreMarks: readonly DrawnMark[] = [
  { id: 'well', name: 'House well', kind: 'well', at: [26, 24] },
  { id: 'culvert', name: 'Road drain', kind: 'storm-drain', at: [58, 2] },
  { id: 'bib-house', name: 'House bib', kind: 'hose-bib', at: [46, 36] },
  { id: 'bib-garage', name: 'Garage bib', kind: 'hose-bib', at: [58, 34] },
  { id: 'gate', name: 'Field gate', kind: 'gate', at: [91, 30] },
];

const LAWNS: ZoneChoice = { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: ['rough'] };
const PROGRAM = 'program-granules';
const LB_PER_1000 = KG_PER_LB / M2_PER_1000_SQFT;

const need: NutrientNeed = {
  id: 'need-lawns',
  name: 'Every mown lawn',
  zones: LAWNS,
  speciesId: 'tall-fescue',
  season: 'cool-season',
  guideId: '',
  nKgPerM2: 2 * LB_PER_1000,
  split: { kind: 'even', fromMonth: 5, toMonth: 10 },
  hold: null,
};

const program: Program = {
  id: PROGRAM,
  name: 'Light granules',
  from: '2027-07-31',
  to: '2027-09-30',
  pace: { kind: 'every', days: 49 },
  zones: LAWNS,
  doses: [
    {
      id: 'granules',
      productId: 'p-granules',
      useId: 'light',
      amount: { kind: 'label', rateFactor: 1 },
      zones: null,
    },
  ],
  tankL: null,
};

const nearWater: LocalRule = {
  id: 'rule-water',
  name: 'Example, not law: 15 ft from open water',
  isOn: true,
  terms: { kind: 'buffer', round: 'water', widthM: 15 * M_PER_FT },
  source: 'Made up for this sample. Read the code of your own place.',
  readOn: null,
};

/** An acre and a fifth with holes and zones of several parts. */
export function longAcreYard(): Yard {
  return withProgramVisits({
    ...emptyYard('sample-long-acre', 'The long acre'),
    zones: longAcreZones.map((zone) => placeZone(longAcreFrame, zone)),
    parcel: null,
    marks: longAcreMarks.map((mark) => placeMark(longAcreFrame, mark)),
    products: longAcreProducts,
    equipment: longAcreEquipment,
    visits: [
      newVisit('visit-may', {
        name: 'Granules on every lawn',
        date: '2027-05-22',
        zones: LAWNS,
        doses: [newDose('dose-granules', 'p-granules', { passes: { ...DEFAULT_PASSES, headerLaps: 1 } })],
        startMarkId: 'gate',
        endMarkId: 'gate',
      }),
    ],
    needs: [need],
    programs: [program],
    rules: [nearWater],
    settings: {
      ...DEFAULT_SETTINGS,
      elevationM: null,
      // 150 ft; 5 gal in 42 s
      hose: { lengthM: 150 * M_PER_FT, flowLPerS: (5 * L_PER_GAL) / 42 },
      stepM: 2.5 * M_PER_FT,
    },
  });
}
