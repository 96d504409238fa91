import { describe, expect, it } from 'vitest';
import {
  flozPer1000,
  fluidOunces,
  planOne,
  sqft,
  testHoseLiquid,
  testLabel,
  testPack,
  testProduct,
} from '../../plan/testDose';
import { KG_PER_LB, L_PER_FLOZ, L_PER_GAL, M2_PER_1000_SQFT, M2_PER_SQFT } from '../../units/factors';
import { newEquipment } from '../../yard/defaults';
import type { Equipment } from '../../yard/types';
import type { Vessel } from '../passTypes';
import { tooManyFills } from './mostVessels';
import { packsOfFills } from './packsOfFills';
import { drawnFrom, vesselsOf } from './vesselsOf';

const hose = newEquipment('e-1', 'hose-end');
const broadcast = (fields: Partial<Equipment> = {}) => newEquipment('e-2', 'broadcast-spreader', fields);
const lb = (value: number) => ({ unit: 'kg', value: value * KG_PER_LB }) as const;
const areaOf = (vessels: readonly Vessel[]) => vessels.reduce((sum, { areaM2 }) => sum + areaM2, 0);
const sqftOf = ({ areaM2 }: Vessel) => areaM2 / M2_PER_SQFT;
const flozOf = ({ start, taken }: Vessel) => [start.value / L_PER_FLOZ, taken.value / L_PER_FLOZ];

describe('bottles on the hose', () => {
  // common practice, no source: one ready-to-use bottle covers 3,200 sq ft
  it('5,000 sq ft take one bottle and 56.25 % of a second', () => {
    const vessels = vesselsOf(planOne(testHoseLiquid(), sqft(5000)), hose, null);
    expect(vessels.map(({ kind, number, packId }) => [kind, number, packId])).toEqual([
      ['container', 1, 'bottle'],
      ['container', 2, 'bottle'],
    ]);
    expect(vessels.map(sqftOf)).toEqual([expect.closeTo(3200, 6), expect.closeTo(1800, 6)]);
    expect(vessels.map(flozOf)[1]).toEqual([expect.closeTo(32, 9), expect.closeTo(18, 9)]);
    expect(areaOf(vessels)).toBeCloseTo(sqft(5000), 9);
  });

  it('exactly 3,200 sq ft are one bottle, used up', () => {
    const vessels = vesselsOf(planOne(testHoseLiquid(), sqft(3200)), hose, null);
    expect(vessels.length).toBe(1);
    expect(vessels[0]?.taken).toEqual(vessels[0]?.start);
  });

  it('an opened bottle on the shelf goes first, then a closed one, then a new one', () => {
    // 0.4 of a bottle does 1,280 sq ft, a closed one 3,200, and 520 are left for a new one
    const vessels = vesselsOf(planOne(testHoseLiquid(), sqft(5000)), hose, { bottle: 1.4 });
    expect(vessels.map(sqftOf)).toEqual([
      expect.closeTo(1280, 3),
      expect.closeTo(3200, 3),
      expect.closeTo(520, 3),
    ]);
    expect(vessels.map(flozOf)).toEqual([
      [expect.closeTo(12.8, 6), expect.closeTo(12.8, 6)],
      [expect.closeTo(32, 6), expect.closeTo(32, 6)],
      [expect.closeTo(32, 6), expect.closeTo(5.2, 6)],
    ]);
  });

  it('an opened bottle that is enough is not emptied', () => {
    const [only, ...others] = vesselsOf(planOne(testHoseLiquid(), sqft(1000)), hose, { bottle: 0.5 });
    expect(others).toEqual([]);
    expect(only && flozOf(only)).toEqual([expect.closeTo(16, 6), expect.closeTo(10, 6)]);
  });

  it('a dose that is done is not drawn from what is left on the shelf after it', () => {
    const dose = planOne(testHoseLiquid(), sqft(1000));
    const done = { ...dose, dose: { ...dose.dose, taken: { bottle: 0.3125 } } };
    expect(vesselsOf(done, hose, { bottle: 0.6875 }).map(flozOf)).toEqual([
      [expect.closeTo(32, 9), expect.closeTo(10, 9)],
    ]);
  });

  it('a jar of its own is filled again and again; one of the size of the bottle is the bottle', () => {
    const dose = planOne(testHoseLiquid(), sqft(5000));
    const jars = vesselsOf(dose, { ...hose, holds: fluidOunces(20) }, null);
    // 50 fl oz in all
    expect(jars.map(({ kind, taken }) => [kind, taken.value / L_PER_FLOZ])).toEqual([
      ['hopper-fill', expect.closeTo(20, 9)],
      ['hopper-fill', expect.closeTo(20, 9)],
      ['hopper-fill', expect.closeTo(10, 9)],
    ]);
    expect(vesselsOf(dose, { ...hose, holds: fluidOunces(32) }, null).map(({ kind }) => kind)).toEqual([
      'container',
      'container',
    ]);
  });
});

describe('tank loads', () => {
  const backpack = testProduct({
    form: 'liquid-concentrate',
    rate: { basis: 'volume-per-area', rateLPerM2: flozPer1000(5) },
    applicator: 'tank-sprayer',
    carrierLPerM2: L_PER_GAL / M2_PER_1000_SQFT,
    carrierIsTotal: true,
    densityKgPerL: 1.2,
    packs: [testPack(fluidOunces(128))],
  });
  // common practice, no source: 1 gal of spray on 1,000 sq ft, so a 4 gal tank does 4,000 sq ft
  it.each([
    ['the tank of the visit', 4 * L_PER_GAL, null],
    ['the own tank of the sprayer', undefined, { unit: 'L', value: 4 * L_PER_GAL } as const],
  ])('10,000 sq ft are two full loads and one of 2 gal: %s', (_, tankL, holds) => {
    const dose = planOne(backpack, sqft(10000), tankL === undefined ? {} : { tankL });
    const vessels = vesselsOf(dose, newEquipment('e-3', 'tank-sprayer', { holds }), { 'pack-1': 0.3 });
    expect(vessels.map(({ kind, number }) => [kind, number])).toEqual([
      ['tank-load', 1],
      ['tank-load', 2],
      ['tank-load', 3],
    ]);
    expect(vessels.map(sqftOf)).toEqual([
      expect.closeTo(4000, 6),
      expect.closeTo(4000, 6),
      expect.closeTo(2000, 6),
    ]);
    expect(vessels.map(({ full, start }) => [full.value / L_PER_GAL, start.value / L_PER_GAL])).toEqual([
      [4, 4],
      [4, 4],
      [4, expect.closeTo(2, 9)],
    ]);
    expect(areaOf(vessels)).toBeCloseTo(sqft(10000), 9);
  });

  it('the own tank of the sprayer goes before the tank of the visit', () => {
    const dose = planOne(backpack, sqft(10000), { tankL: 4 * L_PER_GAL });
    const own = newEquipment('e-3', 'tank-sprayer', { holds: { unit: 'L', value: 2 * L_PER_GAL } });
    expect(vesselsOf(dose, own, null).map(({ full }) => full.value / L_PER_GAL)).toEqual([2, 2, 2, 2, 2]);
  });

  it('a bottle on the hose and a sprayer that draws product empty no tank', () => {
    const dose = planOne(backpack, sqft(10000), { tankL: 4 * L_PER_GAL });
    const drawing = newEquipment('e-3', 'tank-sprayer', {
      productShare: 0.02,
      holds: { unit: 'L', value: 4 * L_PER_GAL },
    });
    for (const equipment of [hose, drawing])
      expect(vesselsOf(dose, equipment, null).map(({ kind }) => kind)).toEqual(['container']);
    // from a can by hand, filled where the visit mixes
    const kinds = vesselsOf(dose, newEquipment('e-4', 'by-hand'), null).map(({ kind }) => kind);
    expect(kinds).toEqual(['tank-load', 'tank-load', 'tank-load']);
  });

  it('a sprayer whose tank nobody told goes by containers', () => {
    const vessels = vesselsOf(planOne(backpack, sqft(10000)), newEquipment('e-3', 'tank-sprayer'), null);
    expect(vessels.map(({ kind }) => kind)).toEqual(['container']);
  });
});

describe('spreaders', () => {
  // 20-5-10 at 1 lb N per 1,000 sq ft: 5 lb per 1,000 sq ft (UMass Amherst, Rotary Spreader Calibration)
  const dose = planOne(testLabel(), sqft(12000));

  it('bags of 50 lb where the hopper is not told', () => {
    const vessels = vesselsOf(dose, broadcast(), null);
    expect(vessels.map(sqftOf)).toEqual([expect.closeTo(10000, 3), expect.closeTo(2000, 3)]);
  });

  it('hopper fills where it is, and the bags each comes out of', () => {
    const fills = vesselsOf(dose, broadcast({ holds: lb(20) }), { bag: 0.5 });
    expect(fills.map(({ kind, start }) => [kind, start.value / KG_PER_LB])).toEqual([
      ['hopper-fill', expect.closeTo(20, 6)],
      ['hopper-fill', expect.closeTo(20, 6)],
      ['hopper-fill', expect.closeTo(20, 6)],
    ]);
    // opened bag of 25 lb, then one of 50 lb
    const bags = vesselsOf(dose, broadcast(), { bag: 0.5 });
    expect(packsOfFills(fills, bags)).toEqual([[0], [0, 1], [1]]);
    expect(fills.map(({ from }) => from)).toEqual([[1], [1, 2], [2]]);
    expect(packsOfFills(fills, vesselsOf(dose, broadcast(), { bag: 0.8 }))).toEqual([[0], [0], [1]]);
  });

  it('a hopper told by volume counts where the density is known', () => {
    const granules = testLabel({ densityKgPerL: 0.8 });
    const holds = { unit: 'L', value: 20 } as const;
    const [first] = vesselsOf(planOne(granules, sqft(12000)), broadcast({ holds }), null);
    expect(first?.full).toEqual({ unit: 'kg', value: 16 });
    const [bag] = vesselsOf(dose, broadcast({ holds }), null);
    expect(bag?.kind).toBe('container');
  });

  it('by hand it goes by bags, whatever is told', () => {
    const hand = newEquipment('e-4', 'by-hand', { holds: lb(5) });
    expect(vesselsOf(dose, hand, null).map(({ kind }) => kind)).toEqual(['container', 'container']);
  });
});

describe('too many to mark', () => {
  const gram = { unit: 'kg', value: 0.001 } as const;
  const told = (dose: ReturnType<typeof planOne>, equipment: Equipment) => {
    const { vessels, count } = drawnFrom(dose, equipment, null);
    return [vessels.length, count, tooManyFills(count)?.code ?? null];
  };
  it('are counted and not made: fills, tank loads, packs', () => {
    // 5 lb per 1,000 sq ft on 8,000: 18.14 kg
    const dose = planOne(testLabel(), sqft(8000));
    expect(told(dose, broadcast({ holds: gram }))).toEqual([0, 18_144, 'too-many-fills']);
    expect(told(dose, broadcast({ holds: lb(0.2) }))).toEqual([200, 200, null]);
    const packed = testLabel({ packs: [testPack(gram, 'bag')] });
    expect(told(planOne(packed, sqft(8000)), broadcast())).toEqual([0, 18_144, 'too-many-fills']);
    const sprayed = planOne(testHoseLiquid(), sqft(8000), { useId: 'tank', tankL: 0.01 });
    const [made, count] = told(sprayed, newEquipment('e-3', 'tank-sprayer'));
    expect([made, Number(count) > 3000]).toEqual([0, true]);
    expect(tooManyFills(18_144)?.message).toContain('about 18,100');
  });
});

describe('several sizes and none', () => {
  const rate = { basis: 'mass-per-area', rateKgPerM2: 0.01 } as const;
  const packs = [testPack({ unit: 'kg', value: 20 }, 'large'), testPack({ unit: 'kg', value: 5 }, 'small')];
  const product = testProduct({ rate, packs });
  const idsOf = (areaM2: number, onHand: Record<string, number> | null) =>
    vesselsOf(planOne(product, areaM2), broadcast(), onHand).map(({ packId, taken }) => [
      packId,
      Number(taken.value.toFixed(6)),
    ]);

  it('the smallest that holds all of it, else the largest', () => {
    expect(idsOf(400, null)).toEqual([['small', 4]]);
    expect(idsOf(1900, null)).toEqual([['large', 19]]);
    expect(idsOf(2300, null)).toEqual([
      ['large', 20],
      ['large', 3],
    ]);
  });

  it('what is on the shelf in the order in which it is drawn: opened, used up whole, left open', () => {
    // 47 kg: 1 kg from the opened small, 2 kg from the opened large, 40 kg whole, 4 kg of a closed small one
    expect(idsOf(4700, { large: 2.1, small: 1.2 })).toEqual([
      ['small', 1],
      ['large', 2],
      ['large', 20],
      ['large', 20],
      ['small', 4],
    ]);
    // 3 kg are not on the shelf: a new small bag
    expect(idsOf(800, { small: 1 })).toEqual([
      ['small', 5],
      ['small', 3],
    ]);
  });

  it('what is all but empty on the shelf is no bag', () => {
    expect(idsOf(1900, { large: 1e-6, small: 0.0009 })).toEqual([['large', 19]]);
    expect(idsOf(1900, { large: 1.0005 })).toEqual([['large', 19]]);
    expect(idsOf(1900, { large: 0.002 })[0]).toEqual(['large', 0.04]);
  });

  it('no ground, or no pack that can be measured against the dose: no vessel', () => {
    expect(vesselsOf(planOne(product, 0), broadcast(), null)).toEqual([]);
    const dose = planOne(product, 100);
    const tubs = [testPack({ unit: 'L', value: 10 }, 'tub')];
    const uncertain = { ...dose, product: { ...product, packs: tubs } };
    expect(vesselsOf(uncertain, broadcast(), { tub: 1 })).toEqual([]);
  });
});
