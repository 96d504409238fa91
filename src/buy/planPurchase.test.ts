import { describe, expect, it } from 'vitest';
import { newProduct } from '../yard/defaults';
import type { Pack, Product, ProductUse } from '../yard/types';
import { planPurchase } from './planPurchase';
import type { NeedLine, ProductNeed } from './types';

const kg = (id: string, value: number, price: number | null): Pack => ({
  id,
  content: { unit: 'kg', value },
  price,
});

/** A need of kg by day; `useId` after a colon. */
function needOf(
  ...lines: readonly (readonly [date: string | null, amount: number, useId?: string])[]
): ProductNeed {
  return {
    productId: 'p',
    unit: 'kg',
    unreadDoseIds: [],
    lines: lines.map(([date, amount, useId], i): NeedLine => {
      const at = { visitId: `v${i}`, doseId: `d${i}`, useId: useId ?? null, date };
      return { ...at, amount, areaM2: 100, areaSigmaM2: 1 };
    }),
  };
}

const product = (fields: Partial<Product>) =>
  newProduct('p', { name: 'Invented feed', canPour: true, ...fields });
const tank = (packIds: readonly string[] | null): ProductUse => ({
  id: 'tank',
  name: 'Tank',
  applicator: 'tank-sprayer',
  rate: { basis: 'mass-per-area', rateKgPerM2: 0.01 },
  carrierLPerM2: null,
  carrierIsTotal: false,
  spreadDistanceM: 0,
  waterIn: false,
  packIds,
});
const counts = (plan: { packs: readonly { packId: string; count: number }[] } | null | undefined) =>
  Object.fromEntries((plan?.packs ?? []).map(({ packId, count }) => [packId, count]));

describe('planPurchase', () => {
  it('takes what is on the shelf off the need, opened packs too', () => {
    const own = product({ packs: [kg('a', 10, 5)], onHand: { a: 1.5 } });
    const { plans, onShelf, needed } = planPurchase(own, needOf(['2031-04-01', 12], ['2031-05-01', 12]));
    expect([onShelf, needed]).toEqual([15, 24]);
    expect(counts(plans.cost)).toEqual({ a: 1 });
    expect(plans.cost?.left).toBeCloseTo(1, 9);
    expect(
      plans.cost?.openings.flatMap((one) => one.draws.map((draw) => [draw.from, draw.isOpened])),
    ).toEqual([
      ['shelf', false],
      ['shelf', true],
      ['shelf', false],
      ['bought', true],
    ]);
  });

  it('buys nothing where the shelf is enough', () => {
    const own = product({ packs: [kg('a', 10, 5)], onHand: { a: 3 } });
    const { plans } = planPurchase(own, needOf(['2031-04-01', 12]));
    expect(plans.cost?.packCount).toBe(0);
    expect(plans.cost?.cost).toBe(0);
    expect(plans.cost?.carried.map((one) => [one.isOpen, Number(one.level.toFixed(6))])).toEqual([
      [true, 0.8],
      [false, 1],
    ]);
  });

  it('keeps bottles of one use out of the tank of another, and lets it be where they may be poured', () => {
    const packs = [kg('bottle', 1, 10), kg('jug', 4, 20)];
    const own = product({ packs, packIds: ['bottle'], otherUses: [tank(['jug'])], canPour: false });
    const need = needOf(['2031-04-01', 0.5], ['2031-04-15', 0.5, 'tank'], ['2031-05-01', 1]);
    expect(counts(planPurchase(own, need).plans.cost)).toEqual({ bottle: 2, jug: 1 });
    // two bottles cost as much as a jug: one pack is fewer
    const poured = planPurchase({ ...own, canPour: true }, need);
    expect(counts(poured.plans.cost)).toEqual({ jug: 1 });
    expect(poured.issues.map((issue) => issue.code)).toEqual(['buy-refill']);
  });

  it('shares closed packs of the shelf among uses, an opened one whole', () => {
    const packs = [kg('bottle', 1, 10), kg('jug', 4, 20)];
    const own = product({
      packs,
      packIds: ['bottle'],
      otherUses: [tank(null)],
      canPour: false,
      onHand: { bottle: 2 },
    });
    const need = needOf(['2031-04-01', 1], ['2031-04-15', 1, 'tank']);
    expect(planPurchase(own, need).plans.cost?.packCount).toBe(0);
  });

  it('loses what is in an opened pack after its time', () => {
    const own = product({ packs: [kg('a', 10, 5), kg('b', 3, 4)], openedLifeDays: 20 });
    const near = planPurchase(own, needOf(['2031-04-01', 3], ['2031-04-15', 3])).plans;
    expect(counts(near.cost)).toEqual({ a: 1 });
    const far = planPurchase(own, needOf(['2031-04-01', 3], ['2031-05-15', 3])).plans;
    expect(counts(far.cost)).toEqual({ b: 2 });
    const only = planPurchase(
      product({ ...own, packs: [kg('a', 10, 5)] }),
      needOf(['2031-04-01', 3], ['2031-05-15', 3]),
    );
    expect(counts(only.plans.cost)).toEqual({ a: 2 });
    expect(only.plans.cost?.spoiled).toBeCloseTo(7, 9);
    expect(only.plans.cost?.carried.map((one) => one.goodUntil)).toEqual(['2031-06-04']);
  });

  it('takes a pack of the shelf for each visit where opened ones spoil', () => {
    const months = Array.from({ length: 10 }, (_, i) => `2031-${String(i + 1).padStart(2, '0')}-01`);
    const own = product({ packs: [kg('a', 10, 20)], onHand: { a: 10 }, openedLifeDays: 1 });
    const { plans } = planPurchase(own, needOf(...months.map((date) => [date, 0.1] as const)));
    for (const plan of Object.values(plans)) expect(plan).toMatchObject({ packCount: 0, isProven: true });
    const three = { ...own, onHand: { a: 3 } };
    const need = needOf(['2031-04-01', 1], ['2031-05-01', 1], ['2031-06-01', 1]);
    expect(planPurchase(three, need).plans.cost?.packCount).toBe(0);
  });

  it('shares much stock among uses and is sure of it', () => {
    const packs = [kg('a', 10, 20), kg('b', 3, 9), kg('c', 4, 11)];
    const uses = [tank(['a', 'c']), { ...tank(['b', 'c']), id: 'other' }];
    const own = product({
      packs,
      packIds: null,
      otherUses: uses,
      canPour: false,
      onHand: { a: 60, b: 60, c: 60 },
    });
    const dates = Array.from({ length: 6 }, (_, i) => `2031-0${i + 1}-01`);
    const lines = dates.flatMap(
      (date) =>
        [
          [date, 7],
          [date, 7, 'tank'],
          [date, 7, 'other'],
        ] as const,
    );
    for (const openedLifeDays of [null, 5]) {
      const { plans } = planPurchase({ ...own, openedLifeDays }, needOf(...lines));
      for (const plan of Object.values(plans)) expect(plan).toMatchObject({ packCount: 0, isProven: true });
    }
  });

  it('takes a time past all calendars for one without end', () => {
    for (const life of [4e6, 1e12]) {
      const own = product({ packs: [kg('a', 10, 5)], openedLifeDays: life, shelfLifeDays: life });
      expect(planPurchase(own, needOf(['2031-04-01', 8])).plans.cost?.carried[0]?.goodUntil).toBeNull();
    }
  });

  it('orders later what does not keep, and tells the day', () => {
    const own = product({ packs: [kg('a', 10, 5)], shelfLifeDays: 30 });
    const { plans } = planPurchase(own, needOf(['2031-04-01', 8], ['2031-04-20', 8], ['2031-06-01', 8]));
    expect(plans.cost?.orders).toEqual([
      { by: '2031-04-01', packs: [{ packId: 'a', count: 2 }] },
      { by: '2031-06-01', packs: [{ packId: 'a', count: 1 }] },
    ]);
  });

  it('asks for bought packs by the day on which the first of them is opened, not by the first visit', () => {
    const own = product({ packs: [kg('a', 10, 5)], onHand: { a: 1 } });
    const { plans } = planPurchase(own, needOf(['2027-04-07', 5], ['2027-05-17', 5], ['2027-05-31', 5]));
    expect(plans.cost?.orders).toEqual([{ by: '2027-05-31', packs: [{ packId: 'a', count: 1 }] }]);
    const bought = plans.cost?.openings.find((one) => one.draws.some((draw) => draw.from === 'bought'));
    expect(bought?.date).toBe('2027-05-31');
    // of several uses the first that opens one
    const two = product({ packs: [kg('a', 10, 5)], otherUses: [tank(null)], canPour: false });
    const shared = planPurchase(two, needOf(['2027-04-07', 5, 'tank'], ['2027-05-17', 5])).plans;
    expect(shared.cost?.orders[0]?.by).toBe('2027-04-07');
  });

  it('gives an opened pack no last day where the label tells that of closed ones alone', () => {
    const own = product({ packs: [kg('a', 10, 5)], shelfLifeDays: 700, onHand: { a: 3 } });
    const { plans } = planPurchase(own, needOf(['2031-04-01', 12]));
    expect(plans.cost?.carried.map((one) => [one.isOpen, one.goodUntil])).toEqual([
      [true, null],
      [false, '2033-03-01'],
    ]);
  });

  it('has no least cost without prices, and leaves a pack without one out of it', () => {
    const none = planPurchase(product({ packs: [kg('a', 10, null)] }), needOf(['2031-04-01', 8]));
    expect(none.plans.cost).toBeNull();
    expect(none.plans.packs?.cost).toBeNull();
    expect(none.issues.map((issue) => issue.code)).toEqual(['buy-no-price']);
    const some = planPurchase(
      product({ packs: [kg('a', 10, null), kg('b', 6, 4)] }),
      needOf(['2031-04-01', 8]),
    );
    expect(counts(some.plans.cost)).toEqual({ b: 2 });
    expect(counts(some.plans.packs)).toEqual({ a: 1 });
  });

  it('tells packs in the other measure without a density', () => {
    const packs: Pack[] = [kg('a', 10, 5), { id: 'l', content: { unit: 'L', value: 4 }, price: 1 }];
    const { plans, issues } = planPurchase(product({ packs }), needOf(['2031-04-01', 8]));
    expect(counts(plans.cost)).toEqual({ a: 1 });
    expect(issues.map((issue) => issue.code)).toEqual(['buy-pack-no-density']);
  });

  it('has no plan where a use draws on no pack, and says so', () => {
    const own = product({ packs: [kg('a', 10, 5)], packIds: ['gone'], canPour: false });
    const { plans, issues } = planPurchase(own, needOf(['2031-04-01', 8]));
    expect(plans).toEqual({ cost: null, packs: null, left: null });
    expect(issues.map((issue) => issue.code)).toContain('buy-use-no-pack');
  });

  it('takes two doses of one visit as one', () => {
    const need = needOf(['2031-04-01', 6], ['2031-04-01', 6]);
    const lines = need.lines.map((line) => ({ ...line, visitId: 'v' }));
    const { plans } = planPurchase(product({ packs: [kg('a', 10, 5)], openedLifeDays: 0 }), {
      ...need,
      lines,
    });
    expect(counts(plans.cost)).toEqual({ a: 2 });
    expect(plans.cost?.openings).toHaveLength(1);
  });

  it('does without days, and tells that nothing ages then', () => {
    const own = product({ packs: [kg('a', 10, 5)], openedLifeDays: 10 });
    const { plans, issues } = planPurchase(own, needOf([null, 4], [null, 4]));
    expect(counts(plans.cost)).toEqual({ a: 1 });
    expect(plans.cost?.orders).toEqual([{ by: null, packs: [{ packId: 'a', count: 1 }] }]);
    expect(plans.cost?.carried[0]?.goodUntil).toBeNull();
    expect(issues.map((issue) => issue.code)).toEqual(['buy-undated']);
  });
});
