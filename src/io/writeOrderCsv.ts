import type { OrderList } from '../buy/orderList';
import { isBulk } from '../plan/rate';
import { formatAmount } from '../units/format';
import type { Yard } from '../yard/types';
import { csvText, safeText } from './csvText';

/**
 * An order as a table, one line for each pack size and day, in the form of `csvText`: numbers plain, money
 * in the yard's currency without its sign, days YYYY-MM-DD.
 */
export function orderCsv(yard: Yard, order: OrderList): string {
  const { currency, units } = yard.settings;
  const head = [
    'Product',
    'Pack',
    'Packs',
    `Price of one (${currency})`,
    `Sum (${currency})`,
    'Opened on, have by',
  ];
  const rows = order.lines.map(({ productId, packId, count, price, by }) => {
    const product = yard.products.find((each) => each.id === productId);
    const pack = product?.packs.find((each) => each.id === packId);
    return [
      safeText(product?.name ?? ''),
      product && pack ? plain(formatAmount(pack.content, units, isBulk(product))) : '',
      String(count),
      price === null ? '' : price.toFixed(2),
      price === null ? '' : (price * count).toFixed(2),
      by ?? '',
    ];
  });
  const sum = ['Sum', '', String(order.packs), '', order.total.toFixed(2), ''];
  return csvText([head, ...rows, sum]);
}

/** No-break spaces are for the screen. */
function plain(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}
