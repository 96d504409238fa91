import { describe, expect, it } from 'vitest';
import { granules, liquid, testYard } from '../../tests/fixtures/testYard';
import type { OrderLine } from '../buy/orderList';
import { orderSheet } from './orderSheet';

const line = (fields: Partial<OrderLine>): OrderLine => ({
  productId: granules.id,
  packId: 'pack-1',
  count: 2,
  price: 30,
  by: '2031-04-01',
  isLater: false,
  ...fields,
});
const tablesOf = (model: ReturnType<typeof orderSheet>) =>
  model.pages
    .flatMap((page) => (page.type === 'tables' ? page.blocks : []))
    .filter((block) => block.type === 'table');

describe('orderSheet', () => {
  it('lists packs with price and day, and the sum', () => {
    const lines = [line({}), line({ productId: liquid.id, price: null, isLater: true, by: '2031-06-01' })];
    const model = orderSheet(
      testYard(),
      { lines, packs: 4, total: 60, unpriced: 1 },
      'April',
      'a4',
      '2031-03-01',
    );
    expect([model.paper.widthMm, model.paper.heightMm]).toEqual([210, 297]);
    const [table] = tablesOf(model);
    expect(table?.rows.map((row) => [row[1], row[3], row[5], row[6]])).toEqual([
      [granules.name, '2', '$60.00', 'Tue, Apr\u00a01, 2031'],
      [liquid.name, '2', '', 'Sun, Jun\u00a01, 2031'],
      ['Sum', '4', '$60.00', ''],
    ]);
    const text = JSON.stringify(model.pages);
    expect(text).toContain('without a price');
    expect(text).toContain('would not keep');
    expect(text).toContain('the day on which the first of the packs is opened');
    expect(model.hasAreas).toBe(false);
  });

  it('goes on to further pages, every line once', () => {
    const lines = Array.from({ length: 120 }, (_, i) => line({ count: i + 1 }));
    const model = orderSheet(
      testYard(),
      { lines, packs: 7260, total: 1, unpriced: 0 },
      '',
      'letter',
      '2031-03-01',
    );
    expect(model.pages.length).toBeGreaterThan(1);
    const counts = tablesOf(model).flatMap((table) => table.rows.map((row) => row[3]));
    expect(counts).toEqual([...lines.map((one) => String(one.count)), '7260']);
  });
});
