import { planeAreaOf } from '../../measure/clip';
import type { CoverDose, CoverZone } from '../passTypes';
import type { CoverSite } from './coverDose';
import { partOf, type TestBox } from './fakePasses';

/** For tests: a zone of boxes, named by its id. */
export function testZone(
  zoneId: string,
  boxes: readonly TestBox[],
  keepOff: readonly TestBox[] = [],
): CoverZone {
  const parts = boxes.map(partOf);
  const areaM2 = planeAreaOf(parts);
  return { zoneId, name: zoneId, areaM2, parts, keepOff: keepOff.map(partOf), headingDeg: null };
}

/** For tests: a dry dose of one coat, 1 m between passes. */
export function testDose(zones: readonly CoverZone[], fields: Partial<CoverDose> = {}): CoverDose {
  return {
    doseId: 'dose',
    spacingM: 1,
    swathM: 1,
    headerLaps: null,
    lapsFirst: true,
    coats: 1,
    zones,
    vessels: [],
    staysWet: false,
    ...fields,
  };
}

/** For tests: open ground without start, end or hose. */
export function testSite(fields: Partial<CoverSite> = {}): CoverSite {
  return { obstacles: [], start: null, end: null, hose: null, ...fields };
}
