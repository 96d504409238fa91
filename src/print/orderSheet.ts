import type { OrderLine, OrderList } from '../buy/orderList';
import { formatMoney } from '../units/format';
import { packName } from '../words/buyWords';
import { productName } from '../words/productWords';
import { dayWords } from '../words/seasonWords';
import type { Yard } from '../yard/types';
import { paginate } from './paginate';
import { paperOf } from './paper';
import { HEAD_MM } from './sheetModel';
import type { Block, Column, SheetModel, SheetOptions } from './types';

const COLUMNS: readonly Column[] = [
  { head: 'Got', share: 0.06, align: 'left' },
  { head: 'Product', share: 0.3, align: 'left' },
  { head: 'Pack', share: 0.13, align: 'left' },
  { head: 'Packs', share: 0.08, align: 'right' },
  { head: 'Price', share: 0.11, align: 'right' },
  { head: 'Sum', share: 0.12, align: 'right' },
  { head: 'Have by', share: 0.2, align: 'left' },
];
/** Size of running type and the height kept free at the foot, mm, as on the work sheet. */
const BASE_MM = 3.35;
const FOOT_MM = 1;

/**
 * The order list on paper, upright, grey only.
 * @param span what it is for, in words; @param drawnOn as it is to be printed
 */
export function orderSheet(
  yard: Yard,
  order: OrderList,
  span: string,
  paperName: SheetOptions['paper'],
  drawnOn: string,
): SheetModel {
  const paper = paperOf(paperName, false);
  const room = {
    widthMm: paper.widthMm - 2 * paper.marginMm,
    heightMm: paper.heightMm - 2 * paper.marginMm - HEAD_MM - FOOT_MM,
    baseMm: BASE_MM,
  };
  return {
    paper,
    baseMm: BASE_MM,
    yardName: yard.name,
    visitName: 'Order list',
    visitDate: span,
    drawnOn,
    hasAreas: false,
    pages: paginate(orderBlocks(yard, order), room),
  };
}

function orderBlocks(yard: Yard, order: OrderList): readonly Block[] {
  const { currency } = yard.settings;
  const money = (value: number) => formatMoney(value, currency);
  const sum = ['', 'Sum', '', String(order.packs), '', money(order.total), ''];
  const blocks: Block[] = [
    { type: 'heading', text: 'To buy' },
    {
      type: 'table',
      caption: 'Packs to buy',
      columns: COLUMNS,
      rows: [...order.lines.map((line) => row(yard, line)), sum],
      sum: true,
      plain: true,
      continued: false,
    },
  ];
  if (order.lines.some((line) => line.by !== null)) {
    const text = '“Have by” is the day on which the first of the packs is opened.';
    blocks.push({ type: 'text', text, strong: false });
  }
  if (order.unpriced > 0) {
    const text = 'The sum leaves out packs without a price.';
    blocks.push({ type: 'text', text, strong: false });
  }
  if (order.lines.some((line) => line.isLater)) {
    const text =
      'Packs with a later day are bought then: what is bought at the first would not keep that long.';
    blocks.push({ type: 'text', text, strong: false });
  }
  blocks.push({ type: 'write', fields: ['Bought at', 'On', 'Paid', 'Note'] });
  return blocks;
}

function row(yard: Yard, { productId, packId, count, price, by }: OrderLine): readonly string[] {
  const { currency, units } = yard.settings;
  const product = yard.products.find((each) => each.id === productId);
  const money = (value: number | null) => (value === null ? 'no price' : formatMoney(value, currency));
  return [
    '☐',
    productName(product),
    product ? packName(product, packId, units) : '',
    String(count),
    money(price),
    price === null ? '' : money(price * count),
    by === null ? '' : dayWords(by, true),
  ];
}
