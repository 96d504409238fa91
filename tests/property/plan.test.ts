import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countContainers, wholePacks } from '../../src/plan/containers';
import { productRate } from '../../src/plan/rate';
import { sprayRate, tankLoads } from '../../src/plan/tank';
import { makeLabel } from '../../src/plan/testLabels';
import { planVisit } from '../../src/plan/visit';
import { type Quantity, unitChoices } from '../../src/units/choices';
import { parseArea, parseLength, parseMass, parseVolume } from '../../src/units/parse';
import { emptyYard } from '../../src/yard/defaults';
import type { Product } from '../../src/yard/types';

/** A positive number between two, evenly over the orders of magnitude. */
const between = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map((power) => Math.exp(power));
const isNear = (a: number, b: number, relative = 1e-9) =>
  Math.abs(a - b) <= relative * Math.max(Math.abs(a), Math.abs(b));

const areaM2 = between(0.1, 1e6);
const liquid = (rateLPerM2: number, carrierLPerM2: number, carrierIsTotal: boolean): Product =>
  makeLabel({
    form: 'liquid-concentrate',
    rate: { basis: 'volume-per-area', rateLPerM2 },
    densityKgPerL: 1.2,
    packs: [{ id: 'jug', content: { unit: 'L', value: 1 }, price: null }],
    carrierLPerM2,
    carrierIsTotal,
  });

function plan(product: Product, areas: readonly number[], rateFactor = 1, tankL: number | null = null) {
  const zones = { classes: [], include: [], exclude: [] };
  const dose = { id: 'dose', productId: product.id, rateFactor, zones: null };
  const visit = { id: 'visit', name: '', date: null, zones, doses: [dose], tankL, note: '' };
  const grounds = areas.map((area, i) => ({ zoneId: `z${i}`, name: '', areaM2: area, stripM2: 0 }));
  const [figures] = planVisit({
    yard: { ...emptyYard('yard', ''), products: [product], visits: [visit] },
    visit,
    zonesByDose: new Map([['dose', grounds]]),
    sigmaByDose: new Map(),
  }).doses;
  if (!figures) throw new Error('The dose must be planned.');
  return figures;
}

describe('doses', () => {
  it('amounts scale with area and rate, and zones sum to the whole', () => {
    fc.assert(
      fc.property(fc.array(areaM2, { minLength: 1, maxLength: 12 }), between(0.01, 100), (areas, factor) => {
        const product = liquid(0.002, 0.04, false);
        const one = plan(product, areas);
        expect(
          isNear(
            one.amount.value,
            one.zones.reduce((sum, zone) => sum + zone.amount.value, 0),
          ),
        ).toBe(true);
        const wider = plan(
          product,
          areas.map((area) => area * factor),
        );
        expect(isNear(wider.amount.value, one.amount.value * factor)).toBe(true);
        const stronger = plan(product, areas, factor);
        expect(isNear(stronger.amount.value, one.amount.value * factor)).toBe(true);
        expect(isNear(stronger.nutrientKgPerM2?.N ?? 0, (one.nutrientKgPerM2?.N ?? 0) * factor)).toBe(true);
        // the water goes by the ground, not by the share of the label rate
        expect(isNear(stronger.carrierL ?? 0, one.carrierL ?? 0)).toBe(true);
      }),
    );
  });
  it('a rate by nutrient lays down that nutrient, on granules and liquids', () => {
    fc.assert(
      fc.property(
        between(0.1, 60),
        between(1e-5, 0.05),
        between(0.8, 1.6),
        fc.boolean(),
        (pct, rateKgPerM2, density, poured) => {
          const product = makeLabel({
            form: poured ? 'liquid-concentrate' : 'granular',
            analysis: { nPct: pct, p2o5Pct: 0, k2oPct: 0, slowNPctOfN: null },
            densityKgPerL: density,
            rate: { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2 },
            packs: [{ id: 'pack', content: { unit: poured ? 'L' : 'kg', value: 10 }, price: null }],
          });
          const figures = plan(product, [100]);
          expect(figures.amount.unit).toBe(poured ? 'L' : 'kg');
          expect(isNear(figures.nutrientKgPerM2?.N ?? 0, rateKgPerM2)).toBe(true);
        },
      ),
    );
  });
});

describe('containers', () => {
  const pack = (value: number) => ({ id: 'pack', content: { unit: 'kg', value }, price: null }) as const;
  it('cover the need, and one fewer does not', () => {
    fc.assert(
      fc.property(between(1e-3, 1e5), between(0.05, 1000), (need, content) => {
        const count = countContainers({ unit: 'kg', value: need }, pack(content), 100, 0);
        expect(count.open * content).toBeGreaterThanOrEqual(need * (1 - 2e-9) - 2e-9 * content);
        expect((count.open - 1) * content).toBeLessThan(need);
        expect(count.lastLeft).toBeGreaterThanOrEqual(0);
        expect(count.lastLeft).toBeLessThan(1);
        expect(isNear((count.open - count.lastLeft) * content, need, 1e-6)).toBe(true);
      }),
    );
  });
  it('a whole number of packs opens that number, whatever the rounding on the way', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 10_000 }),
        areaM2,
        between(0.05, 1000),
        (packs, coverM2, content) => {
          expect(wholePacks(((content / coverM2) * (packs * coverM2)) / content)).toBe(packs);
        },
      ),
    );
  });
  it('low, count and high are in order, and the change it tells does move the count', () => {
    fc.assert(
      fc.property(between(0.01, 100), areaM2, between(1e-4, 0.3), (exact, area, share) => {
        const need = (value: number) => ({ unit: 'kg', value }) as const;
        const count = countContainers(need(exact), pack(1), area, area * share);
        expect(count.openLow).toBeLessThanOrEqual(count.open);
        expect(count.openHigh).toBeGreaterThanOrEqual(count.open);
        const moves = count.openLow !== count.open || count.openHigh !== count.open;
        expect(count.changesAt !== null).toBe(moves);
        if (count.changesAt === null) return;
        expect(Math.abs(count.changesAt)).toBeLessThanOrEqual(2 * share + 1e-8);
        // a hair beyond the change the count differs, a hair before it does not
        const hair = 1e-6 * (count.changesAt < 0 ? -1 : 1);
        const at = (change: number) => wholePacks(exact * (1 + change));
        expect(at(count.changesAt + hair)).not.toBe(count.open);
        if (Math.abs(count.changesAt) > 2e-6) expect(at(count.changesAt - hair)).toBe(count.open);
      }),
    );
  });
});

describe('tank loads', () => {
  it('sum to the whole, each no more than the tank, all of one strength', () => {
    fc.assert(
      fc.property(
        areaM2,
        between(1, 2000),
        between(1e-4, 0.01),
        between(0.011, 0.5),
        fc.boolean(),
        (area, tankL, rateL, carrier, total) => {
          const product = liquid(rateL, carrier, total);
          const { rate } = productRate(product);
          const spray = rate && sprayRate(product, rate);
          if (!rate || !spray) throw new Error('The label must give a spray.');
          const loads = tankLoads(rate, spray, tankL, area);
          const mixes = [loads.full, loads.last].flatMap((mix) => (mix ? [mix] : []));
          const sum = (of: (mix: (typeof mixes)[number]) => number) =>
            (loads.full ? of(loads.full) * loads.fullLoads : 0) + (loads.last ? of(loads.last) : 0);
          expect(
            isNear(
              sum((mix) => mix.totalL),
              loads.totalL,
              1e-6,
            ),
          ).toBe(true);
          expect(
            isNear(
              sum((mix) => mix.product.value),
              rateL * area,
              1e-6,
            ),
          ).toBe(true);
          expect(
            isNear(
              sum((mix) => mix.areaM2),
              area,
              1e-6,
            ),
          ).toBe(true);
          for (const mix of mixes) {
            expect(mix.totalL).toBeLessThanOrEqual(tankL * (1 + 1e-9));
            expect(isNear(mix.waterL + mix.product.value, mix.totalL)).toBe(true);
            expect(isNear(mix.product.value / mix.totalL, rateL / spray.totalLPerM2)).toBe(true);
          }
          expect(isNear(loads.totalL, (total ? carrier : carrier + rateL) * area)).toBe(true);
        },
      ),
    );
  });
});

describe('units', () => {
  const QUANTITIES: readonly Quantity[] = [
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
  const PARSERS = { area: parseArea, length: parseLength, mass: parseMass, volume: parseVolume } as const;
  it('every entry unit turns there and back', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...QUANTITIES),
        fc.constantFrom('us' as const, 'metric' as const),
        between(1e-6, 1e9),
        (quantity, system, value) => {
          for (const choice of unitChoices(quantity, system)) {
            expect(isNear(choice.fromSI(choice.toSI(value)), value, 1e-9)).toBe(true);
          }
        },
      ),
    );
  });
  it('what an entry field shows with its unit is read back as the same', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('area' as const, 'length' as const, 'mass' as const, 'volume' as const),
        fc.constantFrom('us' as const, 'metric' as const),
        fc.integer({ min: 0, max: 9_999_999 }),
        (quantity, system, hundredths) => {
          const shown = (hundredths / 100).toLocaleString('en-US', { maximumFractionDigits: 2 });
          for (const choice of unitChoices(quantity, system)) {
            const read = PARSERS[quantity](`${shown} ${choice.label}`, system);
            expect(read).toEqual({ ok: true, value: expect.closeTo(choice.toSI(hundredths / 100), 6) });
          }
        },
      ),
    );
  });
  it('no text makes a reader throw or give anything but a number of zero or more', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[0-9 .,/'"a-z-]{0,12}$/)), (text) => {
        for (const parse of Object.values(PARSERS)) {
          const read = parse(text, 'us');
          if (read.ok) expect(read.value >= 0 && Number.isFinite(read.value)).toBe(true);
          else expect(read.message.length).toBeGreaterThan(5);
        }
      }),
    );
  });
});
