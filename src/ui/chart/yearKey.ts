import { html, nothing, svg, type TemplateResult } from 'lit';
import { formatNutrientRate } from '../../units/format';
import type { UnitSystem } from '../../yard/types';
import { sumOfMonth, type YearChartData } from './layoutYearChart';
import { productLetter, productPattern } from './productHatch';

/** Sums of the year, kg/m²; the need null where none is known. */
export function yearSums(data: YearChartData) {
  const sum = (rows: readonly (readonly number[])[]) =>
    rows.reduce((total, _, month) => total + sumOfMonth(rows, month), 0);
  const { needKgPerM2: need } = data;
  return {
    done: sum(data.done),
    planned: sum(data.planned),
    need: need === null ? null : need.reduce((total, value) => total + value, 0),
  };
}

/** What the hatches, frames and lines of the chart of a year mean, under the figures of the year. */
export function yearKey(data: YearChartData, units: UnitSystem): TemplateResult {
  const show = (value: number) => formatNutrientRate(value, units);
  const { done, planned, need } = yearSums(data);
  const sums = [
    `Done ${show(done)}`,
    `planned ${show(planned)}`,
    ...(need === null ? [] : [`need of the year ${show(need)}`]),
    ...(data.capKgPerM2 === null ? [] : [`most in the year ${show(data.capKgPerM2)}`]),
  ];
  const lays = (index: number) => [...data.planned, ...data.done].some((row) => (row[index] ?? 0) > 0);
  const used = data.products.map(({ name }, index) => ({ name, index })).filter(({ index }) => lays(index));
  return html`
    <p class="sums">${sums.join('; ')}.</p>
    <ul class="key">
      ${used.map(({ name, index }) => entry(html`<b>${productLetter(index)}</b> ${name}`, hatchSample(index)))}
      ${used.length > 0 ? entry('whole frame: done; broken frame: planned', FRAMES) : nothing}
      ${data.needKgPerM2 ? entry('need of the month', NEED) : nothing}
      ${data.growth ? entry('growth potential, scale at the right', GROWTH) : nothing}
    </ul>
  `;
}

function entry(words: TemplateResult | string, sample: TemplateResult): TemplateResult {
  return html`<li><svg class="swatch" viewBox="0 0 26 18" width="26" height="18" aria-hidden="true">${sample}</svg><span>${words}</span></li>`;
}

function hatchSample(index: number): TemplateResult {
  return svg`<defs>${productPattern(index, `key-${index}`)}</defs>
    <rect x="1" y="1" width="24" height="16" fill=${`url(#key-${index})`} /><rect class="edge" x="1" y="1" width="24" height="16" />`;
}

const FRAMES = svg`<g class="piece done"><rect class="edge" x="2" y="2" width="9" height="14" /></g>
  <g class="piece planned"><rect class="edge" x="15" y="2" width="9" height="14" /></g>`;
const NEED = svg`<path class="need-line" d="M1 13H9V5H17V9H25" />`;
const GROWTH = svg`<path class="growth-line" d="M1 15C8 15 8 4 13 4S18 11 25 11" />`;
