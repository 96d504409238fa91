import { describe, expect, it } from 'vitest';
import { createPlane } from '../../src/measure/plane';
import { type Crs, loadCrs, suggestUtmZone } from '../../src/picture/crs';
import table from '../../src/picture/crsTable.json';
import { placeInCrs } from '../../src/picture/placeInCrs';
import { utmCodes } from '../../src/picture/utmZones';
import { applyAffine } from '../../src/survey/picture/affine';
import type { Affine } from '../../src/survey/picture/types';

/*
 * Coordinate systems against published test points. The projections are checked on the datum of the
 * example itself: the definitions of the table with their shift to WGS 84 taken off.
 */
const dms = (d: number, m = 0, s = 0) => Math.sign(d || 1) * (Math.abs(d) + m / 60 + s / 3600);

async function crsOf(spec: string): Promise<Crs> {
  const result = await loadCrs(spec);
  if (!result.ok) throw new Error(result.issue.message);
  return result.crs;
}
/** The table's definition on its own datum. */
async function unshifted(code: keyof typeof table): Promise<Crs> {
  const definition = String(table[code][1]).replace(/ \+(towgs84|datum)=\S+/, '');
  return crsOf(/\+(ellps|a)=/.test(definition) ? definition : `${definition} +ellps=WGS84`);
}

/** IOGP Publication 373-7-2, Guidance Note 7 part 2, worked examples; read as quoted in the EPSG registry (epsg.io) and in public test suites. */
const GN72 = 'IOGP 373-7-2 (EPSG Guidance Note 7-2)';

interface Example {
  readonly what: string;
  readonly crs: () => Promise<Crs>;
  readonly lonLat: readonly [number, number];
  readonly xy: readonly [number, number];
  /** in the unit of the system. */
  readonly within: number;
  readonly source: string;
}
const EXAMPLES: readonly Example[] = [
  {
    what: 'Lambert conic conformal (2SP): NAD27 / Texas South Central, US survey feet',
    crs: () => unshifted('32040'),
    lonLat: [-96, 28.5],
    xy: [2963503.91, 254759.8],
    within: 0.01,
    source: `${GN72}, method 9802`,
  },
  {
    what: 'Lambert conic conformal (1SP): JAD69 / Jamaica National Grid',
    crs: () => crsOf('+proj=lcc +lat_1=18 +lat_0=18 +lon_0=-77 +k_0=1 +x_0=250000 +y_0=150000 +ellps=clrk66'),
    lonLat: [dms(-76, 56, 37.26), dms(17, 55, 55.8)],
    xy: [255966.58, 142493.51],
    within: 0.01,
    source: `${GN72}, method 9801`,
  },
  {
    what: 'Transverse Mercator: OSGB36 / British National Grid',
    crs: () => unshifted('27700'),
    lonLat: [0.5, 50.5],
    xy: [577274.99, 69740.5],
    within: 0.01,
    source: `${GN72}, method 9807`,
  },
  {
    what: 'Oblique stereographic: Amersfoort / RD New',
    crs: () => unshifted('28992'),
    lonLat: [6, 53],
    xy: [196105.283, 557057.739],
    within: 0.002,
    source: `${GN72}, method 9809`,
  },
  {
    what: 'Albers equal area: NAD83 / Great Lakes Albers',
    crs: () => crsOf('EPSG:3174'),
    lonLat: [-78.75, 42.75],
    xy: [1466493.492, 702903.006],
    within: 0.002,
    source: `${GN72}, method 9822`,
  },
  {
    what: 'Lambert azimuthal equal area: ETRS89-extended / LAEA Europe',
    crs: () => crsOf('EPSG:3035'),
    lonLat: [5, 50],
    xy: [3962799.45, 2999718.85],
    within: 0.01,
    source: `${GN72}, method 9820`,
  },
  {
    what: 'Mercator (variant A): Makassar / NEIEZ',
    crs: () => crsOf('+proj=merc +lon_0=110 +k=0.997 +x_0=3900000 +y_0=900000 +ellps=bessel'),
    lonLat: [120, -3],
    xy: [5009726.58, 569150.82],
    within: 0.01,
    source: `${GN72}, method 9804`,
  },
  {
    what: 'Popular visualisation pseudo Mercator: EPSG:3857',
    crs: () => crsOf('EPSG:3857'),
    lonLat: [dms(-100, 20), dms(24, 22, 54.433)],
    xy: [-11169055.58, 2800000],
    within: 0.01,
    source: `${GN72}, method 1024`,
  },
];

/*
 * Points of UTM, state plane and national systems by PROJ 9.1.1 (cs2cs; from NAD83, NAD83(2011), NAD83(HARN) or
 * WGS 84, without grid files), a library of its own; x and y in the unit of the system.
 */
const PROJ_POINTS: readonly (readonly [string, readonly [number, number], readonly [number, number]])[] = [
  ['EPSG:26914', [-97, 33], [686847.22279, 3653063.50419]],
  ['EPSG:32614', [-97, 33], [686847.22279, 3653063.50429]],
  ['EPSG:6339', [-122.5, 45.5], [539063.39239, 5038618.07668]],
  ['EPSG:32756', [151.2, -33.9], [333568.94101, 6247473.33684]],
  ['EPSG:25832', [11.5, 48.1], [686121.7558, 5330438.13005]],
  ['EPSG:2276', [-97, 33], [2428332.61218, 7050030.28018]],
  ['EPSG:32138', [-97, 33], [740157.26051, 2148853.52701]],
  ['EPSG:6584', [-97, 33], [2428332.61218, 7050030.28018]],
  ['EPSG:2226', [-121.5, 38.5], [6704759.21809, 1944304.75737]],
  ['EPSG:2263', [-73.9, 40.75], [1011957.28097, 212537.70179]],
  ['EPSG:2248', [-76.6, 39.3], [1425531.48203, 595097.40133]],
  ['EPSG:26931', [-134, 58], [798964.27436, 686504.3757]],
  ['EPSG:2913', [-122.6, 45.5], [7663717.55031, 675384.38514]],
  ['EPSG:3435', [-87.7, 41.9], [1156667.72219, 1906786.32572]],
  ['EPSG:2236', [-80.3, 26.1], [885890.33863, 642653.73899]],
  ['EPSG:6879', [-90.2, 44.5], [584094.706, 74098.24051]],
  ['EPSG:2154', [2.35, 48.85], [652301.56483, 6861302.7259]],
  ['EPSG:2193', [174.8, -36.9], [1760373.8424, 5914708.02869]],
  ['EPSG:2056', [8.55, 47.37], [2683941.53035, 1247167.39304]],
  ['EPSG:27700', [-1.5, 52.4], [434116.37703, 278115.92351]],
  ['EPSG:28992', [4.9, 52.37], [121819.36516, 487013.76152]],
  ['EPSG:31287', [14.3, 48.3], [471758.43374, 489424.49626]],
];

describe('projections', () => {
  it.each(EXAMPLES)('$what ($source)', async ({ crs, lonLat, xy, within }) => {
    const system = await crs();
    const found = system.fromLonLat(lonLat);
    expect(Math.abs((found?.[0] ?? Number.NaN) - xy[0])).toBeLessThan(within);
    expect(Math.abs((found?.[1] ?? Number.NaN) - xy[1])).toBeLessThan(within);
    const back = system.toLonLat(xy);
    // the published point is rounded: half its last digit, in degrees
    expect(back?.[0]).toBeCloseTo(lonLat[0], 6);
    expect(back?.[1]).toBeCloseTo(lonLat[1], 6);
  });

  it.each(PROJ_POINTS)('%s at %j: as PROJ 9.1.1', async (code, lonLat, xy) => {
    const found = (await crsOf(code)).fromLonLat(lonLat);
    expect(found?.[0]).toBeCloseTo(xy[0], 2);
    expect(found?.[1]).toBeCloseTo(xy[1], 2);
  });
});

describe('what is named otherwise', () => {
  const prj =
    'PROJCS["NAD_1983_StatePlane_Texas_North_Central_FIPS_4202_Feet",GEOGCS["GCS_North_American_1983",DATUM["D_North_American_1983",SPHEROID["GRS_1980",6378137.0,298.257222101]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Lambert_Conformal_Conic"],PARAMETER["False_Easting",1968500.0],PARAMETER["False_Northing",6561666.666666666],PARAMETER["Central_Meridian",-98.5],PARAMETER["Standard_Parallel_1",32.13333333333333],PARAMETER["Standard_Parallel_2",33.96666666666667],PARAMETER["Latitude_Of_Origin",31.66666666666667],UNIT["Foot_US",0.3048006096012192]]';
  const wkt2 =
    'PROJCRS["NAD83 / Texas North Central (ftUS)",BASEGEOGCRS["NAD83",DATUM["North American Datum 1983",ELLIPSOID["GRS 1980",6378137,298.257222101,LENGTHUNIT["metre",1]]],PRIMEM["Greenwich",0,ANGLEUNIT["degree",0.0174532925199433]],ID["EPSG",4269]],CONVERSION["SPCS83 Texas North Central zone (US survey foot)",METHOD["Lambert Conic Conformal (2SP)",ID["EPSG",9802]],PARAMETER["Latitude of false origin",31.6666666666667,ANGLEUNIT["degree",0.0174532925199433],ID["EPSG",8821]],PARAMETER["Longitude of false origin",-98.5,ANGLEUNIT["degree",0.0174532925199433],ID["EPSG",8822]],PARAMETER["Latitude of 1st standard parallel",33.9666666666667,ANGLEUNIT["degree",0.0174532925199433],ID["EPSG",8823]],PARAMETER["Latitude of 2nd standard parallel",32.1333333333333,ANGLEUNIT["degree",0.0174532925199433],ID["EPSG",8824]],PARAMETER["Easting at false origin",1968500,LENGTHUNIT["US survey foot",0.304800609601219],ID["EPSG",8826]],PARAMETER["Northing at false origin",6561666.667,LENGTHUNIT["US survey foot",0.304800609601219],ID["EPSG",8827]]],CS[Cartesian,2],AXIS["easting (X)",east,ORDER[1],LENGTHUNIT["US survey foot",0.304800609601219]],AXIS["northing (Y)",north,ORDER[2],LENGTHUNIT["US survey foot",0.304800609601219]]]';

  it.each([
    ['Esri’s text of a .prj file', prj],
    ['WKT 2', wkt2],
    ['WKT with heights', `COMPD_CS["both",${prj},VERT_CS["NAVD88",VERT_DATUM["x",2005]]]`],
    ['a bare number', '2276'],
    ['a URN', 'urn:ogc:def:crs:EPSG::2276'],
  ])('%s is EPSG:2276', async (_, text) => {
    const crs = await crsOf(text);
    const xy = crs.fromLonLat([-97, 33]);
    expect(xy?.[0]).toBeCloseTo(2428332.612, 2);
    expect(xy?.[1]).toBeCloseTo(7050030.28, 2);
    expect(crs.unit.name).toBe('US survey foot');
    expect(crs.accuracyM).toBe(4);
  });

  it('NAD27 by its text has the mean shift of EPSG:1173, and its 10 m are told', async () => {
    const text = prj
      .replaceAll('1983', '1927')
      .replace('"GRS_1980",6378137.0,298.257222101', '"Clarke_1866",6378206.4,294.9786982');
    const crs = await crsOf(text);
    const [before, after] = [await unshiftedNad27(), crs].map((one) => one.toLonLat([2000000, 400000]));
    // by hand: Δλ = −(−8·sin λ − 160·cos λ) / (ν·cos φ) and the like: tens of metres, not nothing and not hundreds
    const eastM = ((after?.[0] ?? 0) - (before?.[0] ?? 0)) * 111320 * Math.cos((32.7 * Math.PI) / 180);
    expect(eastM).toBeLessThan(-20);
    expect(eastM).toBeGreaterThan(-45);
    expect(crs.note).toContain('10 m');
    async function unshiftedNad27() {
      return crsOf(
        '+proj=lcc +lat_0=31.66666666666667 +lon_0=-98.5 +lat_1=32.13333333333333 +lat_2=33.96666666666667 +x_0=600000 +y_0=2000000 +ellps=clrk66 +units=us-ft',
      );
    }
  });

  it.each([
    ['99999', 'crs-unknown'],
    ['somewhere', 'crs-unreadable'],
    ['PROJCS["x",broken', 'crs-unreadable'],
    ['+proj=nothing', 'crs-unreadable'],
    ['+proj=longlat +nadgrids=some.gsb', 'crs-needs-grid'],
    ['VERT_CS["NAVD88",VERT_DATUM["x",2005]]', 'crs-no-plane'],
    ['LOCAL_CS["site grid",LOCAL_DATUM["site",0],UNIT["metre",1]]', 'crs-no-plane'],
  ])('%s: %s', async (text, code) => {
    expect(await loadCrs(text)).toMatchObject({ ok: false, issue: { code } });
  });

  it('every system of the table opens and comes back to where it went', async () => {
    for (const code of [...Object.keys(table), ...utmCodes()].filter((_, i) => i % 13 === 0)) {
      const crs = await crsOf(String(code));
      const definition = String(table[String(code) as keyof typeof table]?.[1] ?? '');
      const origin = [/\+lon_0=(\S+)/, /\+lat_0=(\S+)/].map((pattern) =>
        Number(pattern.exec(definition)?.[1] ?? 20),
      );
      const [lon = 0, lat = 0] = origin;
      const place = [lon + 0.3, Math.min(70, lat + 0.4)] as const;
      const back = crs.toLonLat(crs.fromLonLat(place) ?? [Number.NaN, 0]);
      // 1e-6 degree is 0.1 m: shifts between datums are undone to that by the library
      expect(back?.[1], `${code} ${crs.name}`).toBeCloseTo(place[1], 6);
    }
  });
});

describe('UTM zones', () => {
  // NGA.SIG.0012 (2014), The Universal Grids: zones of 6° from 180° W, 32V widened over Norway, Svalbard in four
  it.each([
    [[-180, 10], 'EPSG:32601'],
    [[-97, 33], 'EPSG:32614'],
    [[179.9, -40], 'EPSG:32760'],
    [[0, 0], 'EPSG:32631'],
    [[4, 60.4], 'EPSG:32632'],
    [[2.9, 60.4], 'EPSG:32631'],
    [[4, 55.9], 'EPSG:32631'],
    [[10, 78], 'EPSG:32633'],
    [[8.9, 78], 'EPSG:32631'],
    [[33, 78], 'EPSG:32637'],
    [[181, 10], 'EPSG:32601'],
  ] as const)('%j: %s', (position, code) => {
    expect(suggestUtmZone(position).code).toBe(code);
  });
});

describe('a picture placed by its coordinates', () => {
  // corners of the picture in degrees by PROJ 9.1.1 (cs2cs EPSG:26914 and EPSG:2276 to EPSG:4269)
  const PLACED = [
    {
      code: 'EPSG:26914',
      toProjected: [0.02, 0, 686000, 0, -0.02, 3653000] as Affine,
      corners: [
        [
          [0, 0],
          [-97.00907672236, 32.9995724481],
        ],
        [
          [8000, 0],
          [-97.0073649974, 32.99954512812],
        ],
        [
          [8000, 8000],
          [-97.00739743163, 32.99810274294],
        ],
        [
          [0, 8000],
          [-97.00910912878, 32.99813006142],
        ],
      ] as const,
    },
    {
      code: 'EPSG:2276',
      toProjected: [0.125, 0, 2428000, 0, -0.125, 7050000] as Affine,
      corners: [
        [
          [0, 0],
          [-97.00108626169, 32.99992982707],
        ],
        [
          [8000, 0],
          [-96.997824652, 32.99989056763],
        ],
        [
          [8000, 8000],
          [-96.99787129179, 32.99714218197],
        ],
      ] as const,
    },
  ];
  it.each(PLACED)(
    '$code: 8,000 × 8,000 pixels, each corner within 2 mm',
    async ({ code, toProjected, corners }) => {
      const placed = placeInCrs(toProjected, 8000, 8000, await crsOf(code));
      if (!placed.ok) throw new Error(placed.issue.message);
      const { origin, toGround, residualM } = placed.position;
      const plane = createPlane(origin);
      for (const [pixel, lonLat] of corners) {
        const [x, y] = applyAffine(toGround, pixel);
        const [wantedX, wantedY] = plane.toPlane(lonLat);
        expect(Math.hypot(x - wantedX, y - wantedY), `${pixel}`).toBeLessThan(
          Math.max(0.002, 1.1 * residualM),
        );
      }
      // the plane of the yard itself errs by r·tan|lat|/R: 230 m · 0.65 / 6.4e6 of 230 m
      expect(residualM).toBeLessThan(0.006);
    },
  );

  it('refuses a mirrored picture, one far too wide, and coordinates of another system', async () => {
    const crs = await crsOf('EPSG:26914');
    const code = (toProjected: Affine) => {
      const placed = placeInCrs(toProjected, 1000, 1000, crs);
      return placed.ok ? 'placed' : placed.issue.code;
    };
    expect(code([0.5, 0, 686000, 0, 0.5, 3653000])).toBe('picture-mirrored');
    expect(code([500, 0, 686000, 0, -500, 3653000])).toBe('picture-too-wide');
    expect(code([0.5, 0, 1e9, 0, -0.5, 3e9])).toBe('picture-outside-crs');
    expect(code([0.5, 0, 686000, 0, -0.5, 3653000])).toBe('placed');
  });
});
