import { expect, it } from 'vitest';
import { testWalk } from '../cover/testWalk';
import { measureYard } from '../measure/measureYard';
import { emptyYard } from '../yard/defaults';
import type { MapPicture } from './types';
import { differsByWalkAlone } from './walkOnMap';

it('knows a step of the walker from every other change of the picture', () => {
  const yard = emptyYard('y', 'Yard');
  const picture: MapPicture = {
    yard,
    measured: measureYard(yard),
    selectedZoneIds: [],
    slips: [],
    visit: null,
    coverage: { dose: testWalk([], 1, 1), swathM: 1, walkedM: 3, hose: [] },
    units: 'us',
    baseLayer: { kind: 'grid' },
    trial: null,
    dark: false,
  };
  const step = (change: Partial<MapPicture>) => differsByWalkAlone(picture, { ...picture, ...change });
  expect(step({ coverage: null, slips: [] })).toBe(true);
  expect(step({ dark: true })).toBe(false);
  expect(step({ yard: { ...yard } })).toBe(false);
  expect(step({ visit: { zoneIds: [], strips: [], rinseEdges: [] } })).toBe(false);
  expect(step({ baseLayer: { kind: 'grid' } })).toBe(false);
});
