import { describe, expect, it } from 'vitest';
import { applyUse, packsOfUse, packsToDrawOn, productOfDose, usesOf } from './applyUse';
import {
  fluidOunces,
  planOn,
  planOne,
  sqft,
  testDose,
  testHoseLiquid,
  testPack,
  testProduct,
  testUse,
  testVisit,
  testZone,
} from './testDose';

const label = testHoseLiquid();

describe('a label with several uses', () => {
  it('is the label itself by its first use, and by another has that one’s rate, carrier and packs', () => {
    expect(applyUse(label, null)).toBe(label);
    const tank = applyUse(label, 'tank');
    expect(tank).toMatchObject({
      id: 'hose',
      useName: 'Backpack',
      applicator: 'tank-sprayer',
      spreadDistanceM: 0.6,
    });
    expect(tank?.analysis).toBe(label.analysis);
    expect(applyUse(label, 'gone')).toBeNull();
    expect(usesOf(label).map((use) => [use.id, use.name])).toEqual([
      [null, 'From the bottle'],
      ['tank', 'Backpack'],
    ]);
    const dose = testDose({ productId: 'hose', useId: 'tank' });
    expect(productOfDose([label], dose)).toEqual(tank);
    expect(productOfDose([], dose)).toBeNull();
  });
  it('opens the packs of the use; all where none are named, and draws on all that may be poured', () => {
    const ids = (packs: readonly { id: string }[]) => packs.map((pack) => pack.id);
    expect(ids(packsOfUse(label))).toEqual(['bottle']);
    expect(ids(packsOfUse({ ...label, packIds: null }))).toEqual(['bottle', 'jug']);
    expect(ids(packsToDrawOn(label))).toEqual(['bottle']);
    expect(ids(packsToDrawOn({ ...label, canPour: true }))).toEqual(['bottle', 'jug']);
  });
});

describe('doses by their use', () => {
  it('count containers of that use alone, from its own rate and carrier', () => {
    // common practice, no source: 3,200 sq ft a bottle; 5 fl oz in 1 gal of water on 1,000 sq ft
    const hose = planOne(label, sqft(5000), { tankL: 15 });
    expect(hose.containers.map((row) => [row.packId, row.open])).toEqual([['bottle', 2]]);
    expect(hose.tank).toBeNull();
    expect(hose.carrierL).toBeNull();
    const tank = planOne(label, sqft(5000), { tankL: 15, useId: 'tank' });
    expect(tank.containers.map((row) => [row.packId, row.open])).toEqual([['jug', 1]]);
    expect(tank.amount.value).toBeCloseTo(fluidOunces(25).value, 12);
    expect(tank.carrierL).toBeCloseTo(fluidOunces(5 * 128).value, 12);
    expect(tank.tank?.fullLoads).toBe(1);
  });
  it('of a use that is gone are left out and told', () => {
    const visit = testVisit({ doses: [testDose({ productId: 'hose', useId: 'gone' })] });
    const plan = planOn([label], visit, [testZone(100)]);
    expect(plan.doses).toEqual([]);
    expect(plan.issues.map((issue) => issue.code)).toEqual(['dose-use-missing']);
  });
  it('are planned though another use of the label is at fault', () => {
    const half = testProduct({
      otherUses: [testUse({ rate: { basis: 'mass-per-area', rateKgPerM2: 0 } })],
    });
    const codesBy = (useId: string | null) =>
      planOn([half], testVisit({ doses: [testDose({ useId })] }), [testZone(100)]).issues.map(
        (issue) => issue.code,
      );
    expect(codesBy(null)).toEqual([]);
    expect(codesBy('u-1')).toEqual(['rate-not-positive']);
  });
  it('draw on the shelf by their packs: a bottle does not fill the tank unless it may be poured', () => {
    const short = (onHand: Record<string, number>, canPour: boolean) => {
      const doses = [null, 'tank'].map((useId, i) => testDose({ id: `d-${i}`, productId: 'hose', useId }));
      const plan = planOn([testHoseLiquid({ onHand, canPour })], testVisit({ doses }), [
        testZone(sqft(3200)),
      ]);
      return plan.issues.flatMap((issue) => (issue.code === 'stock-short' ? issue.place.doseId : []));
    };
    // the bottle dose takes 32 fl oz, the tank dose 16
    expect(short({ bottle: 1, jug: 0.125 }, false)).toEqual([]);
    expect(short({ bottle: 2, jug: 0.1 }, false)).toEqual(['d-1']);
    expect(short({ bottle: 2, jug: 0.1 }, true)).toEqual([]);
    expect(short({ bottle: 1.2, jug: 0.05 }, true)).toEqual(['d-1']);
  });
  it('take first what no later dose can use', () => {
    // the first dose may open both sizes, the second the small one alone
    const product = testProduct({
      packs: [testPack({ unit: 'kg', value: 1 }, 'box'), testPack({ unit: 'kg', value: 4 }, 'bag')],
      otherUses: [testUse({ packIds: ['box'] })],
      onHand: { box: 1, bag: 1 },
    });
    const doses = [testDose({ id: 'a' }), testDose({ id: 'b', useId: 'u-1' })];
    const told = (areaM2: number) =>
      planOn([product], testVisit({ doses }), [testZone(areaM2)]).issues.map((issue) => issue.place.doseId);
    // 100 m²: 2 kg of the bag, then 1 kg of the box; 150 m²: 3 kg and 1.5 kg
    expect(told(100)).toEqual([]);
    expect(told(150)).toEqual(['b']);
  });
});
