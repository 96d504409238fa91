import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLabels } from '../../src/io/readLabels';
import { matchLabels } from '../../src/io/takeLabels';
import { withoutStock, writeLabels } from '../../src/io/writeLabels';
import { writeLabelsCsv } from '../../src/io/writeLabelsCsv';
import { newProduct } from '../../src/yard/defaults';
import {
  type Amount,
  APPLICATORS,
  ELEMENTS,
  type LabelRate,
  NUTRIENTS,
  PRODUCT_FORMS,
  type Product,
  type ProductUse,
} from '../../src/yard/types';

/** Text as a cell keeps it: no blanks at its ends, line ends within it as they are; formulas, quotes, commas too. */
const words = fc
  .oneof(
    fc.string({ maxLength: 12 }),
    fc.string({
      unit: fc.constantFrom('"', ',', '=', "'", '+', '@', '\n', 'a', ' ', ';', '\t'),
      maxLength: 8,
    }),
  )
  .map((text) => text.trim());
const figure = fc.double({ min: 1e-9, max: 1e6, noNaN: true });
const orNull = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });
const percent = fc.double({ min: 0, max: 100, noNaN: true });
const amount = fc.oneof(
  figure.map((value): Amount => ({ unit: 'L', value })),
  figure.map((value): Amount => ({ unit: 'kg', value })),
);

const rate = (packId: fc.Arbitrary<string>): fc.Arbitrary<LabelRate> =>
  fc.oneof(
    fc.record({ basis: fc.constant('area-per-container' as const), areaM2: figure, packId }),
    fc.record({ basis: fc.constant('volume-per-area' as const), rateLPerM2: figure }),
    fc.record({
      basis: fc.constantFrom('mass-per-area' as const, 'pure-live-seed' as const, 'effective-lime' as const),
      rateKgPerM2: figure,
    }),
    fc.record({
      basis: fc.constant('nutrient-per-area' as const),
      nutrient: fc.constantFrom(...NUTRIENTS),
      rateKgPerM2: figure,
    }),
    fc.record({ basis: fc.constant('depth' as const), depthM: figure }),
  );

const product: fc.Arbitrary<Product> = fc
  .array(fc.record({ content: amount, price: orNull(figure), onHand: orNull(figure) }), {
    minLength: 1,
    maxLength: 4,
  })
  .chain((packs) => {
    const ids = packs.map((_, i) => `pack-${i + 1}`);
    const use: fc.Arbitrary<ProductUse> = fc.record({
      id: fc.constant('use'),
      name: words,
      applicator: orNull(fc.constantFrom(...APPLICATORS)),
      rate: rate(fc.constantFrom(...ids)),
      carrierLPerM2: orNull(figure),
      carrierIsTotal: fc.boolean(),
      spreadDistanceM: figure,
      waterIn: fc.boolean(),
      packIds: orNull(fc.subarray(ids)),
    });
    return fc
      .record({
        name: words,
        form: fc.constantFrom(...PRODUCT_FORMS),
        analysis: fc.record({
          nPct: percent,
          p2o5Pct: percent,
          k2oPct: percent,
          slowNPctOfN: orNull(percent),
          elementsPct: fc.dictionary(fc.constantFrom(...ELEMENTS), percent),
        }),
        ingredients: fc.array(fc.record({ name: words.filter((text) => text !== ''), pct: percent }), {
          maxLength: 3,
        }),
        densityKgPerL: orNull(figure),
        seed: orNull(fc.record({ purityPct: percent, germinationPct: percent })),
        limePct: orNull(figure),
        saltIndex: orNull(figure),
        first: use,
        others: fc.array(use, { maxLength: 3 }),
        canPour: fc.boolean(),
        rainfastS: orNull(figure),
        waterInDepthM: orNull(figure),
        shelfLifeDays: orNull(figure),
        openedLifeDays: orNull(figure),
        stainsHardscape: fc.boolean(),
        limits: fc.record({
          maxPerDose: orNull(amount),
          maxPerYear: orNull(amount),
          minIntervalDays: orNull(figure),
          maxDosesPerYear: orNull(figure),
          maxAirTempC: orNull(fc.integer({ min: -400, max: 600 }).map((tenth) => tenth / 10)),
        }),
        note: words,
      })
      .map(({ first, others, ...members }) => {
        const { id: _, name: useName, ...firstUse } = first;
        return newProduct('label', {
          ...members,
          ...firstUse,
          useName,
          otherUses: others.map((each, i) => ({ ...each, id: `use-${i + 2}` })),
          packs: packs.map(({ content, price }, i) => ({ id: `pack-${i + 1}`, content, price })),
          onHand: Object.fromEntries(
            packs.flatMap(({ onHand }, i) => (onHand ? [[`pack-${i + 1}`, onHand]] : [])),
          ),
        });
      });
  });
const shelf = fc
  .array(product, { minLength: 1, maxLength: 4 })
  .map((products) => products.map((each, i) => ({ ...each, id: `label-${i + 1}` })));

/** Every figure within a part in 10^12 of the other, all else the same. */
function expectSame(actual: unknown, wanted: unknown, path = ''): void {
  if (typeof wanted === 'number' && typeof actual === 'number') {
    const loss = Math.abs(actual - wanted);
    // degrees Fahrenheit and Celsius differ by an offset, so a temperature near zero loses absolutely
    const most = path.endsWith('maxAirTempC') ? 1e-11 : 1e-12 * Math.abs(wanted);
    if (!(loss <= most)) throw new Error(`${path}: ${actual} is not ${wanted}`);
  } else if (typeof wanted === 'object' && wanted !== null && typeof actual === 'object' && actual !== null) {
    const keys = (value: object) => Object.keys(value).toSorted().join();
    if (keys(actual) !== keys(wanted)) throw new Error(`${path}: ${keys(actual)} are not ${keys(wanted)}`);
    for (const [key, value] of Object.entries(wanted))
      expectSame((actual as Record<string, unknown>)[key], value, `${path}.${key}`);
  } else if (actual !== wanted) throw new Error(`${path}: ${actual} is not ${wanted}`);
}

describe('labels out and in again', { timeout: 30_000 }, () => {
  it.each(['us', 'metric'] as const)('a table in %s units keeps every figure', (units) => {
    fc.assert(
      fc.property(shelf, (products) => {
        const back = readLabels(writeLabelsCsv(products, units, true));
        expect(back.issues).toEqual([]);
        expectSame(back.products, products);
        // what was read once reads the same for ever
        const again = readLabels(writeLabelsCsv(back.products, units, true));
        expectSame(again.products, products);
      }),
      { numRuns: 100 },
    );
  });
  it('a table without stock has neither prices nor what is on hand', () => {
    fc.assert(
      fc.property(shelf, (products) => {
        const back = readLabels(writeLabelsCsv(products, 'us', false));
        expectSame(back.products, products.map(withoutStock));
      }),
      { numRuns: 50 },
    );
  });
  it('a file of labels keeps them as they are', () => {
    fc.assert(
      fc.property(shelf, fc.boolean(), (products, withStock) => {
        const back = readLabels(writeLabels(products, withStock));
        expect(back).toEqual({ products: withStock ? products : products.map(withoutStock), issues: [] });
      }),
      { numRuns: 100 },
    );
  });
  it('what came back is known as the same label', () => {
    fc.assert(
      fc.property(product, (one) => {
        const back = readLabels(writeLabelsCsv([one], 'us', false)).products;
        expect(matchLabels([one], back).map((match) => match.differs)).toEqual([[]]);
      }),
      { numRuns: 100 },
    );
  });
  it('no text makes the reader throw', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.json(),
          fc.array(words).map((cells) => `Product,Form\n${cells}`),
        ),
        (text) => {
          const { products, issues } = readLabels(text);
          expect(products.length + issues.length).toBeGreaterThan(0);
        },
      ),
    );
  });
});
