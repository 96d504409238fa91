import { html, nothing, type TemplateResult } from 'lit';
import { unitChoices } from '../../units/choices';
import { formatAtPlace } from '../../units/format';
import type { UnitSystem } from '../../yard/types';
import { MONTH_NAMES } from '../../yard/yearDay';
import { sumOfMonth, type YearChartData } from './layoutYearChart';
import { productLetter } from './productHatch';

/** Decimals of nitrogen, alike down the column: 0.01 lb per 1,000 sq ft is 0.05 g/m². */
const PLACES: Readonly<Record<UnitSystem, number>> = { us: 2, metric: 1 };

/** A number at one decimal place; what is there but rounds to nothing is not called nothing. */
function shown(value: number, place: number): string {
  if (value === 0) return '0';
  const least = 10 ** -place;
  return value > 0 && value < least / 2
    ? `under ${formatAtPlace(least, place)}`
    : formatAtPlace(value, place);
}

/** The figures of the chart of a year as a table: a row a month, below it a row for each product it got. */
export function yearTable(data: YearChartData, units: UnitSystem): TemplateResult {
  const unit = unitChoices('mass-per-area', units)[0];
  const place = PLACES[units];
  const show = (kgPerM2: number) => shown(unit?.fromSI(kgPerM2) ?? kgPerM2, place);
  const { needKgPerM2, growth, products } = data;
  const hasBars = products.length > 0;
  const total = (rows: readonly (readonly number[])[]) =>
    MONTH_NAMES.reduce((sum, _, month) => sum + sumOfMonth(rows, month), 0);
  const month = (name: string, index: number) => html`<tr class="month">
    <th scope="row">${name}</th>
    ${hasBars ? html`<td class="num">${show(sumOfMonth(data.done, index))}</td><td class="num">${show(sumOfMonth(data.planned, index))}</td>` : nothing}
    ${needKgPerM2 ? html`<td class="num">${show(needKgPerM2[index] ?? 0)}</td>` : nothing}
    ${growth ? html`<td class="num">${shown(100 * (growth[index] ?? 0), 0)}\u00a0%</td>` : nothing}
  </tr>`;
  const rowsOfProducts = (index: number) =>
    products.map((product, at) => {
      const [done, planned] = [data.done[index]?.[at] ?? 0, data.planned[index]?.[at] ?? 0];
      if (done === 0 && planned === 0) return nothing;
      return html`<tr class="product"><th scope="row"><b>${productLetter(at)}</b> <span class="name">${product.name}</span></th>
        <td class="num">${show(done)}</td><td class="num">${show(planned)}</td>
        ${needKgPerM2 ? html`<td></td>` : nothing}${growth ? html`<td></td>` : nothing}</tr>`;
    });
  return html`<div class="table-box" tabindex="0" role="region" aria-label="Nitrogen by month as a table"><table>
    <caption class="quiet">N in ${unit?.label}</caption>
    <thead><tr><th scope="col">Month</th>
      ${hasBars ? html`<th scope="col" class="num">Done</th><th scope="col" class="num">Planned</th>` : nothing}
      ${needKgPerM2 ? html`<th scope="col" class="num">Need</th>` : nothing}
      ${growth ? html`<th scope="col" class="num">Growth</th>` : nothing}</tr></thead>
    <tbody>${MONTH_NAMES.map((name, index) => html`${month(name, index)}${rowsOfProducts(index)}`)}</tbody>
    <tfoot><tr><th scope="row">Year</th>
      ${hasBars ? html`<td class="num">${show(total(data.done))}</td><td class="num">${show(total(data.planned))}</td>` : nothing}
      ${needKgPerM2 ? html`<td class="num">${show(needKgPerM2.reduce((sum, value) => sum + value, 0))}</td>` : nothing}
      ${growth ? html`<td></td>` : nothing}</tr></tfoot>
  </table></div>`;
}
