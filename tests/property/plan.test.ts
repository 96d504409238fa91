import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countContainers } from '../../src/plan/containers';
import { convertAmount } from '../../src/plan/rate';
import { tankLoads } from '../../src/plan/tankLoads';
import {
  planOn,
  planOne,
  testDose,
  testPack,
  testProduct,
  testVisit,
  testZone,
} from '../../src/plan/testDose';
import { type Quantity, unitChoices } from '../../src/units/choices';
import { formatArea, formatLength, formatMass, formatVolume } from '../../src/units/format';
import { parseArea, parseLength, parseMass, parseVolume } from '../../src/units/parse';
import type { UnitSystem } from '../../src/yard/types';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rate = real(1e-4, 5);
const area = real(0.5, 40_000);
const factor = real(0.1, 2);
const system = fc.constantFrom<UnitSystem>('us', 'metric');
const near = (ours: number, other: number, relative = 1e-9) =>
  expect(Math.abs(ours - other)).toBeLessThanOrEqual(relative * Math.max(Math.abs(other), 1e-12));

const granule = (rateKgPerM2: number) => testProduct({ rate: { basis: 'mass-per-area', rateKgPerM2 } });

describe('amounts', () => {
  it('scale with the ground and with the share of the rate', () => {
    fc.assert(
      fc.property(rate, area, factor, real(0.5, 20), (perM2, areaM2, share, times) => {
        const product = granule(perM2);
        const once = planOne(product, areaM2).amount.value;
        near(planOne(product, areaM2 * times).amount.value, once * times);
        near(planOne(product, areaM2, { factor: share }).amount.value, once * share);
      }),
    );
  });
  it('of the zones add up to that of the dose', () => {
    fc.assert(
      fc.property(rate, fc.array(area, { minLength: 1, maxLength: 8 }), (perM2, areas) => {
        const zones = areas.map((areaM2, index) => testZone(areaM2, `z-${index}`));
        const dose = planOn([granule(perM2)], testVisit({ doses: [testDose()] }), zones).doses[0];
        near(
          dose?.zones.reduce((sum, zone) => sum + zone.amount.value, 0) ?? Number.NaN,
          dose?.amount.value ?? 0,
        );
        near(
          dose?.areaM2 ?? Number.NaN,
          areas.reduce((sum, one) => sum + one, 0),
        );
      }),
    );
  });
  it('come back from the other reading', () => {
    fc.assert(
      fc.property(rate, real(0.1, 3), (value, density) => {
        const kg = convertAmount({ unit: 'L', value }, 'kg', density);
        near((kg && convertAmount(kg, 'L', density))?.value ?? Number.NaN, value);
      }),
    );
  });
});

describe('containers', () => {
  const count = (need: number, packKg: number, sigmaShare: number) =>
    countContainers(
      { unit: 'kg', value: need },
      testPack({ unit: 'kg', value: packKg }),
      100,
      100 * sigmaShare,
    );
  it('cover the need, and one fewer does not', () => {
    fc.assert(
      fc.property(real(0.001, 10_000), real(0.05, 50), (need, packKg) => {
        const { open, lastLeft, exact } = count(need, packKg, 0);
        expect(Number.isInteger(open)).toBe(true);
        expect(open * packKg).toBeGreaterThanOrEqual(need * (1 - 1e-6));
        expect((open - 1) * packKg).toBeLessThan(need);
        expect(lastLeft).toBeGreaterThanOrEqual(0);
        expect(lastLeft).toBeLessThan(1);
        near(open - lastLeft, exact, 1e-6);
      }),
    );
  });
  it('a whole number of packs opens no more, however the need came about', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), real(0.05, 50), area, (packs, packKg, areaM2) => {
        const perM2 = (packs * packKg) / areaM2;
        const product = { ...granule(perM2), packs: [testPack({ unit: 'kg', value: packKg })] };
        expect(planOne(product, areaM2).containers[0]?.open).toBe(packs);
      }),
    );
  });
  it('low, open and high stand in order, and the count does change where it is said to', () => {
    fc.assert(
      fc.property(real(0.1, 5000), real(0.05, 50), real(0, 0.6), (need, packKg, sigmaShare) => {
        const { open, openLow, openHigh, changesAt } = count(need, packKg, sigmaShare);
        expect(openLow).toBeLessThanOrEqual(open);
        expect(open).toBeLessThanOrEqual(openHigh);
        // from one pack to none is no change to tell of
        expect(changesAt === null).toBe((openLow === open || open === 1) && open === openHigh);
        if (changesAt === null) return;
        expect(Math.abs(changesAt)).toBeLessThanOrEqual(2 * sigmaShare + 1e-6);
        const beyond = changesAt + Math.sign(changesAt || 1) * 1e-6;
        if (1 + beyond > 0) expect(count(need * (1 + beyond), packKg, 0).open).not.toBe(open);
      }),
    );
  });
});

describe('tank loads', () => {
  it('add up to the spray, the product, the water and the ground', () => {
    fc.assert(
      fc.property(
        real(1e-5, 0.01),
        real(0.01, 0.5),
        real(1, 400),
        area,
        fc.boolean(),
        (productL, waterL, tankL, areaM2, byMass) => {
          const spray = { totalLPerM2: waterL + (byMass ? 0 : productL), waterLPerM2: waterL };
          const product = { unit: byMass ? ('kg' as const) : ('L' as const), value: productL };
          const loads = tankLoads({ perM2: product, kgPerM2: null, lPerM2: null }, spray, tankL, areaM2);
          const sumOf = (of: (mix: NonNullable<typeof loads.full>) => number) =>
            (loads.full ? loads.fullLoads * of(loads.full) : 0) + (loads.last ? of(loads.last) : 0);
          near(
            sumOf((mix) => mix.totalL),
            loads.totalL,
            1e-6,
          );
          near(
            sumOf((mix) => mix.waterL),
            waterL * areaM2,
            1e-6,
          );
          near(
            sumOf((mix) => mix.product.value),
            productL * areaM2,
            1e-6,
          );
          near(
            sumOf((mix) => mix.areaM2),
            areaM2,
            1e-6,
          );
          expect(loads.full === null).toBe(loads.fullLoads === 0);
          if (loads.full) near(loads.full.totalL, tankL);
          if (loads.last) expect(loads.last.totalL).toBeLessThan(tankL * (1 + 1e-9));
        },
      ),
    );
  });
});

describe('units', () => {
  const quantities: readonly Quantity[] = [
    'area',
    'length',
    'depth',
    'mass',
    'volume',
    'volume-per-area',
    'mass-per-area',
    'density',
    'temperature',
  ];
  it('an entry field gives back what went in', () => {
    fc.assert(
      fc.property(fc.constantFrom(...quantities), system, real(0, 1e5), (quantity, units, value) => {
        for (const choice of unitChoices(quantity, units)) {
          const back = choice.fromSI(choice.toSI(value));
          expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, value));
        }
      }),
    );
  });
  it('what is shown can be typed in again, to the digits shown', () => {
    // three significant digits: half a unit of the third; lengths have two digits at least under one foot or metre
    const cases = [
      [formatArea, parseArea, 0.0051],
      [formatMass, parseMass, 0.0051],
      [formatVolume, parseVolume, 0.0051],
      [formatLength, parseLength, 0.051],
    ] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        system,
        real(0.01, 1e6),
        ([format, parse, relative], units, value) => {
          const text = format(value, units);
          const parsed = parse(text, units);
          expect(parsed.ok ? '' : parsed.message).toBe('');
          if (parsed.ok) near(parsed.value, value, relative);
        },
      ),
    );
  });
});
