import { describe, expect, it } from 'vitest';
import { L_PER_GAL } from '../units/factors';
import type { Product } from '../yard/types';
import { planOn, testDose, testPack, testProduct, testVisit, testZone } from './testDose';

// 0.02 kg/m² on 500 m²: 10 kg a dose; packs of 4 kg and of 1 kg
const granules = (onHand: Product['onHand'], fields: Partial<Product> = {}) =>
  testProduct({
    packs: [testPack({ unit: 'kg', value: 4 }, 'bag'), testPack({ unit: 'kg', value: 1 }, 'box')],
    onHand,
    ...fields,
  });
const doses = ['d-1', 'd-2', 'd-3'].map((id) => testDose({ id }));
function told(product: Product, count = 1) {
  const plan = planOn([product], testVisit({ doses: doses.slice(0, count) }), [testZone(500)]);
  return plan.issues
    .filter((issue) => issue.code === 'stock-short')
    .map(({ severity, message, place }) => [place.doseId, severity, message.replaceAll('\u00a0', ' ')]);
}

describe('what is on the shelf', () => {
  it('falls short: how much there is, is needed and is missing', () => {
    expect(told(granules({ bag: 1.5, box: 1 }, { name: 'Grains' }))).toEqual([
      ['d-1', 'note', 'Grains: on the shelf: 15.4 lb; this needs 22 lb; short by 6.61 lb.'],
    ]);
  });
  it('suffices, to the last grain, or is not stated', () => {
    const plenty: Product['onHand'][] = [
      { bag: 2.5 },
      { bag: 2, box: 2 },
      { bag: 9 },
      {},
      { bag: 0, box: 0 },
    ];
    for (const onHand of plenty) expect(told(granules(onHand))).toEqual([]);
  });
  it('is none of this product, where the shelf states what is on it', () => {
    const other = testProduct({ id: 'other', name: 'Other', onHand: { 'pack-1': 1 } });
    const plan = (product: Product, more: readonly Product[]) =>
      planOn([product, ...more], testVisit({ doses: doses.slice(0, 1) }), [testZone(500)])
        .issues.filter((issue) => issue.code.startsWith('stock-'))
        .map(({ code, message }) => [code, message.replaceAll('\u00a0', ' ')]);
    const grains = granules({}, { name: 'Grains' });
    expect(plan(grains, [other])).toEqual([
      ['stock-none', 'Grains: nothing of it is on the shelf; this needs 22 lb.'],
    ]);
    expect(plan({ ...grains, onHand: { box: 9 }, packIds: ['bag'] }, [])).toEqual([
      ['stock-none', 'Grains: nothing that this use can draw on is on the shelf; this needs 22 lb.'],
    ]);
    expect(plan(grains, [{ ...other, onHand: {} }])).toEqual([]);
    expect(plan(granules({ bag: 9 }), [other])).toEqual([]);
  });
  it('serves the doses of a visit in their order', () => {
    expect(told(granules({ bag: 4 }), 3)).toEqual([
      [
        'd-2',
        'note',
        'Test granules: on the shelf: 35.3 lb (22 lb of it goes to earlier doses of this visit); this needs 22 lb; short by 8.82 lb.',
      ],
      [
        'd-3',
        'note',
        'Test granules: on the shelf: 35.3 lb (all of it goes to earlier doses of this visit); this needs 22 lb; short by 22 lb.',
      ],
    ]);
  });
  it('is added up over packs by mass and by volume', () => {
    const liquid = (onHand: Product['onHand']) =>
      granules(onHand, {
        form: 'liquid-concentrate',
        densityKgPerL: 1.25,
        rate: { basis: 'volume-per-area', rateLPerM2: (2 * L_PER_GAL) / 500 },
        packs: [
          testPack({ unit: 'L', value: L_PER_GAL }, 'jug'),
          testPack({ unit: 'kg', value: 1.25 * L_PER_GAL }, 'can'),
        ],
      });
    expect(told(liquid({ jug: 1, can: 1 }))).toEqual([]);
    expect(told(liquid({ jug: 1, can: 0.5 }))[0]?.[2]).toContain('short by 64 fl oz.');
  });
});
