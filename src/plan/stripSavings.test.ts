import { expect, it } from 'vitest';
import { stripSavings } from './stripSavings';
import { planOn, testDose, testProduct, testVisit, testZone } from './testDose';

it('sums the ground of a zone once and the product of each dose by its rate', () => {
  const [one, two] = [testProduct(), testProduct({ id: 'other', name: 'Other granules' })];
  const doses = [
    testDose({ id: 'd-1', productId: one.id }),
    testDose({ id: 'd-2', productId: two.id, rateFactor: 0.5 }),
  ];
  const zones = [testZone(100, 'lawn', 15), testZone(40, 'bed', 0)];
  const figures = planOn([one, two], testVisit({ doses }), zones);
  // by hand: 15 m² at 20 g/m², and at half of it
  expect(stripSavings(figures.doses)).toEqual([
    {
      zoneId: 'lawn',
      name: 'Zone lawn',
      stripM2: 15,
      saved: [
        expect.objectContaining({ doseId: 'd-1', amount: { unit: 'kg', value: expect.closeTo(0.3, 9) } }),
        expect.objectContaining({ doseId: 'd-2', amount: { unit: 'kg', value: expect.closeTo(0.15, 9) } }),
      ],
    },
  ]);
});
