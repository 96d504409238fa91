import { describe, expect, it } from 'vitest';
import { setParcel } from '../yard/edits';
import type { Position } from '../yard/types';
import { bringYard, findFarPlace } from './farPlace';
import { measureYard } from './measureYard';
import { boxAt, yardOf, zoneAt } from './testYards';

const yard = yardOf(zoneAt('a', 'turf', [[boxAt(0, 0, 30, 20)]]));
const corner = yard.zones[0]?.parts[0]?.[0]?.[0] ?? [0, 0];
const north = (metres: number): Position => [corner[0], corner[1] + metres / 111_000];

describe('findFarPlace', () => {
  it('takes ground within 2 km of a zone as near', () => {
    expect(findFarPlace(yard, [north(1900)])).toBeNull();
    expect(findFarPlace(yardOf(), [north(1e6)])).toBeNull();
  });

  it('tells how far ground lies from the nearest corner', () => {
    // one degree of a meridian from the equator is 110,574 m (WGS 84, from memory)
    const atEquator = yardOf(
      zoneAt('a', 'turf', [
        [
          [
            [0, 0],
            [0, -0.0002],
            [0.0002, -0.0002],
            [0, 0],
          ],
        ],
      ]),
    );
    expect(findFarPlace(atEquator, [[0, 1]])?.distanceM).toBeCloseTo(110_574, -1);
  });

  it('holds ground against the outline of the property while there are no zones', () => {
    const { parts = [], survey } = yard.zones[0] ?? {};
    if (!survey) throw new Error('the test yard has a zone');
    const bare = setParcel(yardOf(), { name: '', parts, curves: [], survey, extra: {} });
    expect(findFarPlace(bare, [north(100)])).toBeNull();
    expect(findFarPlace(bare, [north(5000)])?.has).toBe('parcel');
  });
});

describe('bringYard', () => {
  it('moves the zones to the new ground and keeps their areas', () => {
    const far = findFarPlace(yard, [[-83, 41]]);
    if (!far) throw new Error('that is far');
    const moved = bringYard({ ...yard, settings: { ...yard.settings, isLocal: true } }, far);
    expect(findFarPlace(moved, [[-83, 41]])).toBeNull();
    expect(moved.settings.isLocal).toBe(false);
    expect(measureYard(moved).zones.get('a')?.netM2).toBeCloseTo(600, 1);
  });
});
