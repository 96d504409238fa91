import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatNutrientRate } from '../../units/format';
import type { UnitSystem } from '../../yard/types';
import { MONTH_NAMES } from '../../yard/yearDay';
import { fold } from '../parts/fold';
import { shared } from '../parts/shared';
import { WidthWatch } from '../parts/width-watch';
import { layoutYearChart, type Segment, type YearChartData, type YearChartLayout } from './layoutYearChart';
import { productLetter, productPattern } from './productHatch';
import { yearChartStyles } from './yearChartStyles';
import { yearKey, yearSums } from './yearKey';
import { yearTable } from './yearTable';

/**
 * Nitrogen of a year by month and product against need, cap and growth, with its key, and the same figures as a
 * table in a fold. Takes plain data; it keeps to the width it is given.
 */
@customElement('year-chart')
export class YearChart extends LitElement {
  static override styles = [
    shared,
    fold,
    yearChartStyles,
    css`:host { display: block; container-type: inline-size; }`,
  ];

  @property({ attribute: false }) data!: YearChartData;
  @property() units: UnitSystem = 'us';
  /** what ground and year it is of, for its label. */
  @property() of = '';
  /** false: the key, the figures and the table are left out. */
  @property({ type: Boolean }) bare = false;

  @state() private width = 360;
  protected readonly widthWatch = new WidthWatch(this, (widthPx) => {
    const width = Math.round(widthPx);
    // the fold of the table may bring a scrollbar: a px or two is no new width
    if (width > 0 && Math.abs(width - this.width) > 2) this.width = width;
  });

  protected override render() {
    const height = Math.round(Math.min(300, Math.max(190, this.width * 0.5)));
    const layout = layoutYearChart(this.data, { width: this.width, height }, this.units);
    return html`
      <figure>
        ${this.renderDrawing(layout)}
        ${this.bare ? nothing : html`<figcaption>${yearKey(this.data, this.units)}</figcaption>`}
      </figure>
      ${
        this.bare
          ? nothing
          : html`<details class="fold"><summary>The same as a table</summary>${yearTable(this.data, this.units)}</details>`
      }
    `;
  }

  private renderDrawing(layout: YearChartLayout) {
    const { width, height, left, right, top, bottom } = layout;
    return html`<svg viewBox="0 0 ${width} ${height}" width=${width} height=${height} role="img" aria-label=${this.words()}>
      <defs>${this.data.products.map((_, index) => productPattern(index, `product-${index}`))}</defs>
      <text class="scale-name" x="0" y="10">${layout.unit}</text>
      ${layout.growthTicks.length > 0 ? svg`<text class="scale-name end" x=${width} y="10">growth</text>` : nothing}
      ${layout.ticks.map(
        (tick) => svg`<line class="rule" x1=${left} x2=${right} y1=${tick.y} y2=${tick.y} />
          <text class="tick" x=${left - 5} y=${tick.y}>${tick.words}</text>`,
      )}
      ${layout.growthTicks.map((tick) => svg`<text class="tick growth" x=${right + 4} y=${tick.y}>${tick.words}</text>`)}
      ${layout.months.map((month) => svg`<text class="month" x=${month.x} y=${bottom + 15}>${month.words}</text>`)}
      ${layout.segments.map((segment) => this.renderSegment(segment))}
      <path class="frame" d=${`M${left} ${top}V${bottom}H${right}`} />
      ${layout.needPath ? svg`<path class="need-under" d=${layout.needPath} /><path class="need-line" d=${layout.needPath} />` : nothing}
      ${layout.growthPath ? svg`<path class="growth-line" d=${layout.growthPath} />` : nothing}
    </svg>`;
  }

  private renderSegment({ product, isDone, x, y, width, height, valueKgPerM2, hasLetter }: Segment) {
    const name = this.data.products[product]?.name ?? '';
    const words = `${name}, ${isDone ? 'done' : 'planned'}: ${formatNutrientRate(valueKgPerM2, this.units)}`;
    return svg`<g class=${isDone ? 'piece done' : 'piece planned'}><title>${words}</title>
      <rect class="ground" x=${x} y=${y} width=${width} height=${height} />
      <rect class="hatch" x=${x} y=${y} width=${width} height=${height} fill=${`url(#product-${product})`} />
      <rect class="edge" x=${x} y=${y} width=${width} height=${height} />
      ${hasLetter ? svg`<text class="letter" x=${x + width / 2} y=${y + height / 2}>${productLetter(product)}</text>` : nothing}
    </g>`;
  }

  /** The chart for those who do not see it. */
  private words(): string {
    const { data, units } = this;
    const { done, planned, need } = yearSums(data);
    const show = (value: number) => formatNutrientRate(value, units);
    const top = data.needKgPerM2 ? MONTH_NAMES[data.needKgPerM2.indexOf(Math.max(...data.needKgPerM2))] : '';
    return [
      `Nitrogen by month${this.of ? `, ${this.of}` : ''}: done ${show(done)}, planned ${show(planned)}`,
      ...(need === null ? [] : [`need of the year ${show(need)}, most of it in ${top}`]),
      'The figures stand in the table below',
    ].join('. ');
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'year-chart': YearChart;
  }
}
