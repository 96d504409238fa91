import { readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { createFrame } from '../sample-geojson/yards/frame';
import { LONG_ACRE_LOT } from '../sample-geojson/yards/longAcre';
import { areaOfPartsM2 } from '../src/measure/geodesic';
import { measureYard } from '../src/measure/measureYard';
import { deriveYard } from '../src/session/derive';
import '../src/session/deriveVisit';
import { KG_PER_LB, M2_PER_1000_SQFT, M2_PER_ACRE } from '../src/units/factors';
import { yardFromGeoJson } from '../src/yard/codec';
import type { Equipment, Yard } from '../src/yard/types';

/**
 * The truth here is plain geometry of written dimensions (a house of 12 m by 9 m is 108 m²); the files
 * hold degrees, so reading, net areas and the ellipsoid all stand between the two.
 */
const textOf = (file: string): string =>
  readFileSync(new URL(`../sample-geojson/${file}`, import.meta.url), 'utf8');

function read(file: string): Yard {
  const { yard, issues } = yardFromGeoJson(JSON.parse(textOf(file)));
  expect(issues).toEqual([]);
  if (!yard) throw new Error(`${file} was not read`);
  return yard;
}

/** A drawn oval is a polygon of n sides inscribed in the ellipse. */
const oval = (a: number, b: number, n: number): number => (n / 2) * a * b * Math.sin((2 * Math.PI) / n);

/** The parallels grow shorter over the yard: 4e-6 at 30 m; corners are rounded to 1e-11 degrees. */
function expectAreas(yard: Yard, truth: Record<string, number>): void {
  const measured = measureYard(yard);
  expect(measured.issues).toEqual([]);
  for (const [id, areaM2] of Object.entries(truth)) {
    const netM2 = measured.zones.get(id)?.netM2 ?? Number.NaN;
    expect(Math.abs(netM2 - areaM2), `${id}: ${netM2} against ${areaM2}`).toBeLessThan(1e-5 * areaM2 + 1e-3);
  }
}

describe('corner lot', () => {
  it('reads without issues and has the areas of its dimensions', () => {
    const yard = read('corner-lot.geojson');
    const island = oval(3.2, 2.1, 64);
    const pond = oval(2.6, 1.8, 48);
    const walk = 1.4 * 17.5;
    const frontBed = 12 * 1.8 - 1.4 * 1.8;
    const cornerBed = (5 * 5) / 2;
    expectAreas(yard, {
      house: 12 * 9,
      driveway: 16.5 * 5.5,
      'front-walk': walk,
      patio: 8 * 5,
      sidewalk: 36 * 1.5 + 1.5 * 40.5,
      pond,
      'island-bed': island,
      'front-bed': frontBed,
      'corner-bed': cornerBed,
      'green-square': 7 * 7,
      'side-strip': 6 * 9,
      'front-lawn': 34.5 * 17.5 + 16.5 * 1 - walk - frontBed - cornerBed - 7 * 7,
      'back-lawn': 34.5 * 14 + 16.5 * 2.5 - 8 * 5 - island - pond,
    });
    expect(Math.abs(island / (Math.PI * 3.2 * 2.1) - 1)).toBeLessThan(2e-3);
  });

  it('counts every square metre of the lot of 36 m by 42 m once', () => {
    const measured = measureYard(read('corner-lot.geojson'));
    const sum = [...measured.zones.values()].reduce((total, zone) => total + zone.netM2, 0);
    expect(Math.abs(sum - 36 * 42)).toBeLessThan(0.02);
  });

  it('has the lot of 36 m by 42 m as its outline of the property', () => {
    const { parcel } = read('corner-lot.geojson');
    expect(parcel?.survey.method).toBe('plat');
    expect(Math.abs((parcel ? areaOfPartsM2(parcel.parts) : 0) - 36 * 42)).toBeLessThan(0.02);
  });

  it('offers its picture as an own layer, at the edges and grain written beside it', () => {
    const { ownLayers, baseLayer } = read('corner-lot.geojson').settings;
    const beside = JSON.parse(textOf('corner-lot-picture.json'));
    const { west, south, east, north, mPerPx } = beside;
    expect(baseLayer).toEqual({ kind: 'grid' });
    expect(ownLayers[0]).toMatchObject({
      kind: 'picture',
      url: 'sample:corner-lot-picture',
      west,
      south,
      east,
      north,
    });
    const bytes = readFileSync(new URL('../sample-geojson/corner-lot-picture.png', import.meta.url));
    expect(bytes.length).toBeLessThan(600_000);
    const png = PNG.sync.read(bytes);
    // the frame's own degree lengths: 111.0 km a degree of latitude near 39.8 N by the WGS 84 radii
    const frame = createFrame([(west + east) / 2, (south + north) / 2], [0, 0]);
    const [lon, lat] = frame.place([(png.width * mPerPx) / 2, (png.height * mPerPx) / 2]);
    expect(Math.abs(lon - east) * 85_000).toBeLessThan(mPerPx / 10);
    expect(Math.abs(lat - north) * 111_000).toBeLessThan(mPerPx / 10);
  });

  it('shows the house, the pond and the drive where the file says they are', () => {
    const yard = read('corner-lot.geojson');
    const { west, south, east, north } = JSON.parse(textOf('corner-lot-picture.json'));
    const png = PNG.sync.read(
      readFileSync(new URL('../sample-geojson/corner-lot-picture.png', import.meta.url)),
    );
    const colourAtMiddleOf = (id: string): number[] => {
      const ring = yard.zones.find((zone) => zone.id === id)?.parts[0]?.[0] ?? [];
      const lons = ring.map((p) => p[0]);
      const lats = ring.map((p) => p[1]);
      const lon = (Math.min(...lons) + Math.max(...lons)) / 2;
      const lat = (Math.min(...lats) + Math.max(...lats)) / 2;
      const col = Math.floor(((lon - west) / (east - west)) * png.width);
      const row = Math.floor(((north - lat) / (north - south)) * png.height);
      return [...png.data.subarray((row * png.width + col) * 4, (row * png.width + col) * 4 + 3)];
    };
    const [pr = 0, , pb = 0] = colourAtMiddleOf('pond');
    expect(pb).toBeGreaterThan(pr + 15);
    const [gr = 0, gg = 0, gb = 0] = colourAtMiddleOf('green-square');
    expect(gg).toBeGreaterThan(Math.max(gr, gb) + 10);
    const [dr = 0, dg = 0, db = 0] = colourAtMiddleOf('driveway');
    expect(Math.min(dr, dg, db)).toBeGreaterThan(130);
    const [hr = 0, hg = 0] = colourAtMiddleOf('house');
    expect(hr).toBeGreaterThan(hg);
  });
});

describe('townhouse', () => {
  it('reads without issues, in metric units, with the areas of its dimensions', () => {
    const yard = read('townhouse.geojson');
    expect(yard.settings.units).toBe('metric');
    expectAreas(yard, {
      house: 8 * 10,
      shed: 2.5 * 2.5,
      path: 1.2 * 7,
      terrace: 8 * 3,
      lavender: 1.8 * 7,
      'fence-bed': 0.8 * 6,
      'front-patch': 5 * 7,
      'rear-lawn': 8 * 6 - 2.5 * 2.5 - 0.8 * 6,
    });
  });
});

describe('long acre', () => {
  const yard = read('long-acre.geojson');

  it('has about 25 zones on about 1.2 acres, holes and zones of several parts', () => {
    expect(yard.zones.length).toBeGreaterThanOrEqual(24);
    expect(
      yard.zones.filter((zone) => zone.parts.some((rings) => rings.length > 1)).length,
    ).toBeGreaterThanOrEqual(4);
    expect(yard.zones.filter((zone) => zone.parts.length > 1).length).toBeGreaterThanOrEqual(3);
    expect(lotM2() / M2_PER_ACRE).toBeCloseTo(1.2, 1);
  });

  it('has the areas of its dimensions', () => {
    expectAreas(yard, {
      house: 16 * 12,
      garage: 8 * 8,
      shed: 4 * 3,
      hens: 3 * 2,
      terrace: 12 * 6,
      'garden-path': 8 * 1.2,
      'front-path': 4 * 1.5,
      loop: oval(8, 8, 90) - oval(4, 4, 60),
      'loop-bed': oval(4, 4, 60),
      'tree-ring': oval(2.5, 2.5, 40),
      willow: oval(1.8, 1.2, 32),
      orchard: 6 * oval(0.9, 0.9, 32),
      pond: oval(7, 5, 72) - oval(1.8, 1.2, 32),
      green: oval(5, 4, 64),
      plot: 8 * 10,
      compost: 4 * 2,
      rough: 4 * 4 + 6 * 6 + 8 * 3,
    });
  });

  it('counts every square metre of the lot once, but for the rock that no zone claims', () => {
    const measured = measureYard(yard);
    const sum = [...measured.zones.values()].reduce((total, zone) => total + zone.netM2, 0);
    expect(Math.abs(sum - (lotM2() - oval(1.6, 1.1, 24)))).toBeLessThan(0.1);
  });
});

/** Plane area of the lot's written corners, by the shoelace formula. */
function lotM2(): number {
  return (
    LONG_ACRE_LOT.reduce((sum, a, i) => {
      const b = LONG_ACRE_LOT[(i + 1) % LONG_ACRE_LOT.length] ?? a;
      return sum + a[0] * b[1] - b[0] * a[1];
    }, 0) / 2
  );
}

describe('the seasons', () => {
  it.each(['corner-lot', 'townhouse', 'long-acre'])('%s: nothing planned is refused', (file) => {
    const yard = read(`${file}.geojson`);
    const derived = deriveYard(yard);
    const { issues, entries } = derived.season();
    const ofVisits = yard.visits.flatMap((visit) => derived.visit(visit.id)?.figures.issues ?? []);
    expect([...issues, ...ofVisits].filter((issue) => issue.severity === 'error')).toEqual([]);
    // every dose of every visit is on the ledger
    const doses = yard.visits.flatMap((visit) => visit.doses.map((dose) => dose.id));
    expect(new Set(entries.map((entry) => entry.doseId))).toEqual(new Set(doses));
    expect(yard.needs.length * yard.programs.length).toBeGreaterThan(0);
  });

  it('corner lot: what its labels and rates put down, by hand', () => {
    const yard = read('corner-lot.geojson');
    const lbOf = (zoneId: string, year: string) =>
      deriveYard(yard)
        .season()
        .entries.filter((entry) => entry.zoneId === zoneId && entry.date?.startsWith(year))
        .reduce((sum, entry) => sum + entry.nutrientKgPerM2.N, 0) *
      (M2_PER_1000_SQFT / KG_PER_LB);
    // iron 6 %: 4 fl oz of 1.24 kg/L; granules: 0.75 lb N three times, by their label
    const lbPerFlOz = (kgPerL: number) => 0.0295735 * kgPerL * 2.20462;
    const iron = 4 * lbPerFlOz(1.24) * 0.06;
    const perBottle = (32 / 3.2) * lbPerFlOz(1.12) * 0.08;
    expect(lbOf('back-lawn', '2027')).toBeCloseTo(iron + 3 * 0.75, 4);
    // light liquid 8 %: a bottle of 32 fl oz over 3,200 sq ft once, then ten times 24 fl oz on 1,000
    const fromTank = 24 * lbPerFlOz(1.12) * 0.08;
    expect(lbOf('green-square', '2027')).toBeCloseTo(iron + perBottle + 10 * fromTank, 4);
  });
});

describe('the equipment', () => {
  // each by hand from its readings, in the units they were read in
  const perMin = (each?: Equipment) => ((each?.flowLPerS ?? 0) * 60) / 0.0295735;
  const lbPer1000 = (kgPerM2 = 0) => (kgPerM2 / 0.45359237) * 92.90304;
  it.each([
    // 51 fl oz in 61, 59 and 60 s
    ['corner-lot', 'e-backpack', perMin, 51],
    ['long-acre', 'e-backpack', perMin, 51],
    // 12 in the middle pan, 6 in the third from either end of 15: ten feet between them
    ['corner-lot', 'e-broadcast', (each?: Equipment) => (each?.swathM ?? 0) / 0.3048, 10],
    // 100 ft in 25.27 s: 100 · 60 / (25.27 · 88)
    ['corner-lot', 'e-broadcast', (each?: Equipment) => ((each?.speedMPerS ?? 0) * 3600) / 1609.344, 2.7],
    // 2.84 and 2.85 lb on 27.3 ft by 44 in, 100.1 sq ft
    ['corner-lot', 'e-drop', (each?: Equipment) => lbPer1000(each?.settings[0]?.rateKgPerM2), 28.42],
    // 1 L in 50 s
    ['townhouse', 'e-sprayer', (each?: Equipment) => each?.flowLPerS ?? 0, 0.02],
    // 89 and 91 g on 4.5 m²
    ['townhouse', 'e-drop', (each?: Equipment) => (each?.settings[0]?.rateKgPerM2 ?? 0) * 1000, 20],
  ] as const)('%s, %s: is as its calibration found it', (file, id, of, byHand) => {
    const { equipment } = read(`${file}.geojson`);
    expect(of(equipment.find((each) => each.id === id)) / byHand).toBeCloseTo(1, 3);
  });

  it.each(['corner-lot', 'townhouse', 'long-acre'])('%s: has settings for products on the shelf', (file) => {
    const { equipment, products } = read(`${file}.geojson`);
    expect(equipment.length).toBeGreaterThanOrEqual(2);
    const shelf = new Set(products.map(({ id }) => id));
    expect(equipment.flatMap(({ settings }) => settings).every((one) => shelf.has(one.productId))).toBe(true);
  });

  it('corner lot: the bottle by hand: 5 gal in 130 s, 32 fl oz on 3,200 sq ft in passes 6 ft apart', () => {
    const { equipment } = read('corner-lot.geojson');
    const bottle = equipment.find(({ applicator }) => applicator === 'hose-end');
    // 3.785 L a gallon; 2.31 gal a minute, of it 15/640 product: 6.92 fl oz a minute
    expect(((bottle?.flowLPerS ?? 0) * 60) / 3.785411784).toBeCloseTo(2.308, 3);
    const flOzPerS = ((bottle?.flowLPerS ?? 0) * (bottle?.productShare ?? 0)) / 0.0295735;
    // 0.01 fl oz on a square foot: 11.5 sq ft a second, on 6 ft a walk of 1.92 ft/s or 1.31 mph
    const mph = (flOzPerS / 0.01 / ((bottle?.swathM ?? 0) / 0.3048)) * (3600 / 5280);
    expect(mph).toBeCloseTo(1.31, 2);
  });
});
