import { describe, expect, it } from 'vitest';
import type { RinseEdge } from '../cover/types';
import {
  planOn,
  testDose,
  testHoseLiquid,
  testPack,
  testProduct,
  testVisit,
  testZone,
} from '../plan/testDose';
import type { DerivedVisit } from '../session/types';
import { emptyYard, newEquipment } from '../yard/defaults';
import type { PassChoice, Product } from '../yard/types';
import { workOrder } from './workOrder';

const edge = (number: number, change: Partial<RinseEdge> = {}): RinseEdge => ({
  number,
  hardscapeId: 'walk',
  hardscapeName: 'Walk',
  material: 'concrete',
  zoneIds: ['z-1'],
  lengthM: 4,
  line: [],
  planeLine: [],
  bandM2: 2,
  water: null,
  near: null,
  downhill: null,
  treatment: 'rinse-toward-turf',
  stains: false,
  ...change,
});
function visitOf(
  products: readonly Product[],
  rinseEdges: readonly RinseEdge[] = [],
  tankL: number | null = null,
) {
  const doses = products.map((product, i) => testDose({ id: `d-${i}`, productId: product.id }));
  const figures = planOn(products, testVisit({ doses, tankL }), [testZone(100)]);
  return { figures, treated: new Map(), asked: new Map(), rinseEdges, issues: [] } as DerivedVisit;
}
const YARD = emptyYard('y', 'Yard');
const sack = testPack({ unit: 'L', value: 50 });
const spray = testProduct({
  id: 'spray',
  name: 'Test spray',
  form: 'liquid-concentrate',
  rate: { basis: 'volume-per-area', rateLPerM2: 0.001 },
  packs: [testPack({ unit: 'L', value: 1 })],
  carrierLPerM2: 0.05,
});

describe('workOrder', () => {
  it('says nothing without a dose', () => {
    expect(workOrder(visitOf([]), 'us', YARD)).toEqual([]);
  });

  it('begins with the label and ends with the record', () => {
    const steps = workOrder(visitOf([testProduct()]), 'metric', YARD);
    expect(steps[0]).toMatch(/^Read the label once more/);
    expect(steps.at(-1)).toContain('Write down what went out');
    // 100 m² at 20 g/m²
    expect(steps).toContain('Spread Test granules: Zone z-1 2\u00a0kg.');
  });

  it('mixes, sprays and rinses the tank between products', () => {
    const steps = workOrder(visitOf([spray, testProduct()], [], 10), 'metric', YARD).join(' ');
    expect(steps).toContain(
      'Fill the tank half with water, add Test spray (100\u00a0mL to 5\u00a0L of water)',
    );
    expect(steps).toContain('Spray Test spray');
    expect(steps.indexOf('Rinse the tank')).toBeLessThan(steps.indexOf('Spread Test granules'));
  });

  it('keeps water off the edges near a drain', () => {
    const near = { sourceId: 'd', sourceKind: 'storm-drain', distanceM: 1 } as const;
    const edges = [edge(1), edge(2, { treatment: 'sweep-then-rinse' }), edge(3, { near })];
    const steps = workOrder(visitOf([testProduct()], edges), 'us', YARD);
    expect(steps).toContain('Sweep or blow back onto the turf: edge E2.');
    expect(steps).toContain('Rinse with plain water toward the turf: edges E1, E2.');
    expect(steps.find((step) => step.includes('no water toward the drain'))).toContain('edge E3.');
    const onlyNear = workOrder(visitOf([testProduct()], [edge(3, { near })]), 'us', YARD).join(' ');
    expect(onlyNear).not.toContain('hose');
  });

  it('gives bulk goods by the cubic foot', () => {
    const mulch = testProduct({ form: 'mulch', rate: { basis: 'depth', depthM: 0.001 }, packs: [sack] });
    // 100 m² by 1 mm is 100 L, 3.53 cu ft
    expect(workOrder(visitOf([mulch]), 'us', YARD).join(' ')).toContain('3.53\u00a0cu\u00a0ft');
  });

  it('says what puts a use out, how much water after it and how long without rain', () => {
    const label = testHoseLiquid({ rainfastS: 14_400, waterInDepthM: 0.00635 });
    const doses = [
      testDose({ id: 'd-0', productId: label.id }),
      testDose({ id: 'd-1', productId: label.id, useId: 'tank' }),
    ];
    const watered = { ...label, otherUses: label.otherUses.map((use) => ({ ...use, waterIn: true })) };
    const figures = planOn([watered], testVisit({ doses, tankL: 15 }), [testZone(100)]);
    const visit = {
      figures,
      treated: new Map(),
      asked: new Map(),
      rinseEdges: [],
      issues: [],
    } as DerivedVisit;
    const steps = workOrder(visit, 'us', YARD).map((step) => step.replaceAll('\u00a0', ' '));
    expect(steps.filter((step) => step.startsWith('Spray'))).toEqual([
      'Spray Lawn liquid, from the bottle: Zone z-1 10.8 fl oz.',
      'Spray Lawn liquid, backpack: Zone z-1 5.38 fl oz.',
    ]);
    expect(steps).toContain(
      'Lawn liquid, from the bottle: no rain for 4 h after it is down, and no watering.',
    );
    expect(steps).toContain('Lawn liquid, backpack: water in with 0.25 in, no run-off.');
  });

  it('says that two coats share the amount, and that the guard goes down where there is one', () => {
    const spreader = newEquipment('s', 'broadcast-spreader', { hasEdgeGuard: true });
    const linesOf = (passes: Partial<PassChoice>, equipment = spreader) => {
      const product = testProduct();
      const dose = testDose({ productId: product.id });
      const visit = testVisit({ doses: [{ ...dose, passes: { ...dose.passes, ...passes } }] });
      const figures = planOn([product], visit, [testZone(750)]);
      const derived = {
        figures,
        treated: new Map(),
        asked: new Map(),
        rinseEdges: [],
        issues: [],
      } as unknown as DerivedVisit;
      const steps = workOrder(derived, 'metric', { ...YARD, equipment: [equipment] });
      return steps.find((step) => step.startsWith('Spread'))?.replaceAll('\u00a0', ' ');
    };
    // 750 m² at 20 g/m² are 15 kg, half of 20 g/m² is 1 kg per 100 m²; common practice, no source: half of it in each of two coats
    expect(linesOf({ coats: 2, isGuarded: true })).toBe(
      'Spread Test granules: Zone z-1 15 kg. Two coats at half the rate, the second across the first: ' +
        '7.5 kg in each, the spreader set for 1 kg per 100 m². Edge guard down along the edges.',
    );
    expect(linesOf({ isGuarded: true }, { ...spreader, hasEdgeGuard: false })).toBe(
      'Spread Test granules: Zone z-1 15 kg.',
    );
  });
});
