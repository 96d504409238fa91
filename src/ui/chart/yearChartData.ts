import type { ProductYear } from '../../season/yearByMonth';
import type { YearChartData } from './layoutYearChart';

/**
 * What the chart of a year is drawn from. @param years of `yearByMonth`
 * @param nameOf name of a product; those that lay nothing are left out
 */
export function yearChartData(
  years: readonly ProductYear[],
  nameOf: (product: ProductYear) => string,
  rest: Pick<YearChartData, 'needKgPerM2' | 'growth' | 'capKgPerM2'>,
): YearChartData {
  const used = years.filter(({ planned, done }) => [...planned, ...done].some((value) => value > 0));
  const byMonth = (kind: 'planned' | 'done') =>
    Array.from({ length: 12 }, (_, month) => used.map((product) => product[kind][month] ?? 0));
  return {
    products: used.map((product) => ({ id: product.productId, name: nameOf(product) })),
    planned: byMonth('planned'),
    done: byMonth('done'),
    ...rest,
  };
}
