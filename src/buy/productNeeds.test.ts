import { beforeAll, describe, expect, it } from 'vitest';
import { granules, liquid, testYard } from '../../tests/fixtures/testYard';
import { deriveYard } from '../session/derive';
import { loadPlanner } from '../session/planner';
import { newDose, newVisit } from '../yard/defaults';
import type { ProductUse, Visit, Yard } from '../yard/types';
import { areaSteps } from './areaSteps';
import { orderList, shelveOrder, takenPlan } from './orderList';
import { planPurchase } from './planPurchase';
import { productNeeds } from './productNeeds';
import { purchasesOf } from './purchases';
import type { BuySpan, ProductNeed } from './types';

beforeAll(loadPlanner);

const turf = { classes: ['turf-regular', 'turf-low-cut'], include: [], exclude: [] } as const;
const visit = (id: string, fields: Partial<Visit>) => newVisit(id, { zones: turf, ...fields });
const ALL: BuySpan = { from: null, to: null, withUndated: true, visitId: null };

/** Two products over four visits: one done, one without a day. */
function yard(): Yard {
  return {
    ...testYard(),
    visits: [
      visit('late', { date: '2031-06-01', doses: [newDose('a', granules.id), newDose('b', liquid.id)] }),
      visit('early', { date: '2031-04-01', doses: [newDose('c', liquid.id, { rateFactor: 0.5 })] }),
      visit('none', { doses: [newDose('d', liquid.id)] }),
      visit('done', { date: '2031-03-01', doneOn: '2031-03-02', doses: [newDose('e', liquid.id)] }),
    ],
  };
}
const figuresOf = (own: Yard) => {
  const derived = deriveYard(own);
  return own.visits.flatMap((each) => derived.visit(each.id)?.figures ?? []);
};

describe('productNeeds', () => {
  const figures = () => figuresOf(yard());
  const visits = (span: BuySpan) =>
    productNeeds(figures(), span).map((need) => [
      need.productId,
      need.lines.map((line) => line.doseId).join(''),
    ]);

  it('takes visits still to do by their days, those without one last', () => {
    expect(visits(ALL)).toEqual([
      [liquid.id, 'cbd'],
      [granules.id, 'a'],
    ]);
  });

  it('keeps to the span', () => {
    expect(visits({ ...ALL, from: '2031-05-01', withUndated: false })).toEqual([
      [granules.id, 'a'],
      [liquid.id, 'b'],
    ]);
    expect(visits({ ...ALL, to: '2031-04-01', withUndated: false })).toEqual([[liquid.id, 'c']]);
    expect(visits({ ...ALL, visitId: 'none', withUndated: false })).toEqual([[liquid.id, 'd']]);
    expect(visits({ ...ALL, visitId: 'done' })).toEqual([]);
  });

  it('has the amount, ground and error of each dose', () => {
    const [need] = productNeeds(figures(), ALL);
    const lines = need?.lines ?? [];
    expect(need?.unit).toBe('L');
    expect(lines[0]?.amount).toBeCloseTo((lines[1]?.amount ?? 0) / 2, 12);
    expect(lines[1]?.amount).toBeCloseTo((lines[1]?.areaM2 ?? 0) * 0.0016, 9);
    expect(lines[1]?.areaSigmaM2).toBeGreaterThan(0);
  });

  it('tells the doses that cannot be added to the others, and the purchase says so', () => {
    const [first, ...others] = figures();
    const shown = first?.doses.find((dose) => dose.product.id === liquid.id);
    if (!first || !shown) throw new Error('The first visit takes the liquid.');
    // by weight, where the other visits measure it by volume and the density is not known
    const product = { ...liquid, densityKgPerL: null };
    const own = { ...shown, product, amount: { unit: 'kg', value: 3 } } as const;
    const rest = others.map((each) => ({ ...each, doses: each.doses.map((dose) => ({ ...dose, product })) }));
    const [need] = productNeeds([{ ...first, doses: [own] }, ...rest], ALL);
    expect(need?.lines.map((line) => line.doseId).join('')).toBe('cd');
    expect(need?.unreadDoseIds).toEqual(['b']);
    const { issues } = planPurchase(product, need as ProductNeed);
    expect(issues.map((issue) => [issue.code, issue.severity])).toContainEqual([
      'buy-dose-no-density',
      'warning',
    ]);
  });
});

describe('purchasesOf', () => {
  it('tells what is left out', () => {
    const own = yard();
    const broken = {
      ...own,
      visits: [...own.visits, visit('x', { date: '2031-05-05', doses: [newDose('y', 'gone')] })],
    };
    const found = purchasesOf(broken, figuresOf(broken), { ...ALL, withUndated: false });
    expect(found.purchases.map((each) => each.product.id)).toEqual([liquid.id, granules.id]);
    expect([found.undatedLeftOut, found.unplanned]).toEqual([1, 1]);
    expect(found.visitIds).toEqual(['late', 'early', 'x']);
  });
});

describe('what earlier visits still to do take of the shelf', () => {
  /** Two visits of the liquid in April and two in June, with litres in cans on the shelf. */
  const season = (litres: number): Yard => {
    const packs = [{ id: 'can', content: { unit: 'L', value: 1 }, price: 10 }] as const;
    const feed = { ...liquid, packs, packIds: null, canPour: true, onHand: { can: litres } };
    const dates = ['2031-04-01', '2031-04-15', '2031-06-01', '2031-06-15'];
    const visits = dates.map((date, i) => visit(`v${i}`, { date, doses: [newDose(`d${i}`, liquid.id)] }));
    return { ...testYard(), products: [feed], visits };
  };
  const of = (own: Yard, span: BuySpan) => purchasesOf(own, figuresOf(own), span).purchases[0];
  const JUNE: BuySpan = { from: '2031-06-01', to: '2031-06-30', withUndated: false, visitId: null };
  let each = 0;
  beforeAll(() => {
    each = of(season(0), { ...ALL, visitId: 'v0' })?.needed ?? 0;
  });

  it('comes off it first', () => {
    // three doses are there, two of them for April: June is one short
    const found = of(season(3 * each), JUNE);
    expect(found?.needed).toBeCloseTo(2 * each, 9);
    expect(found?.onShelf).toBeCloseTo(each, 6);
    expect(found?.spokenFor?.amount).toBeCloseTo(2 * each, 6);
    expect(found?.spokenFor).toMatchObject({ before: '2031-06-01', short: 0 });
    expect(found?.plans.cost?.packCount).toBe(Math.ceil(each - 1e-6));
    // what stands on the shelf of the label is not touched
    expect(found?.product.onHand.can).toBeCloseTo(3 * each, 9);
  });

  it('comes off it for one visit alone, and a visit that is done takes nothing', () => {
    const alone = of(season(3 * each), { ...ALL, visitId: 'v3' });
    expect(alone?.onShelf).toBeCloseTo(0, 6);
    const own = season(3 * each);
    const done = { ...own, visits: own.visits.map((one, i) => (i < 2 ? { ...one, doneOn: one.date } : one)) };
    expect(of(done, JUNE)?.onShelf).toBeCloseTo(3 * each, 6);
    expect(of(done, JUNE)?.spokenFor).toBeNull();
  });

  it('tells what the earlier ones lack, and buys nothing for them', () => {
    const found = of(season(each), JUNE);
    expect(found?.spokenFor?.amount).toBeCloseTo(each, 6);
    expect(found?.spokenFor?.short).toBeCloseTo(each, 6);
    expect(found?.plans.cost?.bought).toBe(Math.ceil(2 * each - 1e-6));
  });

  it('is nothing where all visits are bought for', () => {
    expect(of(season(3 * each), ALL)?.spokenFor).toBeNull();
  });
});

describe('orderList and shelveOrder', () => {
  it('adds up the packs taken and puts them on the shelf as one edit', () => {
    const own = yard();
    const { purchases } = purchasesOf(own, figuresOf(own), ALL);
    const taken = purchases.flatMap((each) => {
      const plan = takenPlan(each, undefined);
      return plan ? [{ productId: each.product.id, plan }] : [];
    });
    const order = orderList(own.products, taken);
    expect(order.packs).toBe(taken.reduce((sum, each) => sum + each.plan.packCount, 0));
    // the liquid has no price
    expect(order.unpriced).toBe(1);
    expect(order.total).toBeCloseTo(30 * (order.lines.find((line) => line.price === 30)?.count ?? 0), 9);
    const shelved = shelveOrder(own, order.lines);
    const found = purchasesOf(shelved, figuresOf(shelved), ALL);
    for (const { plans } of found.purchases) expect(plans.left?.packCount).toBe(0);
    expect(
      shelveOrder(own, [{ productId: 'gone', packId: 'x', count: 1, price: 1, by: null, isLater: false }]),
    ).toBe(own);
  });

  it('takes the goal that was chosen, else the least cost, else the least left over', () => {
    const { plans } = planPurchase(liquid, productNeeds(figuresOf(yard()), ALL)[0] as ProductNeed);
    expect(takenPlan({ plans }, 'packs')?.goal).toBe('packs');
    expect(takenPlan({ plans }, 'cost')?.goal).toBe('left');
    expect(takenPlan({ plans }, undefined)?.goal).toBe('left');
  });
});

describe('areaSteps', () => {
  const need = (amount: number, areaSigmaM2: number): ProductNeed => {
    const at = { visitId: 'v', doseId: 'd', useId: null, date: null };
    return {
      productId: granules.id,
      unit: 'kg',
      unreadDoseIds: [],
      lines: [{ ...at, amount, areaM2: 100, areaSigmaM2 }],
    };
  };
  const own = { ...granules, onHand: {} };

  it('finds the change of the ground at which one pack more is bought', () => {
    // packs of 10 kg: 39 kg take 4, and 5 from 40/39 on, 2.56 % more; ±2 sigma are 4 %
    const steps = areaSteps(own, need(39, 2), 'cost');
    expect(steps?.map((step) => step.plan.packCount)).toEqual([5]);
    expect(steps?.[0]?.change).toBeCloseTo(40 / 39 - 1, 4);
  });

  it('does not look where uses compete for much stock that spoils', () => {
    const packs = [1, 2.5, 8].map((value, i) => ({
      id: `k${i}`,
      content: { unit: 'kg' as const, value },
      price: 5 + value * 3,
    }));
    const { rate, applicator, carrierLPerM2, carrierIsTotal, spreadDistanceM, waterIn } = granules;
    const own = { rate, applicator, carrierLPerM2, carrierIsTotal, spreadDistanceM, waterIn };
    const other: ProductUse = { ...own, id: 'one', name: '', packIds: null };
    const shared = {
      ...granules,
      packs,
      packIds: ['k0', 'k1'],
      canPour: false,
      otherUses: [other],
      openedLifeDays: 1,
      onHand: { k0: 4, k1: 4, k2: 4 },
    };
    const lines = Array.from({ length: 20 }, (_, i) => {
      const date = `2031-${String(3 + Math.floor(i / 3)).padStart(2, '0')}-${String(1 + 9 * (i % 3)).padStart(2, '0')}`;
      const at = { visitId: `v${i}`, doseId: `d${i}`, useId: i % 2 ? 'one' : null, date };
      return { ...at, amount: 0.5 + ((i * 37) % 13) / 6, areaM2: 100, areaSigmaM2: 1 };
    });
    expect(
      areaSteps(shared, { productId: granules.id, unit: 'kg', lines, unreadDoseIds: [] }, 'cost'),
    ).toBeNull();
  });

  it('looks both ways, and finds none within the error', () => {
    // 30.3 kg: 4 packs, 3 from 0.99 % less on
    const steps = areaSteps(own, need(30.3, 2), 'cost');
    expect(steps?.map((step) => step.plan.packCount)).toEqual([3]);
    expect(steps?.[0]?.change).toBeCloseTo(30 / 30.3 - 1, 4);
    expect(areaSteps(own, need(35, 2), 'cost')).toEqual([]);
    expect(areaSteps(own, need(39, 0), 'cost')).toEqual([]);
  });
});
