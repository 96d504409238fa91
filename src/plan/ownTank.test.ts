import { describe, expect, it } from 'vitest';
import { emptyYard, newEquipment, newVisit } from '../yard/defaults';
import { testDose, testLabel, testPack } from './testDose';
import { planVisit } from './visit';

/** 5 fl oz of concentrate to 1,000 sq ft in 1 gal of water (common practice, no source), as L/m². */
const M2 = 92.90304;
const GAL = 3.785411784;
const product = testLabel({
  form: 'liquid-concentrate',
  applicator: 'tank-sprayer',
  rate: { basis: 'volume-per-area', rateLPerM2: (5 * GAL) / 128 / M2 },
  carrierLPerM2: GAL / M2,
  carrierIsTotal: true,
  packs: [testPack({ unit: 'L', value: GAL })],
  densityKgPerL: 1.2,
});
const sprayer = newEquipment('e-1', 'tank-sprayer', { holds: { unit: 'L', value: 4 * GAL } });

function tankOf(tankL: number | null, equipment = [sprayer]) {
  const dose = testDose({ productId: product.id });
  const visit = newVisit('v-1', { doses: [dose], tankL });
  const yard = { ...emptyYard('y', 'Yard'), products: [product], visits: [visit], equipment };
  const zone = { zoneId: 'z', name: 'Lawn', areaM2: 10 * M2, stripM2: 0 };
  const zonesByDose = new Map([[dose.id, [zone]]]);
  return planVisit({ yard, visit, zonesByDose, sigmaByDose: new Map([[dose.id, 0]]) }).doses[0]?.tank ?? null;
}

describe('the tank of a dose', () => {
  it('is what its sprayer holds where the visit does not say: 10,000 sq ft at 1 gal are two full loads of 4 gal and 2 gal', () => {
    expect(tankOf(null)).toMatchObject({ fullLoads: 2, tankL: 4 * GAL });
    expect(tankOf(null)?.last?.totalL).toBeCloseTo(2 * GAL, 9);
    expect(tankOf(null)?.full?.product.value).toBeCloseTo((20 * GAL) / 128, 9);
  });

  it('is the visit’s where it says so, and none where nobody does', () => {
    expect(tankOf(5 * GAL)?.fullLoads).toBe(2);
    expect(tankOf(5 * GAL)?.last).toBeNull();
    expect(tankOf(null, [])).toBeNull();
    expect(tankOf(null, [newEquipment('e-2', 'hose-end', { holds: { unit: 'L', value: 1 } })])).toBeNull();
  });
});
