import { DEFAULT_SETTINGS, emptyYard, newDose, newVisit } from '../../src/yard/defaults';
import type { Position, Yard } from '../../src/yard/types';
import { box, createFrame, type DrawnMark, type DrawnZone, placeMark, placeZone, TAPE } from './frame';
import { townhouseProducts } from './products';

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
    fields: { mowing: 'regular' },
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

/** A small yard kept in metric units. */
export function townhouseYard(): Yard {
  return {
    ...emptyYard('sample-townhouse', 'Number nine, townhouse row'),
    zones: townhouseZones.map((zone) => placeZone(townhouseFrame, zone)),
    parcel: null,
    marks: townhouseMarks.map((mark) => placeMark(townhouseFrame, mark)),
    products: townhouseProducts,
    visits: [
      newVisit('visit-september', {
        name: 'Spring start',
        date: '2027-09-12',
        zones: { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: [] },
        doses: [newDose('dose-liquid', 'p-lawn-liquid')],
        tankL: 5,
        note: '',
      }),
    ],
    settings: { ...DEFAULT_SETTINGS, units: 'metric', strips: { stormDrainM: 3, wellM: 15, waterM: 5 } },
  };
}
