import { describe, expect, it } from 'vitest';
import { flozPer1000, lbPer1000 } from '../../src/plan/testDose';
import { ledgerSums } from '../../src/season/ledgerSums';
import { doneDay, testDay, testFeed, testRatedSoil, testRule, testSeason } from '../../src/season/testSeason';
import { KG_PER_LB, L_PER_GAL, M2_PER_1000_SQFT, M2_PER_ACRE, M2_PER_SQFT } from '../../src/units/factors';
import { DEFAULT_CAPS } from '../../src/yard/defaults';
import type { Amount, LocalRule, Visit } from '../../src/yard/types';

/*
 * The ledger against published worked examples. Rules of a place are checked as arithmetic of rules that a
 * person typed in: the figures are those of the source named, and may have changed since it was printed.
 */

const lb = (value: number): Amount => ({ unit: 'kg', value: value * KG_PER_LB });
const toLb = (kgPerM2: number | undefined) => ((kgPerM2 ?? 0) * M2_PER_1000_SQFT) / KG_PER_LB;
const both = (areaSqft: number) => ({ front: areaSqft / 2, back: areaSqft / 2 });

/** Pounds laid down by so many pounds of a product on some ground, in all, through the ledger of the year. */
function poundsOf(analysis: readonly [number, number, number], usedLb: number, areaSqft: number) {
  const visit = doneDay(testDay('day', '2026-05-01', ['feed']), lb(usedLb));
  const { entries } = testSeason([testFeed('feed', analysis)], [visit], {}, both(areaSqft));
  const zones = ['front', 'back'].map((zoneId) => ({ zoneId, areaM2: (areaSqft / 2) * M2_PER_SQFT }));
  const sums = ledgerSums(entries, zones, 2026);
  const total = (item: 'N' | 'P2O5' | 'K2O') =>
    sums.reduce((sum, zone) => sum + ((zone.year.done[item] ?? 0) * zone.areaM2) / KG_PER_LB, 0);
  return { N: total('N'), P2O5: total('P2O5'), K2O: total('K2O'), perThousand: toLb(sums[0]?.year.done.N) };
}

describe('what a done visit laid down', () => {
  it.each([
    [
      'Univ. of Minnesota Extension, lawn fertilizer series, tables 7.3 and 7.4: 60 lb of 30-4-4',
      [30, 4, 4],
      60,
      18_000,
      18,
      2.4,
      2.4,
    ],
    [
      'Cornell Cooperative Extension, Suffolk County: 30 lb bag of 24-2-8',
      [24, 2, 8],
      30,
      7200,
      7.2,
      0.6,
      2.4,
    ],
    [
      'turfgrass professional maths worksheet (author not shown): 1,250 lb of 5-10-20',
      [5, 10, 20],
      1250,
      62_500,
      62.5,
      125,
      250,
    ],
  ] as const)('%s', (_source, analysis, usedLb, areaSqft, N, P2O5, K2O) => {
    const laid = poundsOf(analysis, usedLb, areaSqft);
    expect(laid.N).toBeCloseTo(N, 9);
    expect(laid.P2O5).toBeCloseTo(P2O5, 9);
    expect(laid.K2O).toBeCloseTo(K2O, 9);
  });

  it.each([
    // printed to two decimals: pounds of product in all for 1.0 lb N per 1,000 sq ft on 6,000 sq ft
    [
      'Univ. of Nebraska-Lincoln, lawn fertilizer calculations: 21.42 lb of 28-3-6 on 6,000 sq ft',
      [28, 3, 6],
      21.42,
      6000,
      1.0,
    ],
    ['UMass Amherst, Rotary Spreader Calibration: 5 lb of 20-5-10 on 1,000 sq ft', [20, 5, 10], 5, 1000, 1.0],
    ['LSU AgCenter, broadcast spreaders: 5 lb of 20-0-0 on 1,000 sq ft', [20, 0, 0], 5, 1000, 1.0],
    ['UGA Extension, Appling County: 5 lb of 12-4-8 on 1,000 sq ft of centipede', [12, 4, 8], 5, 1000, 0.6],
  ] as const)('%s', (_source, analysis, usedLb, areaSqft, perThousand) => {
    expect(poundsOf(analysis, usedLb, areaSqft).perThousand).toBeCloseTo(perThousand, 3);
  });

  it('Woods, Asian Turfgrass Center, 2015: 6 fl oz of 4 % N at 10.68 lb/gal is 0.50 lb and 0.020 lb N per 1,000 sq ft, by volume or by weight', () => {
    const liquid = testFeed('liquid', [4, 0, 0], 1, {
      form: 'liquid-concentrate',
      densityKgPerL: (10.68 * KG_PER_LB) / L_PER_GAL,
      rate: { basis: 'volume-per-area', rateLPerM2: flozPer1000(6) },
      packs: [{ id: 'jug', content: { unit: 'L', value: L_PER_GAL }, price: null }],
    });
    const nOf = (actual: Amount | null) =>
      toLb(
        testSeason([liquid], [doneDay(testDay('day', '2026-05-01', ['liquid']), actual)], {}, both(1000))
          .entries[0]?.nutrientKgPerM2.N,
      );
    expect(nOf(null)).toBeCloseTo(0.02, 4);
    expect(nOf({ unit: 'L', value: (6 / 128) * L_PER_GAL })).toBeCloseTo(0.02, 4);
    expect(nOf(lb(0.5))).toBeCloseTo(0.02, 4);
  });

  it('liquid 10-10-10 at 10.69 lb/gal, 15 lb N per acre planned on 20 acres: 280.6 gal; 300 gal used are 15.0 gal and 16.04 lb N per acre (growers’ field sheet; last step worked out by hand)', () => {
    const perAcre = KG_PER_LB / M2_PER_ACRE;
    const liquid = testFeed('liquid', [10, 10, 10], 1, {
      form: 'liquid-concentrate',
      densityKgPerL: (10.69 * KG_PER_LB) / L_PER_GAL,
      rate: { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2: 15 * perAcre },
      packs: [{ id: 'drum', content: { unit: 'L', value: 55 * L_PER_GAL }, price: null }],
    });
    const visit = testDay('day', '2026-05-01', ['liquid']);
    const acres = both(20 * 43_560);
    const planned = testSeason([liquid], [visit], {}, acres);
    expect((planned.figures[0]?.doses[0]?.amount.value ?? 0) / L_PER_GAL).toBeCloseTo(280.6, 1);
    expect((planned.entries[0]?.nutrientKgPerM2.N ?? 0) / perAcre).toBeCloseTo(15, 9);
    const done = testSeason([liquid], [doneDay(visit, { unit: 'L', value: 300 * L_PER_GAL })], {}, acres);
    expect((done.entries[0]?.nutrientKgPerM2.N ?? 0) / perAcre).toBeCloseTo(16.04, 2);
  });
});

describe('Univ. of Maryland Extension, lawn fertilizer schedule table (updated 1 March 2023): feedings add up to the most of a year', () => {
  const slow = testFeed('slow', [20, 0, 0], 0.9, {
    analysis: { nPct: 20, p2o5Pct: 0, k2oPct: 0, slowNPctOfN: 25, elementsPct: {} },
  });
  it.each([
    ['tall fescue and Kentucky bluegrass', { '05-20': 0.9, '09-10': 0.9, '10-20': 0.9 }, 2.7],
    ['fine fescue', { '05-20': 0.5, '09-10': 0.9 }, 1.4],
    ['zoysiagrass', { '05-20': 0.9, '06-20': 0.9 }, 1.8],
    ['bermudagrass', { '05-20': 0.9, '06-20': 0.9, '08-10': 0.9 }, 2.7],
  ] as const)('%s', (_grass, feedings, most) => {
    const visits = Object.entries(feedings).map(([day, pounds]) =>
      testDay(day, `2026-${day}`, [{ productId: 'slow', rateFactor: pounds / 0.9 }]),
    );
    const withCap = (pounds: number) => {
      const { yard, entries, issues } = testSeason([slow], visits, {
        caps: { ...NO_YEAR, nPerYear: lbPer1000(pounds) },
      });
      const zones = yard.zones.map((zone) => ({ zoneId: zone.id, areaM2: 1 }));
      return {
        issues: issues.map((issue) => issue.place.visitId),
        sums: ledgerSums(entries, zones, 2026)[0],
      };
    };
    const { sums, issues } = withCap(most);
    expect(toLb(sums?.year.total.N)).toBeCloseTo(most, 9);
    for (const [day, pounds] of Object.entries(feedings))
      expect(toLb(sums?.months[Number(day.slice(0, 2)) - 1]?.total.N)).toBeCloseTo(pounds, 9);
    expect(issues).toEqual([]);
    expect(withCap(most - 0.01).issues).toEqual([visits.at(-1)?.id]);
  });
});
const NO_YEAR = {
  ...DEFAULT_CAPS,
  totalNPerDose: null,
  solubleNPerDose: null,
  p2o5PerDose: null,
  p2o5PerYear: null,
};

describe('Virginia DCR home lawn nitrogen table, cool-season: 0.5 in May, 0.9 in September, October and early November, 2 to 3.5 lb a year', () => {
  it('the most of each month stays within the most of the year', () => {
    const feed = testFeed('feed', [30, 0, 0], 1);
    const months = { '05': 0.5, '09': 0.9, '10': 0.9, '11': 0.9 };
    const visits = Object.entries(months).map(([month, pounds]) =>
      testDay(month, `2026-${month}-05`, [{ productId: 'feed', rateFactor: pounds }]),
    );
    const { entries, issues } = testSeason([feed], visits, {
      caps: { ...NO_YEAR, nPerYear: lbPer1000(3.5) },
    });
    const year = toLb(ledgerSums(entries, [{ zoneId: 'front', areaM2: 1 }], 2026)[0]?.year.total.N);
    expect(year).toBeCloseTo(3.2, 9);
    expect(year).toBeGreaterThanOrEqual(2);
    expect(issues).toEqual([]);
  });
});

const codesOf = (
  visits: readonly Visit[],
  rules: readonly LocalRule[],
  soilTests: readonly ReturnType<typeof testRatedSoil>[] = [],
) =>
  testSeason(
    [
      testFeed('soluble', [46, 0, 0], 1),
      testFeed('starter', [10, 20, 10], 0.5),
      ...[20, 25].map((slow) =>
        testFeed(`slow ${slow}`, [20, 0, 0], 0.9, {
          analysis: { nPct: 20, p2o5Pct: 0, k2oPct: 0, slowNPctOfN: slow, elementsPct: {} },
        }),
      ),
    ],
    visits,
    { rules, soilTests },
  ).issues.map((issue) => `${issue.place.visitId} ${issue.code}`);

describe('Md. Code, Agriculture 6-224(a): at most 0.7 lb water-soluble N, 0.9 lb N of which 20 % slow; phosphorus by a soil test of 3 years', () => {
  const cap = (maxLb: number, isSolubleOnly: boolean): LocalRule =>
    testRule({ kind: 'cap', nutrient: 'N', per: 'dose', isSolubleOnly, maxKgPerM2: lbPer1000(maxLb) });
  const rules = [cap(0.9, false), cap(0.7, true), testRule({ kind: 'slow-share', minPct: 20 })];
  const day = (productId: string, rateFactor: number) =>
    testDay('v', '2026-05-20', [{ productId, rateFactor }]);

  it('0.9 lb with 25 % slow is 0.675 lb soluble: allowed; a little more is not', () => {
    expect(codesOf([day('slow 25', 1)], rules)).toEqual([]);
    expect(codesOf([day('slow 25', 1.01)], rules)).toEqual(['v rule-cap-dose']);
  });
  it('0.9 lb with 20 % slow keeps the share, yet is 0.72 lb soluble', () => {
    expect(codesOf([day('slow 20', 1)], rules)).toEqual(['v rule-cap-dose']);
    expect(codesOf([day('slow 20', 0.87 / 0.9)], rules)).toEqual([]);
  });
  it('0.7 lb of urea passes neither cap, but has no slow share', () => {
    expect(codesOf([day('soluble', 0.7)], rules.slice(0, 2))).toEqual([]);
    expect(codesOf([day('soluble', 0.7)], rules)).toEqual(['v rule-slow-share']);
    expect(codesOf([day('soluble', 0.71)], rules.slice(0, 2))).toEqual(['v rule-cap-dose']);
  });
  it('a soil test performed no more than 3 years before', () => {
    const rule = testRule({ kind: 'no-phosphorus', unlessSoilTest: true, testYears: 3, unlessNewLawn: true });
    const visit = testDay('v', '2026-05-20', ['starter']);
    expect(codesOf([visit], [rule], [testRatedSoil('2023-05-20', 'low')])).toEqual([]);
    expect(codesOf([visit], [rule], [testRatedSoil('2023-05-19', 'low')])).toEqual(['v rule-no-phosphorus']);
  });
});

describe('days without feeding', () => {
  const spans = [
    [
      'Md. Environment 8-803.5: 15 November to 1 March',
      '11-15',
      '03-01',
      ['2026-11-14', '2027-03-02'],
      ['2026-11-15', '2027-03-01', '2027-01-10'],
    ],
    [
      'N.Y. ECL 17-2103: 1 December to 1 April',
      '12-01',
      '04-01',
      ['2026-11-30', '2027-04-02'],
      ['2026-12-01', '2027-04-01', '2026-02-28'],
    ],
  ] as const;
  it.each(spans)('%s', (_source, from, to, free, barred) => {
    const rule = testRule({ kind: 'blackout', from, to, nutrients: ['N', 'P2O5', 'K2O'] });
    const days = (dates: readonly string[]) =>
      codesOf(
        dates.map((date) => testDay(date, date, ['soluble'])),
        [rule],
      );
    expect(days(free)).toEqual([]);
    expect(days(barred)).toEqual(barred.map((date) => `${date} rule-blackout`));
  });
});

describe('Rutgers NJAES, Snyder Farm: 0.9 lb N at once, 0.45 lb for each of two passes', () => {
  it('two passes of a day are one feeding', () => {
    const rule = testRule({
      kind: 'cap',
      nutrient: 'N',
      per: 'dose',
      isSolubleOnly: false,
      maxKgPerM2: lbPer1000(0.9),
    });
    const passes = (share: number) =>
      testDay('v', '2026-05-20', [
        { productId: 'soluble', rateFactor: share },
        { productId: 'soluble', rateFactor: share },
      ]);
    expect(codesOf([passes(0.45)], [rule])).toEqual([]);
    expect(codesOf([passes(0.46)], [rule])).toEqual(['v rule-cap-dose']);
  });
});

describe('Florida Urban Turf Fertilizer Rule 5E-1.003(2), in UF/IFAS EP353 (ENH1089): at most 0.25 lb P2O5 at once and 0.50 a year, 0.7 lb soluble N at once', () => {
  const p = testFeed('p', [0, 25, 0], 1);
  const soluble = testFeed('n', [46, 0, 0], 0.7);
  const pDay = (day: string) => testDay(day, `2026-${day}`, ['p']);
  const season = (visits: readonly Visit[]) => {
    const { issues, figures } = testSeason([p, soluble], visits, { caps: DEFAULT_CAPS });
    return [...figures.flatMap((each) => each.issues), ...issues].filter(({ code }) =>
      /^(cap|guide)/.test(code),
    );
  };
  it('two doses of 0.25 lb are within the year, the third passes it', () => {
    expect(season([pDay('04-01'), pDay('06-01')])).toEqual([]);
    const [issue, ...others] = season([pDay('04-01'), pDay('06-01'), pDay('08-01')]);
    expect(others).toEqual([]);
    expect(issue).toMatchObject({ code: 'cap-year-p2o5', place: { visitId: '08-01' } });
    expect(issue?.message).toMatch(/0\.75\s*lb.*over 0\.5\s*lb.*EP353/);
  });
  it('0.7 lb soluble N is the most at once', () => {
    const codes = (rateFactor: number) =>
      season([testDay('v', '2026-05-20', [{ productId: 'n', rateFactor }])]).map((issue) => issue.code);
    expect(codes(1)).toEqual([]);
    expect(codes(1.01)).toEqual(['guide-soluble-n']);
  });
});
