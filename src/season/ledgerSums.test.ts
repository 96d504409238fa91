import { describe, expect, it } from 'vitest';
import { flozPer1000, lbPer1000, sqft } from '../plan/testDose';
import { KG_PER_LB, L_PER_GAL } from '../units/factors';
import { plannedEntries } from './ledgerEntries';
import { itemsLaid, ledgerSums, ledgerYears, meanOfZones } from './ledgerSums';
import { doneDay, testDay, testFeed, testSeason } from './testSeason';
import type { LedgerEntry } from './types';
import { yearByMonth } from './yearByMonth';

const feed = testFeed('feed', [20, 5, 10]);
const zones = [
  { zoneId: 'front', areaM2: 300 },
  { zoneId: 'back', areaM2: 100 },
];
const onlyFront = { classes: [], include: ['front'], exclude: [] };

describe('the ledger of a year', () => {
  const { entries } = testSeason(
    [feed],
    [
      doneDay(testDay('spring', '2026-05-04', ['feed'])),
      testDay('autumn', '2026-09-10', [{ productId: 'feed', rateFactor: 0.5 }], { zones: onlyFront }),
      testDay('next', '2027-05-04', ['feed']),
      testDay('some day', null, ['feed']),
    ],
    {},
    { front: 300 / sqft(1), back: 100 / sqft(1) },
  );
  const [front, back] = ledgerSums(entries, zones, 2026);

  it('sums each zone by month and year, done and to come', () => {
    expect(front?.year.done.N).toBeCloseTo(lbPer1000(1), 12);
    expect(front?.year.toCome.N).toBeCloseTo(lbPer1000(0.5), 12);
    expect(front?.year.total.P2O5).toBeCloseTo(lbPer1000(1.5 / 4), 12);
    expect(front?.months[4]?.done.K2O).toBeCloseTo(lbPer1000(0.5), 12);
    expect(front?.months[8]?.toCome.N).toBeCloseTo(lbPer1000(0.5), 12);
    expect(back?.year.total.N).toBeCloseTo(lbPer1000(1), 12);
    expect(front?.entries.map((entry) => entry.visitId)).toEqual(['spring', 'autumn']);
  });
  it('gives nought for zones where nothing goes down, and weighs means by ground', () => {
    const [none] = ledgerSums(entries, [{ zoneId: 'bed', areaM2: 50 }], 2026);
    expect(none?.year.total).toEqual({});
    const mean = meanOfZones(ledgerSums(entries, [...zones, { zoneId: 'bed', areaM2: 100 }], 2026));
    // 300 m² with 1.5 lb, 100 with 1 lb, 100 with none
    expect(mean.year.total.N).toBeCloseTo(lbPer1000(1.1), 12);
    expect(mean.months[8]?.toCome.N).toBeCloseTo(lbPer1000(0.3), 12);
    expect(meanOfZones([]).year.total).toEqual({});
  });
  it('counts a strip left alone as nought in a mean, and no more ground than a zone has', () => {
    // half of 1,000 m² fed 2 g/m² beside 1,000 m² unfed: 1 kg on 2,000 m² is 0.5 g/m²
    const fed = {
      ...(entries[0] as LedgerEntry),
      areaM2: 500,
      nutrientKgPerM2: { N: 0.002, P2O5: 0, K2O: 0 },
    };
    const ground = [
      { zoneId: 'front', areaM2: 1000 },
      { zoneId: 'back', areaM2: 1000 },
    ];
    const mean = (list: readonly LedgerEntry[], of = ground) => ({
      year: meanOfZones(ledgerSums(list, of, 2026)).year.total.N,
      products: yearByMonth(list, of, 2026)[0]?.done[4],
    });
    expect(mean([fed])).toEqual({ year: 0.0005, products: 0.0005 });
    // the zone was larger when it was fed
    expect(mean([{ ...fed, areaM2: 4000 }])).toEqual({ year: 0.001, products: 0.001 });
    // one zone by itself is told by its treated ground, as in its row
    expect(mean([fed], ground.slice(0, 1))).toEqual({ year: 0.002, products: 0.002 });
  });
  it('knows its years and what it counts', () => {
    expect(ledgerYears(entries)).toEqual([2026, 2027]);
    expect(itemsLaid(entries)).toEqual(['N', 'solubleN', 'P2O5', 'K2O']);
  });
  it('tells the chart month by month and product, done apart from planned', () => {
    const [one, ...others] = yearByMonth(entries, zones, 2026);
    expect(others).toEqual([]);
    expect(one?.productId).toBe('feed');
    expect(one?.done[4]).toBeCloseTo(lbPer1000(1), 12);
    expect(one?.planned[8]).toBeCloseTo(lbPer1000(0.5 * 0.75), 12);
    expect(one?.planned.reduce((sum, value) => sum + value, 0)).toBeCloseTo(lbPer1000(0.375), 12);
    expect(yearByMonth(entries, [], 2026)).toEqual([]);
  });
});

describe('what was really used', () => {
  const liquid = testFeed('liquid', [10, 0, 0], 1, {
    form: 'liquid-concentrate',
    densityKgPerL: 1.2,
    rate: { basis: 'volume-per-area', rateLPerM2: flozPer1000(6) },
    packs: [{ id: 'jug', content: { unit: 'L', value: L_PER_GAL }, price: null }],
  });
  const nOf = (visit: ReturnType<typeof testDay>, product = liquid) =>
    testSeason([product], [visit]).entries[0]?.nutrientKgPerM2.N;
  const day = testDay('day', '2026-06-01', ['liquid']);

  it('counts the same by volume and by weight', () => {
    const byVolume = nOf(doneDay(day, { unit: 'L', value: 0.5 }));
    expect(byVolume).toBeGreaterThan(0);
    expect(nOf(doneDay(day, { unit: 'kg', value: 0.6 }))).toBeCloseTo(byVolume ?? 0, 12);
  });
  it('counts by weight without a density, and as planned where no density turns the volume round', () => {
    const { densityKgPerL: _none, ...rest } = liquid;
    const unknown = { ...rest, densityKgPerL: null };
    expect(nOf(doneDay(day), unknown)).toBeUndefined();
    // 1 lb of a 10 % product on 2,000 sq ft
    expect(nOf(doneDay(day, { unit: 'kg', value: KG_PER_LB }), unknown)).toBeCloseTo(lbPer1000(0.05), 12);
    const bag = doneDay(testDay('bags', '2026-06-01', ['feed']), { unit: 'L', value: 3 });
    const season = testSeason([feed], [bag]);
    expect(season.entries[0]?.nutrientKgPerM2.N).toBeCloseTo(lbPer1000(1), 12);
    expect(season.issues.map((issue) => [issue.code, issue.place.doseId])).toEqual([
      ['use-no-density', 'bags-0'],
    ]);
    expect(season.figures[0]?.laid.filter((dose) => dose.isUseUnread)).toHaveLength(1);
  });
  it('is not read before the visit is done; nothing used lays down nothing', () => {
    const kept = { ...doneDay(day, { unit: 'L', value: 9 }), doneOn: null };
    expect(nOf(kept)).toBeCloseTo(nOf(day) ?? 0, 15);
    expect(nOf(doneDay(day, { unit: 'L', value: 0 }))).toBe(0);
  });
  it('leaves the plan to be told beside it', () => {
    const { figures } = testSeason([liquid], [doneDay(day, { unit: 'L', value: 0 }, '2026-06-03')]);
    const [planned] = plannedEntries(figures);
    expect(planned).toMatchObject({ date: '2026-06-01', isDone: false });
    expect(planned?.nutrientKgPerM2.N).toBeCloseTo(nOf(day) ?? 0, 15);
  });
});
