import { L_PER_GAL, M_PER_FT } from '../../src/units/factors';
import { DEFAULT_SETTINGS, emptyYard } from '../../src/yard/defaults';
import type { BaseLayer, Position, Yard } from '../../src/yard/types';
import {
  cornerLotCaps,
  cornerLotClimate,
  cornerLotNeeds,
  cornerLotPrograms,
  cornerLotRules,
  cornerLotSoilTests,
  cornerLotVisits,
} from './cornerLotSeason';
import { cornerLotEquipment } from './equipment';
import {
  box,
  createFrame,
  type DrawnMark,
  type DrawnZone,
  type Metres,
  oval,
  PLAT,
  placeMark,
  placeZone,
  TAPE,
  TRACED,
} from './frame';
import { cornerLotProducts } from './products';
import { withProgramVisits } from './withProgramVisits';
import { withRecords } from './withRecords';

/** Middle of the lot, in open country; the lot itself is invented. */
export const CORNER_LOT_MIDDLE: Position = [-97.4312, 39.8214];
/** Width and depth of the lot, m. Streets lie south and east of it. */
export const CORNER_LOT_SIZE: Metres = [36, 42];

export const cornerLotFrame = createFrame(CORNER_LOT_MIDDLE, CORNER_LOT_SIZE);

/** Drawn as people do: a lawn across the whole of its side, then walk, bed and patio on top of it. */
export const cornerLotZones: readonly DrawnZone[] = [
  {
    id: 'front-lawn',
    name: 'Front lawn',
    kind: 'turf',
    parts: [
      [
        [
          [0, 1],
          [35, 1],
          [35, 21],
          [6, 21],
          [6, 19],
          [0, 19],
        ],
      ],
    ],
    fields: {
      mowing: 'regular',
      slope: 0.03,
      downhillDeg: 180,
      note: 'Full sun; slopes a little to the south walk.',
    },
    survey: TRACED,
  },
  {
    id: 'green-square',
    name: 'Low-cut square',
    kind: 'turf',
    parts: [[box(12.4, 5, 19.4, 12)]],
    fields: { mowing: 'low-cut', cutsSameKind: true, note: 'Reel mown.' },
    survey: TAPE,
  },
  {
    id: 'side-strip',
    name: 'West side strip',
    kind: 'turf',
    parts: [[box(0, 19, 6, 28)]],
    fields: { mowing: 'regular' },
    survey: TRACED,
  },
  {
    id: 'back-lawn',
    name: 'Back lawn',
    kind: 'turf',
    parts: [
      [
        [
          [0, 28],
          [6, 28],
          [6, 27],
          [18, 27],
          [18, 25],
          [35, 25],
          [35, 42],
          [0, 42],
        ],
      ],
    ],
    fields: {
      mowing: 'regular',
      slope: 0.02,
      downhillDeg: 60,
      note: 'Shade of the maple after 3 pm; falls to the pond.',
    },
    survey: TRACED,
  },
  { id: 'front-bed', name: 'Front bed', kind: 'bed', parts: [[box(6, 17.2, 18, 19.2)]], survey: TRACED },
  {
    id: 'corner-bed',
    name: 'Corner bed',
    kind: 'bed',
    parts: [
      [
        [
          [29.5, 1.5],
          [34.5, 1.5],
          [34.5, 6.5],
        ],
      ],
    ],
    survey: TRACED,
  },
  {
    id: 'island-bed',
    name: 'Island bed',
    kind: 'bed',
    parts: [[oval([8, 37.4], 3.2, 2.1, 64)]],
    survey: TRACED,
  },
  { id: 'house', name: 'House', kind: 'structure', parts: [[box(6, 19, 18, 28)]], survey: TAPE },
  {
    id: 'driveway',
    name: 'Driveway',
    kind: 'hardscape',
    parts: [[box(17.8, 20, 34.5, 25.5)]],
    fields: { material: 'concrete' },
    survey: TAPE,
  },
  {
    id: 'front-walk',
    name: 'Front walk',
    kind: 'hardscape',
    parts: [[box(11, 1.5, 12.4, 19)]],
    fields: { material: 'pavers' },
    survey: TAPE,
  },
  {
    id: 'patio',
    name: 'Patio',
    kind: 'hardscape',
    parts: [[box(8, 27.6, 16, 33)]],
    fields: { material: 'stone' },
    survey: TAPE,
  },
  {
    id: 'sidewalk',
    name: 'Street sidewalks',
    kind: 'hardscape',
    parts: [
      [
        [
          [0, 0],
          [36, 0],
          [36, 42],
          [34.5, 42],
          [34.5, 1.5],
          [0, 1.5],
        ],
      ],
    ],
    fields: { material: 'concrete' },
    survey: TAPE,
  },
  { id: 'pond', name: 'Pond', kind: 'water', parts: [[oval([28.5, 36.5], 2.6, 1.8, 48)]], survey: TRACED },
];

export const cornerLotMarks: readonly DrawnMark[] = [
  { id: 'drain', name: 'Storm drain, south street', kind: 'storm-drain', at: [26, -0.5] },
  { id: 'bib', name: 'Hose bib', kind: 'hose-bib', at: [18, 27] },
  { id: 'bib-front', name: 'Front hose bib', kind: 'hose-bib', at: [16.5, 19] },
  { id: 'gate', name: 'Side gate', kind: 'gate', at: [3, 28] },
];

/** @param picture the aerial-like picture of the lot, offered as one of the user's own base layers */
export function cornerLotYard(picture: BaseLayer): Yard {
  const yard = withProgramVisits({
    ...emptyYard('sample-corner-lot', 'Quarry Bend corner lot'),
    zones: cornerLotZones.map((zone) => placeZone(cornerLotFrame, zone)),
    parcel: {
      name: 'Quarry Bend corner lot',
      parts: [[cornerLotFrame.ring(box(0, 0, ...CORNER_LOT_SIZE))]],
      curves: [],
      survey: PLAT,
      extra: {},
    },
    marks: cornerLotMarks.map((mark) => placeMark(cornerLotFrame, mark)),
    products: cornerLotProducts,
    equipment: cornerLotEquipment,
    visits: cornerLotVisits,
    soilTests: cornerLotSoilTests,
    needs: cornerLotNeeds,
    climate: cornerLotClimate,
    programs: cornerLotPrograms,
    caps: cornerLotCaps,
    rules: cornerLotRules,
    settings: {
      ...DEFAULT_SETTINGS,
      baseLayer: { kind: 'grid' },
      ownLayers: [picture],
      // 100 ft; 5 gal in 55 s; 10 steps on 26 ft
      hose: { lengthM: 100 * M_PER_FT, flowLPerS: (5 * L_PER_GAL) / 55 },
      stepM: 2.6 * M_PER_FT,
    },
  });
  return withRecords(yard);
}
