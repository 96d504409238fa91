import { describe, expect, it } from 'vitest';
import { levelOf, momentAt } from '../../src/cover/marks/momentAt';
import { runOutMarks } from '../../src/cover/marks/runOutMarks';
import { sweepBox, testCoverage } from '../../src/cover/marks/testWalk';
import { vesselsOf } from '../../src/cover/marks/vesselsOf';
import { walkTimeline } from '../../src/cover/marks/walkTimeline';
import type { Leg, Vessel } from '../../src/cover/passTypes';
import {
  fluidOunces,
  lbPer1000,
  nitrogenRate,
  planOne,
  sqft,
  testAnalysis,
  testHoseLiquid,
  testLabel,
  testPack,
  testProduct,
} from '../../src/plan/testDose';
import {
  KG_PER_LB,
  L_PER_FLOZ,
  L_PER_GAL,
  M_PER_FT,
  M2_PER_1000_SQFT,
  M2_PER_ACRE,
  M2_PER_SQFT,
} from '../../src/units/factors';
import { newEquipment } from '../../src/yard/defaults';

/*
 * Published worked examples of sprayer and spreader calibration, walked: loads, bags and courses as the sources
 * print them. What is printed rounded is tested at its own digits.
 */

const ft = (count: number) => count * M_PER_FT;
const lb = (value: number) => ({ unit: 'kg', value: value * KG_PER_LB }) as const;
const gal = (value: number) => ({ unit: 'L', value: value * L_PER_GAL }) as const;
const spreader = newEquipment('e-1', 'broadcast-spreader');
const sqftOf = ({ areaM2 }: Vessel) => areaM2 / M2_PER_SQFT;

/** A lawn of parallel passes, feet. */
const lawnOf = (widthFt: number, lengthFt: number, swathFt: number, coat: 1 | 2 = 1) =>
  sweepBox({
    zoneId: 'lawn',
    x0: 0,
    y0: 0,
    widthM: ft(widthFt),
    lengthM: ft(lengthFt),
    swathM: ft(swathFt),
    coat,
  });
/** Feet walked with product going out until a mark. */
function feetTo(
  legs: readonly Leg[],
  mark: { readonly legIndex: number; readonly alongM: number } | undefined,
) {
  if (!mark) return Number.NaN;
  const before = legs.slice(0, mark.legIndex).filter(({ knots }) => knots.length > 0);
  return (before.reduce((sum, leg) => sum + leg.lengthM, 0) + mark.alongM) / M_PER_FT;
}

describe('tank loads', () => {
  /*
   * NC State Extension, backpack sprayer worksheet: 6 ft wide, 7.5 gal an acre; 8 fl oz an acre are 1.07 fl oz
   * a gallon (printed 1.06), so a 3 gal load takes 3.2 fl oz.
   */
  const perAcre = 1 / M2_PER_ACRE;
  const product = testProduct({
    form: 'liquid-concentrate',
    rate: { basis: 'volume-per-area', rateLPerM2: 8 * L_PER_FLOZ * perAcre },
    applicator: 'tank-sprayer',
    carrierLPerM2: 7.5 * L_PER_GAL * perAcre,
    carrierIsTotal: true,
    densityKgPerL: 1,
    packs: [testPack(fluidOunces(32))],
  });
  const dose = planOne(product, M2_PER_ACRE, { tankL: 3 * L_PER_GAL });
  const vessels = vesselsOf(dose, newEquipment('e-2', 'tank-sprayer'), null);

  it('NC State: 3.2 fl oz a load, so 2.5 loads an acre', () => {
    expect((dose.tank?.full?.product.value ?? 0) / L_PER_FLOZ).toBeCloseTo(3.2, 6);
    expect(vessels.map(({ areaM2 }) => areaM2 / M2_PER_ACRE)).toEqual([
      expect.closeTo(3 / 7.5, 9),
      expect.closeTo(3 / 7.5, 9),
      expect.closeTo(1.5 / 7.5, 9),
    ]);
    expect(vessels.at(-1)?.start.value).toBeCloseTo(gal(1.5).value, 9);
  });

  it('NC State: on passes 6 ft wide a load runs out after 0.4 acre / 6 ft = 2,904 ft of walking', () => {
    // one acre of 198 ft by 220 ft: 33 passes
    const legs = lawnOf(198, 220, 6);
    const zones = [{ zoneId: 'lawn', areaM2: M2_PER_ACRE }];
    const marks = runOutMarks(legs, zones, 1, vessels);
    const ends = marks.filter(({ left }) => left === 0);
    expect(ends.map((mark) => feetTo(legs, mark))).toEqual([
      expect.closeTo(2904, 3),
      expect.closeTo(5808, 3),
      expect.closeTo(7260, 3),
    ]);
    // the last load begins at one half of the tank: its only mark before it runs out is the quarter
    expect(marks.filter(({ vessel }) => vessel === 2).map(({ left }) => left)).toEqual([0.25, 0]);
  });

  it('UF/IFAS Marion 2017: 200 ft in 27 s is 5.05 mph; the clock of a walk agrees', () => {
    const legs = lawnOf(6, 200, 6);
    // 1 mph is 88 ft a minute (turfgrass professional maths worksheet)
    const speedMPerS = (5.05 * ft(88)) / 60;
    const pace = { speedMPerS, shutSpeedMPerS: speedMPerS, turnS: 0 };
    const { totalS } = walkTimeline(
      testCoverage(legs, [], []),
      [{ zoneId: 'lawn', areaM2: sqft(1200) }],
      pace,
      ft(6),
    );
    expect(totalS).toBeCloseTo(27, 1);
  });
});

describe('bags and hopper fills', () => {
  it('Univ. of Nebraska-Lincoln: 28-3-6 at 1 lb N on 6,000 sq ft, 21.42 lb: one bag of 20 lb and some of a second', () => {
    const product = testLabel({
      analysis: testAnalysis(28, 3, 6),
      rate: nitrogenRate(1),
      packs: [testPack(lb(20), 'bag')],
    });
    const [first, second] = vesselsOf(planOne(product, sqft(6000)), spreader, null);
    const taken = [first, second].map((vessel) => (vessel?.taken.value ?? 0) / KG_PER_LB);
    expect(taken[0]).toBeCloseTo(20, 9);
    expect((taken[0] ?? 0) + (taken[1] ?? 0)).toBeCloseTo(21.42, 1);
  });

  it('Cornell Cooperative Extension, Suffolk: a 30 lb bag of 24-2-8 covers about 7,000 sq ft at 1 lb N (exact 7,200)', () => {
    const product = testLabel({
      analysis: testAnalysis(24, 2, 8),
      rate: nitrogenRate(1),
      packs: [testPack(lb(30), 'bag')],
    });
    const [bag] = vesselsOf(planOne(product, sqft(10_000)), spreader, null);
    expect(bag && sqftOf(bag)).toBeCloseTo(7200, 3);
  });

  it('LSU AgCenter: at 5 lb per 1,000 sq ft a swath of 10 ft uses 5 lb in 100 ft', () => {
    const product = testLabel({ rate: { basis: 'mass-per-area', rateKgPerM2: lbPer1000(5) } });
    const dose = planOne(product, sqft(5000));
    const vessels = vesselsOf(dose, { ...spreader, holds: lb(20) }, null);
    const legs = lawnOf(50, 100, 10);
    const marks = runOutMarks(
      legs,
      dose.zones.map(({ areaM2 }) => ({ zoneId: 'lawn', areaM2 })),
      1,
      vessels,
    );
    // 20 lb in the hopper: a quarter gone for each 100 ft
    expect(marks.slice(0, 4).map((mark) => [mark.left, feetTo(legs, mark)])).toEqual([
      [0.75, expect.closeTo(100, 6)],
      [0.5, expect.closeTo(200, 6)],
      [0.25, expect.closeTo(300, 6)],
      [0, expect.closeTo(400, 6)],
    ]);
  });

  it('UMass Amherst, Rotary Spreader Calibration: 5 lb per 1,000 sq ft in two passes at right angles, 2.5 lb each', () => {
    const product = testLabel({ rate: { basis: 'mass-per-area', rateKgPerM2: lbPer1000(5) } });
    const vessels = vesselsOf(planOne(product, sqft(1000)), { ...spreader, holds: lb(5) }, null);
    const coats = [...lawnOf(50, 20, 10), ...lawnOf(50, 20, 10, 2)];
    const marks = runOutMarks(coats, [{ zoneId: 'lawn', areaM2: M2_PER_1000_SQFT }], 2, vessels);
    const half = marks.find(({ left }) => left === 0.5);
    expect(half?.doneM2).toBeCloseTo(M2_PER_1000_SQFT / 2, 9);
    // where the first coat ends: 1,000 sq ft of 10 ft are 100 ft
    expect(feetTo(coats, half)).toBeCloseTo(100, 6);
    expect((vessels[0]?.taken.value ?? 0) / 2 / KG_PER_LB).toBeCloseTo(2.5, 9);
  });
});

describe('the bottle on the hose', () => {
  // common practice, no source: a bottle for 3,200 sq ft is about a third gone after 1,000 sq ft (31.25 %)
  const legs = lawnOf(50, 64, 10);
  const zones = [{ zoneId: 'lawn', areaM2: sqft(3200) }];
  const vessels = vesselsOf(planOne(testHoseLiquid(), sqft(3200)), newEquipment('e-3', 'hose-end'), null);

  it('1,000 of 3,200 sq ft: 31.25 % gone', () => {
    expect(1 - levelOf(vessels, 0, sqft(1000))).toBeCloseTo(0.3125, 9);
  });

  // pesticidestewardship.org, hose-end calibration: 250 sq ft in 20 s
  it('250 sq ft in 20 s: the clock stands at 80 s when 1,000 sq ft are done', () => {
    const pace = { speedMPerS: ft(25) / 20, shutSpeedMPerS: 1e9, turnS: 0 };
    const dose = testCoverage(legs, vessels, runOutMarks(legs, zones, 1, vessels));
    const moment = momentAt(walkTimeline(dose, zones, pace, ft(10)), 80);
    expect((moment?.doneM2 ?? 0) / M2_PER_SQFT).toBeCloseTo(1000, 3);
    expect(1 - (moment?.level ?? 0)).toBeCloseTo(0.3125, 6);
  });
});
