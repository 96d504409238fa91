import { describe, expect, it } from 'vitest';
import { applyAffine } from '../survey/picture/affine';
import { crsOfKeys, positionOfTags } from './geoKeys';

const keys = { GTModelTypeGeoKey: 1, GTRasterTypeGeoKey: 1, ProjectedCSTypeGeoKey: 26914 };
const tie = (i: number, j: number, x: number, y: number) => [i, j, 0, x, y, 0];

describe('position of a GeoTIFF', () => {
  it('scale and tie point: the tie may lie anywhere in the picture', () => {
    const position = positionOfTags({
      ModelPixelScale: [0.5, 0.25, 0],
      ModelTiepoint: tie(100, 200, 6000, 3000),
      keys,
    });
    expect(position?.crs).toBe('EPSG:26914');
    expect(position && applyAffine(position.toProjected, [100, 200])).toEqual([6000, 3000]);
    expect(position && applyAffine(position.toProjected, [0, 0])).toEqual([5950, 3050]);
  });

  it('a transformation of sixteen numbers turns', () => {
    const m = [0.4, 0.3, 0, 686000, 0.3, -0.4, 0, 3653000, 0, 0, 0, 0, 0, 0, 0, 1];
    expect(positionOfTags({ ModelTransformation: m, keys })?.toProjected).toEqual([
      0.4, 0.3, 686000, 0.3, -0.4, 3653000,
    ]);
  });

  it('tie points alone: three and more make an affine, fewer nothing', () => {
    const ties = [tie(0, 0, 10, 90), tie(100, 0, 60, 91), tie(0, 100, 9, 40)];
    const position = positionOfTags({ ModelTiepoint: ties.flat(), keys });
    expect(position && applyAffine(position.toProjected, [100, 100])).toEqual([
      expect.closeTo(59, 9),
      expect.closeTo(41, 9),
    ]);
    expect(positionOfTags({ ModelTiepoint: ties.slice(0, 2).flat(), keys })).toBeNull();
  });

  it.each([
    ['nothing', {}],
    ['a scale of 0', { ModelPixelScale: [0, 1, 0], ModelTiepoint: tie(0, 0, 1, 1) }],
    ['a number that is none', { ModelPixelScale: [1, 1, 0], ModelTiepoint: tie(0, 0, Number.NaN, 1) }],
  ])('%s gives no position', (_, tags) => {
    expect(positionOfTags({ ...tags, keys })).toBeNull();
  });
});

describe('the coordinate system by the keys', () => {
  it.each([
    ['a plane one by its code', keys, 'EPSG:26914'],
    ['degrees by their code', { GTModelTypeGeoKey: 2, GeographicTypeGeoKey: 4269 }, 'EPSG:4269'],
    ['a UTM zone by its projection', { ProjectedCSTypeGeoKey: 32767, ProjectionGeoKey: 16114 }, 'EPSG:32714'],
    // EPSG dataset: 26914 NAD83 / UTM zone 14N, 26714 NAD27 / UTM zone 14N
    ['a UTM zone of NAD83', { ProjectionGeoKey: 16014, GeographicTypeGeoKey: 4269 }, 'EPSG:26914'],
    [
      'a UTM zone of NAD27 by its datum',
      { ProjectionGeoKey: 16014, GeographicTypeGeoKey: 32767, GeogGeodeticDatumGeoKey: 6267 },
      'EPSG:26714',
    ],
    [
      'a UTM zone of a datum that is not known',
      { ProjectionGeoKey: 16014, GeographicTypeGeoKey: 4322 },
      null,
    ],
    ['nothing', {}, null],
    ['a projection that is not known', { ProjectedCSTypeGeoKey: 32767, ProjCoordTransGeoKey: 26 }, null],
  ])('%s', (_, given, wanted) => {
    expect(crsOfKeys(given)).toBe(wanted);
  });

  it('text of the projection in the citation', () => {
    const text = 'ESRI PE String = PROJCS["Yard",GEOGCS["x"]]|';
    expect(crsOfKeys({ ProjectedCSTypeGeoKey: 32767, PCSCitationGeoKey: text })).toBe(
      'PROJCS["Yard",GEOGCS["x"]]',
    );
  });

  it('parameters of Lambert’s projection in US survey feet', () => {
    const lambert = {
      ProjectedCSTypeGeoKey: 32767,
      GeographicTypeGeoKey: 4269,
      ProjLinearUnitsGeoKey: 9003,
      ProjCoordTransGeoKey: 8,
      ProjStdParallel1GeoKey: 33.9,
      ProjStdParallel2GeoKey: 32.1,
      ProjFalseOriginLatGeoKey: 31.5,
      ProjFalseOriginLongGeoKey: -98.5,
      ProjFalseOriginEastingGeoKey: 1968500,
      ProjFalseOriginNorthingGeoKey: 0,
    };
    expect(crsOfKeys(lambert)).toBe(
      '+proj=lcc +lat_1=33.9 +lat_2=32.1 +lat_0=31.5 +lon_0=-98.5 +x_0=600000 +y_0=0 +ellps=GRS80 +units=us-ft',
    );
  });
});
