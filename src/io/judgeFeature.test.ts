import { describe, expect, it } from 'vitest';
import { areaOfPartsM2 } from '../measure/geodesic';
import { ALL, buildAll, codesOf, openFiles, polygonFile } from './testDesk';

const LON = -96.5;
const LAT = 41.2;
/** a box of 0.0005 by 0.0003 degrees. */
const BOX = [
  [LON, LAT],
  [LON + 0.0005, LAT],
  [LON + 0.0005, LAT + 0.0003],
  [LON, LAT + 0.0003],
  [LON, LAT],
];
const BOW = [
  [LON, LAT],
  [LON + 0.0004, LAT + 0.0002],
  [LON + 0.0004, LAT],
  [LON, LAT + 0.0002],
  [LON, LAT],
];
const feature = (geometry: unknown, properties: object = {}) =>
  JSON.stringify({ type: 'Feature', properties, geometry });
const line = (coordinates: unknown) => feature({ type: 'LineString', coordinates }, { name: 'Lawn' });

describe('lines', () => {
  it('are closed when the gap is small, offered when it is not, kept when they enclose nothing', async () => {
    const near = [...BOX.slice(0, 4), [LON, LAT + 0.000005]];
    expect((await openFiles({ 'a.json': line(near) })).rows[0]).toMatchObject({
      outcome: 'zone',
      isTicked: true,
    });
    const open = await openFiles({ 'a.json': line(BOX.slice(0, 4)) });
    expect(open.rows[0]).toMatchObject({ outcome: 'offered', isTicked: false });
    expect(codesOf(open.rows[0])).toEqual(['line-open']);
    open.desk.tick(0, true);
    expect(buildAll(open.desk).zones[0]?.parts).toEqual([[BOX]]);
    expect((await openFiles({ 'a.json': line(BOX.slice(0, 2)) })).rows[0]?.outcome).toBe('kept');
  });
});

describe('crossing outlines', () => {
  it('of a bow tie come in as two parts, whatever the rule', async () => {
    const { desk, rows, overview } = await openFiles({ 'a.json': polygonFile({ Bow: BOW }) });
    expect(overview.hasCrossings).toBe(true);
    expect(rows[0]?.notes[0]?.message).toMatch(/crosses itself.*in 2 parts/);
    // two triangles of base 0.0002° and height 0.0002°: half of the box round them
    const box = [
      [
        [LON, LAT],
        [LON + 0.0004, LAT],
        [LON + 0.0004, LAT + 0.0002],
        [LON, LAT + 0.0002],
        [LON, LAT],
      ],
    ];
    const half = areaOfPartsM2([box as never]) / 2;
    expect(areaOfPartsM2(buildAll(desk).zones[0]?.parts ?? [])).toBeCloseTo(half, 2);
    await desk.setRules({ fill: 'even-odd' });
    expect(areaOfPartsM2(buildAll(desk).zones[0]?.parts ?? [])).toBeCloseTo(half, 2);
  });

  it('that go round ground twice count it once, or leave it out, by the rule', async () => {
    // an outer box gone round, then an inner box the same way round
    const inner = [
      [0.0001, 0.0001],
      [0.0003, 0.0001],
      [0.0003, 0.0002],
      [0.0001, 0.0002],
      [0.0001, 0.0001],
    ].map(([x, y]) => [LON + (x ?? 0), LAT + (y ?? 0)]);
    const ring = [...BOX, ...inner, BOX[0] as number[]];
    const { desk } = await openFiles({ 'a.json': polygonFile({ Twice: ring }) });
    const whole = areaOfPartsM2([[BOX]] as never);
    const hole = areaOfPartsM2([[inner]] as never);
    expect(areaOfPartsM2(buildAll(desk).zones[0]?.parts ?? [])).toBeCloseTo(whole, 2);
    await desk.setRules({ fill: 'even-odd' });
    expect(areaOfPartsM2(buildAll(desk).zones[0]?.parts ?? [])).toBeCloseTo(whole - hole, 2);
  });
});

describe('places', () => {
  const swapped = BOX.map(([lon, lat]) => [lat, lon]);

  it('swapped beyond 90° are told, and put right for the whole file', async () => {
    const { desk, overview, rows } = await openFiles({
      'a.json': polygonFile({ Lawn: swapped as number[][] }),
    });
    expect(codesOf(rows[0])).toEqual(['swapped-order']);
    expect(overview.swapCount).toBe(1);
    const after = await desk.setRules({ isSwapped: true });
    expect(after.byOutcome.zone).toBe(1);
    expect(buildAll(desk).zones[0]?.parts).toEqual([[BOX]]);
  });

  it('swapped within 90° are known by the open yard, and offered', async () => {
    const ring = BOX.map(([lon, lat]) => [(lon ?? 0) + 46.5 + 10, (lat ?? 0) - 1]);
    const turned = ring.map(([lon, lat]) => [lat, lon]) as number[][];
    const yardBox = [-40, 40, -39.9, 40.3] as const;
    const { rows } = await openFiles({ 'a.json': polygonFile({ Lawn: turned }) }, { yardBox });
    expect(rows[0]).toMatchObject({ outcome: 'offered', isTicked: false });
    expect(codesOf(rows[0])).toEqual(['swapped-order']);
  });

  it('outside of 180° and 90°, in metres, not a number, empty: each with its reason', async () => {
    const move = (x: number, y: number) => BOX.map(([lon, lat]) => [(lon ?? 0) + x, (lat ?? 0) + y]);
    const text = JSON.stringify({
      type: 'FeatureCollection',
      features: [
        { type: 'Feature', properties: {}, geometry: { type: 'Polygon', coordinates: [move(0, 60)] } },
        {
          type: 'Feature',
          properties: {},
          geometry: { type: 'Polygon', coordinates: [move(512_000, 4_500_000)] },
        },
        {
          type: 'Feature',
          properties: {},
          geometry: {
            type: 'Polygon',
            coordinates: [
              [
                [1, 'x'],
                [2, 3],
                [3, 4],
                [1, 2],
              ],
            ],
          },
        },
        { type: 'Feature', properties: {}, geometry: null },
        {
          type: 'Feature',
          properties: {},
          geometry: { type: 'Polygon', coordinates: [[BOX[0], BOX[1], BOX[0]]] },
        },
      ],
    });
    const { rows, overview } = await openFiles({ 'a.json': text });
    expect(rows.map((row) => codesOf(row)?.[0])).toEqual([
      'out-of-range',
      'projected',
      'not-a-number',
      'empty',
      'too-few-corners',
    ]);
    expect(rows.every((row) => row.outcome === 'refused')).toBe(true);
    expect(overview.asksCrs).toContain('metres or feet');
  });

  it('a zone that the yard has already is offered, not ticked', async () => {
    const first = await openFiles({ 'a.json': polygonFile({ Lawn: BOX }) });
    const areaM2 = first.rows[0]?.areaM2 ?? 0;
    const zones = [{ name: 'Lawn', areaM2, box: [LON, LAT, LON + 0.0005, LAT + 0.0003] as const }];
    const again = await openFiles({ 'a.json': polygonFile({ Lawn: BOX }) }, { zones });
    expect(again.rows[0]).toMatchObject({ outcome: 'offered', isTicked: false });
    expect(codesOf(again.rows[0])).toEqual(['duplicate']);
    const asNew = await again.desk.setRules({ checksTwins: false });
    expect(asNew.counts.zones).toBe(1);
    expect((await again.desk.setRules({ checksTwins: true })).counts.zones).toBe(0);
  });
});

describe('very many corners', () => {
  it('are thinned within the tolerance that is told', async () => {
    const ring = Array.from({ length: 10_001 }, (_, i) => {
      const turn = (2 * Math.PI * (i % 10_000)) / 10_000;
      return [LON + 0.0004 * Math.cos(turn), LAT + 0.0003 * Math.sin(turn)];
    });
    const { desk, rows } = await openFiles({ 'a.json': polygonFile({ Round: ring }) });
    expect(codesOf(rows[0])).toEqual(['thinned']);
    const parts = buildAll(desk).zones[0]?.parts ?? [];
    expect(parts[0]?.[0]?.length).toBeLessThan(2001);
    expect(Math.abs(areaOfPartsM2(parts) / areaOfPartsM2([[ring]] as never) - 1)).toBeLessThan(1e-3);
  });
});

describe('tables', () => {
  it('give corners by their shape, single points by their names, and faults by their line', async () => {
    const corners =
      'zone;corner;lat;lon\nLawn;2;41,2;-96,4995\nLawn;1;41,2;-96,5\nLawn;3;41,2003;-96,4995\nBed;1;41,2;north\nBed;2;41,3;-96\nBed;3;41;-96';
    const { rows } = await openFiles({ 'a.csv': corners });
    expect(rows[0]).toMatchObject({ name: 'Lawn', outcome: 'zone', corners: 3 });
    expect(rows[1]?.notes[0]?.message).toContain('line 5: “north” stands in the column “lon”');
    const points = await openFiles({
      'a.csv': 'name,latitude,longitude\nWell,41.2,-96.5\nNorth gate,41.2N,96.5W\nOak,41.3,-96.5\n',
    });
    expect(points.rows.map((row) => [row.outcome, row.kind])).toEqual([
      ['mark', 'well'],
      ['mark', 'gate'],
      ['kept', 'gate'],
    ]);
    const none = await openFiles({ 'a.csv': 'a,b\n1,2\n' });
    expect(none.overview.issues[0]?.code).toBe('csv-no-columns');
  });
});

describe('what comes in at once', () => {
  it('is at most 500 zones: then only those near the yard are ticked, or none', async () => {
    const rings = Object.fromEntries(
      Array.from({ length: 501 }, (_, i) => [
        `Lawn ${i}`,
        BOX.map(([lon, lat]) => [(lon ?? 0) + i * 0.01, lat ?? 0]),
      ]),
    );
    const far = await openFiles({ 'a.json': polygonFile(rings) });
    expect(far.overview.counts.zones).toBe(0);
    expect(far.overview.tickWords).toContain('500 zones');
    const near = await openFiles(
      { 'a.json': polygonFile(rings) },
      { yardBox: [LON, LAT, LON + 0.0005, LAT] },
    );
    expect(near.overview.counts.zones).toBe(1);
    expect(near.desk.list({ ...ALL, text: 'lawn 50' }, 0, 50).total).toBe(2);
  });
});
