import { describe, expect, it } from 'vitest';
import { calibrationResult } from '../../src/pace/calibrate/calibrationResult';
import { flowOfFill } from '../../src/pace/calibrate/flow';
import { judgeRate } from '../../src/pace/calibrate/judgeRate';
import { meanOfReadings } from '../../src/pace/calibrate/readings';
import {
  courseLength,
  productPerSpray,
  rateOfCourse,
  SMALL_PLOT_M2,
} from '../../src/pace/calibrate/sprayOutput';
import { swathOfPans } from '../../src/pace/calibrate/swathOfPans';
import { speedOfWalk } from '../../src/pace/calibrate/walk';
import { paceOfDose } from '../../src/pace/paceOfDose';
import { tankLoads } from '../../src/plan/tankLoads';
import { planOne, testProduct } from '../../src/plan/testDose';
import {
  KG_PER_LB,
  L_PER_FLOZ,
  L_PER_GAL,
  L_PER_PT,
  M_PER_FT,
  M_PER_IN,
  M_PER_MILE,
  M2_PER_1000_SQFT,
  M2_PER_ACRE,
  M2_PER_HA,
  M2_PER_SQFT,
} from '../../src/units/factors';
import { formatAmountRate } from '../../src/units/format';
import { figureText } from '../../src/words/equipmentWords';
import { newEquipment } from '../../src/yard/defaults';

/*
 * Calibration as extension services print it. Every value is held as printed, with its rounding.
 */

const MPH = M_PER_MILE / 3600;
const KMH = 1 / 3.6;
const GPA = L_PER_GAL / M2_PER_ACRE;
const GAL_PER_1000 = L_PER_GAL / M2_PER_1000_SQFT;
const GPM = L_PER_GAL / 60;
const FLOZ_PER_MIN = L_PER_FLOZ / 60;
const about = {
  equipment: newEquipment('e', 'tank-sprayer', { swathM: 6 * M_PER_FT }),
  wantedKgPerM2: null,
  units: 'us',
} as const;

/** A value as it is printed: the same digits after rounding at that place. */
function expectPrinted(value: number, printed: string): void {
  const decimals = printed.split('.')[1]?.length ?? 0;
  expect(value.toFixed(decimals)).toBe(printed);
}

/** The walk, m/s, of a dose mixed in a tank, by what comes out, L/s, the spray to be laid, L/m², and the swath. */
function walkAt(flowLPerS: number, sprayLPerM2: number, swathM: number): number {
  const mixed = testProduct({
    form: 'liquid-concentrate',
    applicator: 'tank-sprayer',
    rate: { basis: 'volume-per-area', rateLPerM2: sprayLPerM2 / 1000 },
    carrierLPerM2: sprayLPerM2,
    carrierIsTotal: true,
    densityKgPerL: 1.2,
  });
  const sprayer = newEquipment('e', 'tank-sprayer', { flowLPerS, swathM });
  const pace = paceOfDose(planOne(mixed, 100), sprayer, { units: 'us', stepM: null }, false);
  if (pace.source !== 'flow' || pace.speedMPerS === null) throw new Error('no walk by the flow');
  return pace.speedMPerS;
}

describe('1/128 acre', () => {
  // Albany County (Wyoming) Weed & Pest; Larimer County (Colorado): 340 sq ft, 18.5 by 18.5 ft
  it('the plot is 340 sq ft, a square of 18.5 ft each way to within an inch', () => {
    expectPrinted(SMALL_PLOT_M2 / M2_PER_SQFT, '340');
    expect(Math.sqrt(SMALL_PLOT_M2) / M_PER_FT).toBeCloseTo(18.45, 2);
  });

  // NC State Extension, backpack sprayer worksheet: 6 ft, 57 ft; row widths of the ounce method as printed by several
  // services: 20 in 204 ft, 30 in 136 ft, 10 in 408 ft; 10 ft, 34 ft by hand
  it.each([
    ['6 ft', 6 * M_PER_FT, '57'],
    ['10 ft', 10 * M_PER_FT, '34'],
    ['20 in', 20 * M_PER_IN, '204'],
    ['30 in', 30 * M_PER_IN, '136'],
    ['10 in', 10 * M_PER_IN, '408'],
  ])('a course %s wide', (_, widthM, printed) => {
    expectPrinted(courseLength(SMALL_PLOT_M2, widthM) / M_PER_FT, printed);
  });

  // the plots as they are printed, rounded: 57 ft by 6 ft, 18.5 ft square, 340 sq ft
  it.each([
    ['NC State Extension worksheet: mean of 16 and 18 s, 7.5 fl oz', [57, 6], [16, 18], 7.5, '7.5'],
    ['UF/IFAS Alachua County, 2022: 30 s, 25 fl oz', [18.5, 18.5], [30], 25, '25'],
    ['Kansas State University, hand sprayer worksheet (Wolf): 20 s, 31 fl oz', [34, 10], [20], 31, '31'],
    ['Mesa County (Colorado), handgun: 75 s, 150 fl oz', [34, 10], [75], 150, '150'],
  ] as const)('%s', (_, [lengthFt, widthFt], times, floz, printed) => {
    const readings = {
      widthM: widthFt * M_PER_FT,
      lengthM: lengthFt * M_PER_FT,
      caughtL1: floz * L_PER_FLOZ,
      ...Object.fromEntries(times.map((time, i) => [`timeS${i + 1}`, time])),
    };
    const { figures } = calibrationResult('small-plot', readings, about);
    const rate = figures.find((figure) => figure.key === 'spray-rate');
    expectPrinted((rate?.value ?? 0) / GPA, printed);
  });

  // NC State Extension worksheet: mean of two trips
  it('16 and 18 s are 17 s', () => expect(meanOfReadings([16, 18])?.mean).toBe(17));
});

describe('mixing', () => {
  // NC State Extension worksheet prints 1.06 (cut off, not rounded) and 3.2 fl oz for 3 gal
  it('8 fl oz an acre at 7.5 gal an acre', () => {
    const perL = productPerSpray((8 * L_PER_FLOZ) / M2_PER_ACRE, 7.5 * GPA);
    expectPrinted((perL * L_PER_GAL) / L_PER_FLOZ - 0.005, '1.06');
    expectPrinted((perL * 3 * L_PER_GAL) / L_PER_FLOZ, '3.2');
  });
  // by hand: 32 / 40 fl oz in a gallon, at 29.57 mL 24 mL
  it('32 fl oz an acre at 40 gal an acre', () => {
    const perL = productPerSpray((32 * L_PER_FLOZ) / M2_PER_ACRE, 40 * GPA);
    expectPrinted((perL * L_PER_GAL) / L_PER_FLOZ, '0.8');
    expectPrinted(perL * L_PER_GAL * 1000, '24');
  });
  // by hand: 3 / 65 pt in a gallon, at 16 fl oz 0.74 fl oz
  it('3 pt an acre at 65 gal an acre', () => {
    const perL = productPerSpray((3 * L_PER_PT) / M2_PER_ACRE, 65 * GPA);
    expectPrinted((perL * L_PER_GAL) / L_PER_PT, '0.046');
    expectPrinted((perL * L_PER_GAL) / L_PER_FLOZ, '0.74');
  });
  // Mesa County (Colorado): 25 gal at 150 gal an acre treat 1/6 acre
  it('25 gal at 150 gal an acre', () => {
    const rate = { perM2: { unit: 'L', value: 1e-5 }, kgPerM2: null, lPerM2: 1e-5 } as const;
    const spray = { totalLPerM2: 150 * GPA, waterLPerM2: 150 * GPA };
    const { fullLoads, full, last } = tankLoads(rate, spray, 25 * L_PER_GAL, M2_PER_ACRE / 2);
    expect([fullLoads, last]).toEqual([3, null]);
    expect((full?.areaM2 ?? 0) / M2_PER_ACRE).toBeCloseTo(1 / 6, 12);
  });
  // OSU-OKC, Gerken 2013: 3.6 pt an acre are 1.3 fl oz per 1,000 sq ft; 40 gal an acre are 0.92 gal
  it('per acre and per 1,000 sq ft', () => {
    const small = formatAmountRate({ unit: 'L', value: (3.6 * L_PER_PT) / M2_PER_ACRE }, 'us');
    expect(small).toMatch(/fl\soz per 1,000\ssq\sft$/);
    expectPrinted(Number.parseFloat(small), '1.3');
    const spray = figureText('spray-rate', 40 * GPA, 'us');
    expect(spray).toMatch(/fl\soz per 1,000\ssq\sft \(40\sgal an acre\)$/);
    // 128 fl oz in a gallon
    expectPrinted(Number.parseFloat(spray) / 128, '0.92');
  });
});

describe('flow, speed and width', () => {
  // UF/IFAS Marion County, 2017: 16 fl oz a minute are 0.125 gal; Oklahoma State: 101 fl oz, 0.79; Florida examinations manual: 20 fl oz, .15 (cut off)
  it.each([
    [16, 0.125, 3],
    [101, 0.79, 2],
    [20, 0.156, 3],
  ])('%d fl oz a minute', (floz, gal, digits) => {
    expect(flowOfFill(floz * L_PER_FLOZ, 60) / GPM).toBeCloseTo(gal, digits);
  });
  // Albany County (Wyoming): 3.75 GPM (480 fl oz a minute), 5 mph, 222 in: 20 GPA, by 5940 and by 46.4
  it('5940 form', () => {
    expectPrinted(walkAt(3.75 * GPM, 20 * GPA, 222 * M_PER_IN) / MPH, '5');
    expectPrinted(walkAt(480 * FLOZ_PER_MIN, 20 * GPA, 222 * M_PER_IN) / MPH, '5');
    expect(walkAt(GPM, 5940 * GPA, M_PER_IN) / MPH).toBeCloseTo(1, 9);
    expect(walkAt(FLOZ_PER_MIN, 46.4 * GPA, M_PER_IN) / MPH).toBeCloseTo(1, 3);
  });
  // Mesa County (Colorado): 495 with the swath in feet
  it('495 form', () => expect(walkAt(GPM, 495 * GPA, M_PER_FT) / MPH).toBeCloseTo(1, 9));
  // NC State Extension, turfgrass boom sprayers: 20 GPA at 3 mph are 10 GPA at 6 mph
  it('twice the speed, half the rate', () => {
    const flow = 20 * GPA * 3 * MPH * M_PER_FT;
    expect(walkAt(flow, 20 * GPA, M_PER_FT) / MPH).toBeCloseTo(3, 9);
    expect(walkAt(flow, 10 * GPA, M_PER_FT) / MPH).toBeCloseTo(6, 9);
  });
  // UF/IFAS Marion County, 2017, and Oklahoma State: mph = ft * 60 / (s * 88)
  it.each([
    [200, 45, '3'],
    [200, 27, '5'],
  ])('%d ft in %d s', (ft, seconds, mph) => expectPrinted(speedOfWalk(ft * M_PER_FT, seconds) / MPH, mph));
  // by hand: 360 / 90 = 4 km/h
  it('100 m in 90 s', () => expect(speedOfWalk(100, 90) / KMH).toBeCloseTo(4, 12));
  // by hand: five catches of a minute, 46 m of walk, 0.51 m wide: 1.008 L, 1.01 L on 23.46 m² are 430.52 L/ha
  it('litres per hectare from litres a minute', () => {
    const mean = meanOfReadings([1.2, 1, 1, 0.92, 0.92])?.mean ?? 0;
    expectPrinted(mean, '1.01');
    expectPrinted(46 * 0.51, '23.46');
    expectPrinted(walkAt(1.01 / 60, 430.52 / M2_PER_HA, 0.51) * 60, '46.00');
  });
  // by hand: 0.75 m by 33.3 m are 25 m²; 200 L/ha are 0.5 L on it, in 50 s 10 mL a second and 0.67 m/s (2.4 km/h)
  it('25 m² at 200 L/ha', () => {
    expectPrinted(courseLength(25, 0.75), '33.3');
    expectPrinted(walkAt(0.01, 200 / M2_PER_HA, 0.75), '0.67');
    expectPrinted(walkAt(0.01, 200 / M2_PER_HA, 0.75) / KMH, '2.4');
  });
});

describe('known area', () => {
  // by hand: 1.5 · 43.56 = 65.3 gal an acre
  it('1.5 gal on 1,000 sq ft', () =>
    expectPrinted(rateOfCourse(1.5 * L_PER_GAL, M2_PER_1000_SQFT) / GPA, '65'));
  // pesticidestewardship.org, spray gun: 5 ft wide, 200 ft long; 77, 79 and 78 s; 5.25 gal in 78 s: 5.25 gal per 1,000 sq ft, 228.7 gal an acre
  it('spray gun on 1,000 sq ft', () => {
    expectPrinted(courseLength(M2_PER_1000_SQFT, 5 * M_PER_FT) / M_PER_FT, '200');
    const readings = {
      lengthM: 200 * M_PER_FT,
      widthM: 5 * M_PER_FT,
      timeS1: 77,
      timeS2: 79,
      timeS3: 78,
      caughtL1: 5.25 * L_PER_GAL,
    };
    const { figures, issues } = calibrationResult('small-plot', readings, about);
    const rate = figures.find((figure) => figure.key === 'spray-rate')?.value ?? 0;
    expectPrinted(rate / GAL_PER_1000, '5.25');
    expectPrinted(rate / GPA, '228.7');
    expect(figures.find((figure) => figure.key === 'flow')?.value).toBeCloseTo((5.25 * L_PER_GAL) / 78, 12);
    expect(issues).toEqual([]);
  });
  // pesticidestewardship.org, hose-end on turf: 250 sq ft in 20 s, 1.25 gal in that time: 5 gal per 1,000 sq ft
  it('hose-end plot of 250 sq ft', () => {
    expect(rateOfCourse(1.25 * L_PER_GAL, 250 * M2_PER_SQFT) / GAL_PER_1000).toBeCloseTo(5, 12);
    const flow = flowOfFill(1.25 * L_PER_GAL, 20);
    // in passes 5 ft wide those are 50 ft of walk in 20 s
    expect(walkAt(flow, 5 * GAL_PER_1000, 5 * M_PER_FT) / M_PER_FT).toBeCloseTo(50 / 20, 9);
  });
  // Florida examinations manual: 12 gal on 660 ft, swath 10 ft: 79.2 gal an acre
  it('12 gal on 660 ft at 10 ft', () => {
    expectPrinted(rateOfCourse(12 * L_PER_GAL, 660 * 10 * M2_PER_SQFT) / GPA, '79.2');
  });
  // NSW Department of Primary Industries, 2009: 10 m² is 1/1000 ha; ten times the catch is L per 100 m²
  it('10 m²', () => {
    const readings = { lengthM: 5, widthM: 2, caughtL1: 0.4, timeS1: 30 };
    const { figures } = calibrationResult('small-plot', readings, about);
    const rate = figures.find(({ key }) => key === 'spray-rate')?.value ?? 0;
    expect(figureText('spray-rate', rate, 'metric')).toMatch(/^4\sL per 100\sm² \(400\sL\/ha\)$/);
  });
});

describe('spreaders', () => {
  const LB_PER_1000 = KG_PER_LB / M2_PER_1000_SQFT;
  // UMass Extension, rotary spreaders: good from 4.75 to 5.25 for 5.00; half of it in each of two directions
  it.each([
    [4.75, true],
    [5.25, true],
    [4.74, false],
    [5.26, false],
  ])('%d lb for 5.00 lb per 1,000 sq ft', (lb, isGood) => {
    expect(judgeRate(lb * LB_PER_1000, 5 * LB_PER_1000).isGood).toBe(isGood);
    expect(judgeRate((lb / 2) * LB_PER_1000, 2.5 * LB_PER_1000).isGood).toBe(isGood);
  });
  // by hand: half a pound on 50 sq ft, twenty times that on 1,000
  it('drop spreader, half a pound on 1 ft by 50 ft', () => {
    const readings = { widthM: M_PER_FT, lengthM: 50 * M_PER_FT, caughtKg1: KG_PER_LB / 2 };
    const equipment = newEquipment('e', 'drop-spreader');
    const wanted = { equipment, wantedKgPerM2: 10 * LB_PER_1000, units: 'us' } as const;
    const result = calibrationResult('catch', readings, wanted);
    expect((result.settingKgPerM2 ?? 0) / LB_PER_1000).toBeCloseTo(10, 10);
    expect(result.issues.map((issue) => issue.code)).toEqual(['rate-good']);
    const short = calibrationResult('catch', { ...readings, caughtKg1: 0.46 * KG_PER_LB }, wanted);
    expect(short.issues.map((issue) => issue.code)).toEqual(['rate-off']);
    expect(short.issues[0]?.message).toContain('8\u00a0% less');
  });
  // National Gardening Association: 100 sq ft with spreaders of 1.5, 2 and 3 ft: 66.6 (cut off), 50, 33.3 ft
  it.each([
    [1.5, 66.7],
    [2, 50],
    [3, 33.3],
  ])('100 sq ft at %d ft', (ft, length) => {
    expect(courseLength(100 * M2_PER_SQFT, ft * M_PER_FT) / M_PER_FT).toBeCloseTo(length, 1);
  });
  // Fundamentals of Tropical Turf Management, appendix: 3 m by 33.3 m are about 100 m²
  it('100 m² at 3 m', () => expectPrinted(courseLength(100, 3), '33.3'));
  // Landschoot, Penn State, 2016: pans 1 ft apart; the swath is the distance between those that hold half of the middle
  it('pans with half of the middle 5 ft out on both sides give a swath of 10 ft', () => {
    const pans = [1, 4, 5, 6, 7, 9, 10, 9, 8, 7, 6, 5, 1];
    const even = [1, 5, 6, 7, 8, 9, 10, 9, 8, 7, 6, 5, 1];
    expect((swathOfPans(even, M_PER_FT).swathM ?? 0) / M_PER_FT).toBeCloseTo(10, 12);
    expect((swathOfPans(pans, M_PER_FT).leftM ?? 0) / M_PER_FT).toBeCloseTo(4, 12);
  });
});
