import { describe, expect, it } from 'vitest';
import { heldNeed, suggestHold } from '../../src/need/flushHold';
import { growthPotential, growthPotentials } from '../../src/need/growthPotential';
import { monthlyNeed, monthlyShares } from '../../src/need/monthlyNeed';
import { findGuide, NITROGEN_GUIDES } from '../../src/need/nitrogenGuides';
import { readMonthlyMeans } from '../../src/need/readMonthlyMeans';
import { NO_CLIMATE } from '../../src/yard/defaults';
import type { Climate, NitrogenSplit, NutrientNeed } from '../../src/yard/types';

/** 1 lb per 1,000 sq ft in kg/m²: 0.45359237 kg on 92.90304 m² (NIST Handbook 44, appendix C). */
const LB = 0.45359237 / 92.90304;
const fromF = (degreesF: number) => ((degreesF - 32) * 5) / 9;

function need(nLb: number, split: NitrogenSplit, fields: Partial<NutrientNeed> = {}): NutrientNeed {
  return {
    id: 'n',
    name: '',
    zones: { classes: [], include: [], exclude: [] },
    speciesId: '',
    season: 'cool-season',
    guideId: '',
    nKgPerM2: nLb * LB,
    split,
    hold: null,
    ...fields,
  };
}
const inLb = (months: readonly number[] | null) => (months ?? []).map((value) => value / LB);

describe('growth potential', () => {
  // Woods, "A number between 0 and 1: using the turfgrass growth potential", 2014, revised 2021: the best is 20 °C
  // for cool-season grass and 31 °C or more for warm-season grass, where the potential is 1.
  it('is 1 at the best temperature (Woods 2014)', () => {
    expect(growthPotential(20, 'cool-season')).toBe(1);
    expect(growthPotential(31, 'warm-season')).toBe(1);
    expect(growthPotential(36, 'warm-season')).toBe(1);
  });
  // The alternative writing in the same post, 1 / e^(0.5 ((t - to) / var)²), worked out term by term.
  it.each([0, 5, 10, 15, 25, 30, 35])('is the same by the second writing at %i °C (Woods 2014)', (t) => {
    const second = (best: number, variance: number) => 1 / Math.E ** (0.5 * ((t - best) / variance) ** 2);
    expect(growthPotential(t, 'cool-season')).toBeCloseTo(second(20, 5.5), 12);
    expect(growthPotential(t, 'warm-season', 'bell')).toBeCloseTo(second(31, 7), 12);
  });
  // Woods, "Last summer at 36 locations", 2023: warm-season grass is ahead "above an average air temperature of
  // about 24.8 °C".
  it('passes from cool-season to warm-season at about 24.8 °C (Woods 2023)', () => {
    const lead = (t: number) => growthPotential(t, 'warm-season') - growthPotential(t, 'cool-season');
    expect(lead(24.75)).toBeLessThan(0);
    expect(lead(24.9)).toBeGreaterThan(0);
  });
  // Woods, "Places with high growth potential all year long", 2023: over 90 % means within 2.5 °C of the best.
  it('is 90 % at 2.5 °C from the best (Woods 2023)', () => {
    expect(growthPotential(22.5, 'cool-season')).toBeCloseTo(0.9, 2);
    expect(growthPotential(17.5, 'cool-season')).toBeCloseTo(0.9, 2);
  });
  // PACE Turf, "Modified warm season growth potential model": no fall above 88 °F (31 °C).
  it('stays at its most above 88 °F for warm-season grass (PACE Turf)', () => {
    expect(growthPotential(fromF(88), 'warm-season')).toBe(1);
    expect(growthPotential(fromF(100), 'warm-season')).toBe(1);
    expect(growthPotential(fromF(100), 'warm-season', 'bell')).toBeLessThan(0.7);
  });
  // Gelernter and Stowell in Grounds Maintenance, "Predicting turf performance": cool-season turf grows best from
  // 60 to 75 °F, most at about 68; warm-season from 80 to 95, most at about 88. "Good" is 50 % and more (PACE Turf).
  it('is good over the published ranges (Gelernter and Stowell)', () => {
    for (const f of [60, 64, 68, 72, 75])
      expect(growthPotential(fromF(f), 'cool-season')).toBeGreaterThan(0.5);
    for (const f of [80, 84, 88, 92, 95])
      expect(growthPotential(fromF(f), 'warm-season')).toBeGreaterThan(0.5);
    expect(growthPotential(fromF(68), 'cool-season')).toBeCloseTo(1, 12);
  });
  // Constants in °F, 67.5 and 10 for cool-season grass, 88 and 12 for warm-season (PACE Turf): from memory.
  it.each([
    [72, 'cool-season', 0.9037],
    [60, 'cool-season', 0.7548],
    [72, 'warm-season', 0.4111],
    [60, 'warm-season', 0.0657],
  ] as const)('at %i °F comes near the Fahrenheit form, %s (from memory)', (f, season, value) => {
    expect(Math.abs(growthPotential(fromF(f), season) - value)).toBeLessThan(0.05);
  });
  // USGA Green Section, "Unlock the value of growth potential graphs", 2019: most growth at 67.5 °F and at 88 °F.
  it('is at its most at 67.5 °F and 88 °F (USGA 2019)', () => {
    expect(growthPotential(fromF(67.5), 'cool-season')).toBeGreaterThan(0.998);
    expect(growthPotential(fromF(88), 'warm-season')).toBeGreaterThan(0.998);
  });
});

describe('growth potential of named places, from their published temperatures', () => {
  // Woods, "Monthly maximum N or annual maximum N", 2023: at Lake Karrinyup, Perth, 2 g/m² a month times the growth
  // potential "comes to 170 kg/ha". He does not print his temperatures; here are those of Perth, 1993-2010, of the
  // Australian Bureau of Meteorology, as a copy prints them: hence within a tenth.
  const PERTH = middles(
    [30.8, 31.3, 29.5, 25.6, 22.4, 19.3, 18.3, 18.8, 20.1, 23.0, 26.4, 28.8],
    [17.8, 18.1, 16.5, 13.6, 10.6, 8.5, 7.8, 8.1, 9.4, 11.2, 14.2, 16.2],
  );
  it('Perth: a year at 2 g/m² a month is 170 kg/ha (Woods 2023)', () => {
    const potentials = growthPotentials({ monthlyMeanC: PERTH, source: '' }, 'cool-season') ?? [];
    const kgPerHa = 2 * 10 * potentials.reduce((sum, value) => sum + value, 0);
    expect(Math.abs(kgPerHa / 170 - 1)).toBeLessThan(0.1);
  });
  it('Perth: 170 kg/ha by growth give the best month the 2 g/m² they were made from (Woods 2023)', () => {
    const year = need(0, { kind: 'growth' }, { nKgPerM2: 0.017 });
    const months = monthlyNeed(year, { monthlyMeanC: PERTH, source: '' }) ?? [];
    expect(Math.abs(Math.max(...months) / 0.002 - 1)).toBeLessThan(0.1);
  });
  // Woods, "Places with high growth potential (GP) all year long", 2023: days with a cool-season potential of 0.75 and
  // more, by the days of 2020 to 2022. Here by normals, days between the middles of months on straight lines: hence
  // within 15 %.
  it.each([
    // highs and lows as a travel guide prints them (copy)
    [
      'Shanghai',
      104,
      middles(
        [8.1, 10.1, 13.8, 19.5, 24.8, 27.8, 32.2, 31.5, 27.9, 22.9, 17.3, 11.1],
        [2.1, 3.7, 6.9, 11.9, 17.3, 21.7, 25.8, 25.8, 22.4, 16.8, 10.6, 4.7],
      ),
    ],
    // Central Park, 1991-2020, °F; January to March read in a copy, the others from memory
    [
      'New York',
      97,
      [33.7, 35.9, 42.8, 53.7, 63.2, 72.0, 77.5, 76.1, 69.2, 57.9, 48.0, 39.1].map((f) => fromF(f)),
    ],
    // Observatory Hill; January and July read in a copy, the others from memory
    [
      'Sydney',
      249,
      middles(
        [25.9, 25.8, 24.8, 22.4, 19.4, 16.9, 16.3, 17.8, 20.0, 22.1, 23.6, 25.2],
        [18.7, 18.8, 17.6, 14.7, 11.6, 9.3, 8.0, 9.0, 11.1, 13.6, 15.7, 17.5],
      ),
    ],
  ])('%s has about %i days of a potential of 0.75 and more (Woods 2023)', (_, days, means) => {
    const found = daysOfYear(means).filter((t) => growthPotential(t, 'cool-season') >= 0.75).length;
    expect(Math.abs(found / days - 1)).toBeLessThan(0.15);
  });
});

/** Middle of highest and lowest of each month. */
function middles(highs: readonly number[], lows: readonly number[]): readonly number[] {
  return highs.map((high, month) => (high + (lows[month] ?? Number.NaN)) / 2);
}

/** Temperature of each of 365 days, on straight lines between the middles of months. */
function daysOfYear(means: readonly number[]): readonly number[] {
  const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  const middle = (month: number) =>
    lengths.slice(0, month).reduce((sum, days) => sum + days, 0) + ((lengths[month] ?? 0) - 1) / 2;
  return Array.from({ length: 365 }, (_, day) => {
    const before = lengths.findLastIndex((_, month) => middle(month) <= day);
    const [from, next] = [before < 0 ? 11 : before, before === 11 ? 0 : before + 1];
    const start = before < 0 ? middle(11) - 365 : middle(from);
    const end = before === 11 ? middle(0) + 365 : middle(next);
    const [here, there] = [means[from] ?? Number.NaN, means[next] ?? Number.NaN];
    return here + ((there - here) * (day - start)) / (end - start);
  });
}

// Rows of tables, held against a second typing: no worked examples.
describe('yearly nitrogen as published, lb per 1,000 sq ft', () => {
  it.each([
    // Virginia DCR, home lawn nitrogen table
    ['virginia-dcr/tall-fescue', 2, 3.5],
    ['virginia-dcr/fine-fescue', 1, 2],
    ['virginia-dcr/bermudagrass', 2, 4],
    ['virginia-dcr/zoysiagrass', 1, 2],
    // University of Illinois, 1995 (copy)
    ['illinois/kentucky-bluegrass', 1, 4],
    ['illinois/creeping-bentgrass', 2, 6],
    ['illinois/zoysiagrass', 2, 4],
    // NC State Extension, Caring for Your Lawn and the Environment
    ['nc-state/bermudagrass', 4, 4],
    ['nc-state/st-augustinegrass', 2.5, 2.5],
    ['nc-state/tall-fescue', 2.5, 3],
    // UF/IFAS, Guide to Florida-Friendly Landscaping, table 2 (copy)
    ['uf-ifas/zoysiagrass/central', 3, 6],
    ['uf-ifas/st-augustinegrass/south', 4, 6],
    ['uf-ifas/bahiagrass/north', 2, 3],
    // Kansas State, Upham (copy)
    ['kansas-warm/zoysiagrass', 1.5, 2],
    ['kansas-warm/bermudagrass/athletic-field', 4, 4],
    // Duble, McAfee, Novosad, Lawn Fertilization in Texas (copy)
    ['tamu/bermudagrass/hybrid', 5, 7],
    // Landschoot, Penn State, in a trade journal (copy)
    ['penn-state/perennial-ryegrass', 3, 4],
  ])('%s is %d to %d', (id, min, max) => {
    const guide = findGuide(id);
    expect((guide?.minKgPerM2 ?? 0) / LB).toBeCloseTo(min, 12);
    expect((guide?.maxKgPerM2 ?? 0) / LB).toBeCloseTo(max, 12);
  });
  // Schlossberg and Schmidt 2007, Agronomy Journal 99:99-106: 244 to 402 kg/ha.
  it('takes kg/ha as 0.0001 kg/m²', () => {
    const guide = findGuide('schlossberg-2006/creeping-bentgrass/putting-green');
    expect(guide?.minKgPerM2).toBeCloseTo(0.0244, 12);
    expect(guide?.maxKgPerM2).toBeCloseTo(0.0402, 12);
  });
  it('names source and region of every row', () => {
    for (const { source } of NITROGEN_GUIDES)
      expect(source.words.length * source.region.length).toBeGreaterThan(0);
  });
});

describe('the year by month as published, lb per 1,000 sq ft', () => {
  // NC State Extension, Caring for Your Lawn and the Environment: bermudagrass 1 lb in each of May to August, 4.0.
  it('NC State, bermudagrass: 1 lb a month from May to August', () => {
    const months = inLb(monthlyNeed(need(4, { kind: 'even', fromMonth: 5, toMonth: 8 }), NO_CLIMATE));
    for (const month of [4, 5, 6, 7]) expect(months[month]).toBeCloseTo(1, 12);
    expect(months[3]).toBe(0);
    expect(months[8]).toBe(0);
  });
  // Kansas State, Upham (copy): zoysiagrass 2 lb split in two, June and mid-July.
  it('Kansas State, zoysiagrass: two halves in June and July', () => {
    const months = inLb(monthlyNeed(need(2, { kind: 'even', fromMonth: 6, toMonth: 7 }), NO_CLIMATE));
    expect([months[5], months[6]].map((value) => value?.toFixed(9))).toEqual(['1.000000000', '1.000000000']);
  });
});

describe('the hold before the spring flush', () => {
  // Monthly normals of Omaha, Nebraska, rounded (from memory, °F). Nebraska Extension (Feehan 2020): the flush runs
  // from late March into early May, nitrogen from May on.
  const NEBRASKA: Climate = {
    monthlyMeanC: [24, 29, 40, 52, 63, 73, 77, 75, 67, 54, 40, 28].map(fromF),
    source: '',
  };
  it('in Nebraska ends about the beginning of May (Feehan 2020)', () => {
    const { hold, basis } = suggestHold('cool-season', NEBRASKA);
    expect(basis).toBe('growth');
    expect(hold.from >= '02-20' && hold.from <= '03-25').toBe(true);
    expect(hold.to >= '04-24' && hold.to <= '05-10').toBe(true);
  });
  // Virginia DCR, cool-season: none in April, at most 0.5 lb in May.
  it('lets at most half a pound through on cool-season grass (Virginia DCR)', () => {
    expect(suggestHold('cool-season', NEBRASKA).hold.maxNKgPerM2 / LB).toBeCloseTo(0.5, 12);
  });
  // NC State, centipedegrass calendar: no nitrogen from March to May; its guide: ½ lb in June.
  it('keeps a warm-season year out of March to May (NC State, centipedegrass)', () => {
    const even = monthlyNeed(need(0.5, { kind: 'even', fromMonth: 3, toMonth: 6 }), NO_CLIMATE) ?? [];
    const held = heldNeed(even, { from: '03-01', to: '05-31', maxNKgPerM2: 0 });
    expect(inLb(held.months).map((value) => Number(value.toFixed(9)))).toEqual([
      0, 0, 0, 0, 0, 0.5, 0, 0, 0, 0, 0, 0,
    ]);
  });
  // Schild and Stone, Nebraska Extension: at least two thirds in fall. A year split evenly over April to October
  // with half a pound until mid May moves towards that, never away.
  it('moves a cool-season year towards fall (Schild and Stone)', () => {
    const even = monthlyNeed(need(3.5, { kind: 'even', fromMonth: 4, toMonth: 10 }), NO_CLIMATE) ?? [];
    const fall = (months: readonly number[]) => months.slice(7).reduce((sum, value) => sum + value, 0);
    const held = heldNeed(even, { from: '03-01', to: '05-15', maxNKgPerM2: 0.5 * LB });
    expect(fall(held.months)).toBeGreaterThan(fall(even));
    expect(held.withinKgPerM2.reduce((sum, value) => sum + value, 0) / LB).toBeCloseTo(0.5, 12);
  });
});

describe('a published table of monthly normals', () => {
  // Western Regional Climate Center, NCDC 1961-1990 monthly normals, San Francisco Mission Dolores (ca7772).
  const TABLE = `Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec Annual
Mean Max. Temperature (F) 56.3 60.0 60.8 62.1 62.7 64.1 64.6 65.6 68.7 68.7 62.7 56.4 62.7
Highest Mean Max. Temperature (F) 60.3 67.0 67.7 69.1 70.8 69.5 69.6 68.2 74.4 74.9 69.1 60.7 65.2
Year Highest Occurred 1976 1988 1988 1989 1984 1981 1988 1976 1984 1988 1986 1976 1988
Mean Temperature (F) 51.1 54.4 54.9 56.0 56.6 58.4 59.1 60.1 62.3 62.0 57.2 51.7 57.0
Lowest Mean Temperature (F) 48.2 50.1 52.1 50.8 53.4 56.2 56.0 57.1 57.2 57.8 53.7 47.2 55.6
Mean Min. Temperature (F) 45.8 48.7 49.0 49.8 50.5 52.6 53.5 54.6 55.9 55.2 51.6 47.0 51.2
Mean Precipitation (in.) 4.06 2.95 3.07 1.29 0.25 0.15 0.04 0.07 0.26 1.26 3.21 3.10 19.71`;
  const WANTED = [51.1, 54.4, 54.9, 56.0, 56.6, 58.4, 59.1, 60.1, 62.3, 62.0, 57.2, 51.7];
  it('is read by its mean, in °F as it says', () => {
    const read = readMonthlyMeans(TABLE, 'metric');
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    for (const [month, f] of WANTED.entries()) expect(read.monthlyMeanC[month]).toBeCloseTo(fromF(f), 9);
  });
  it('is read by the middle of highest and lowest where the mean is not pasted', () => {
    const rows = TABLE.split('\n');
    const read = readMonthlyMeans([rows[0], rows[1], rows[6]].join('\n'), 'us');
    if (!read.ok) throw new Error(read.issues[0]?.message);
    // the published mean is that middle, rounded to a tenth
    for (const [month, f] of WANTED.entries())
      expect(Math.abs((read.monthlyMeanC[month] ?? 0) - fromF(f))).toBeLessThan(0.06);
  });
  it('grows cool-season grass all year', () => {
    const read = readMonthlyMeans(TABLE, 'us');
    if (!read.ok) throw new Error(read.issues[0]?.message);
    const shares = monthlyShares({ kind: 'growth' }, 'cool-season', {
      monthlyMeanC: read.monthlyMeanC,
      source: '',
    });
    expect(Math.min(...(shares ?? []))).toBeGreaterThan(0.02);
  });
});
