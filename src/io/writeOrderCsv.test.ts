import { describe, expect, it } from 'vitest';
import { granules, liquid, testYard } from '../../tests/fixtures/testYard';
import type { OrderLine } from '../buy/orderList';
import { splitTable } from './readCsv';
import { orderCsv } from './writeOrderCsv';

const line = (fields: Partial<OrderLine>): OrderLine => ({
  productId: granules.id,
  packId: 'pack-1',
  count: 2,
  price: 30,
  by: '2031-04-01',
  isLater: false,
  ...fields,
});

describe('orderCsv', () => {
  const own = testYard();
  const yard = { ...own, settings: { ...own.settings, units: 'metric' as const, currency: '€' } };

  it('has a line for each pack size and day, and a sum', () => {
    const lines = [line({}), line({ productId: liquid.id, count: 1, price: null, by: null })];
    const text = orderCsv(yard, { lines, packs: 3, total: 60, unpriced: 1 });
    // RFC 4180, section 2: lines end with CRLF, the last too
    expect(text.endsWith('\r\n')).toBe(true);
    expect(splitTable(text.slice(1), ',').map((row) => row.cells)).toEqual([
      ['Product', 'Pack', 'Packs', 'Price of one (€)', 'Sum (€)', 'Opened on, have by'],
      [granules.name, '10 kg', '2', '30.00', '60.00', '2031-04-01'],
      [liquid.name, '1 L', '1', '', '', ''],
      ['Sum', '', '3', '', '60.00', ''],
    ]);
  });

  it('keeps a name from being run as a formula, and quotes what needs it', () => {
    const products = yard.products.map((each) => ({ ...each, name: '=1+1, "odd"' }));
    const text = orderCsv({ ...yard, products }, { lines: [line({})], packs: 2, total: 60, unpriced: 0 });
    expect(text).toContain(`"'=1+1, ""odd""",10 kg,2`);
  });
});
