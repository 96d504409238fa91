import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { growthPotentials } from '../../need/growthPotential';
import { needOfZone } from '../../need/needOfZone';
import { needByMonth } from '../../season/needByMonth';
import { yearByMonth } from '../../season/yearByMonth';
import { CLASS_WORDS, productName } from '../../words/productWords';
import { zoneClass } from '../../yard/choose';
import { ZONE_CLASSES, type Zone, type ZoneClass } from '../../yard/types';
import type { YearChartData } from '../chart/layoutYearChart';
import '../chart/year-chart';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** The nitrogen of a year, a chart for each class of ground: what is laid down against need, cap and growth. */
@customElement('season-chart')
export class SeasonChart extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      section { margin-bottom: 1.25rem; }
    `,
  ];

  @property({ attribute: false }) year = 0;

  protected override render() {
    const { app, year } = this;
    const { zones } = app.yard;
    const classes = ZONE_CLASSES.map((one) => ({
      one,
      zones: zones.filter((zone) => zoneClass(zone) === one),
    }));
    const shown = classes
      .filter((each) => each.zones.length > 0)
      .map((each) => ({ one: each.one, data: this.dataOf(each.zones) }))
      // beds and other ground only where something is laid down or wanted
      .filter(
        ({ one, data }) => one.startsWith('turf') || data.products.length > 0 || data.needKgPerM2 !== null,
      );
    if (shown.length === 0)
      return html`<p class="note">There is no turf yet. <button class="plain" @click=${() => app.setView({ step: 'measure' })}>Measure it first</button></p>`;
    return shown.map(({ one, data }) => this.renderClass(one, data, year));
  }

  private renderClass(one: ZoneClass, data: YearChartData, year: number) {
    const { app } = this;
    return html`<section aria-label=${CLASS_WORDS[one]}>
      <h3>${CLASS_WORDS[one]}: nitrogen of ${year}</h3>
      ${
        data.needKgPerM2 === null
          ? html`<p class="quiet">No need is set for this ground. <button class="plain" @click=${() => app.setView({ step: 'need' })}>Set it under Need</button></p>`
          : ''
      }
      <year-chart .data=${data} .units=${app.units} .of=${`${CLASS_WORDS[one]}, ${year}`}></year-chart></section>`;
  }

  /** Means over the zones of the class, weighted by their ground. */
  private dataOf(zones: readonly Zone[]): YearChartData {
    const { app, year } = this;
    const { yard, session } = app;
    const ground = zones.map((zone) => ({
      zoneId: zone.id,
      areaM2: session.derived.measured.zones.get(zone.id)?.netM2 ?? 0,
    }));
    const laid = yearByMonth(session.derived.season().entries, ground, year);
    const months = Array.from({ length: 12 }, (_, month) => month);
    const season = zones.map((zone) => needOfZone(yard, zone)?.season).find((one) => one !== undefined);
    return {
      products: laid.map((own) => {
        const label = yard.products.find((one) => one.id === own.productId);
        // of a product that has left the shelf the recorded name is told
        return { id: own.productId, name: label ? productName(label) : own.productName };
      }),
      planned: months.map((month) => laid.map((product) => product.planned[month] ?? 0)),
      done: months.map((month) => laid.map((product) => product.done[month] ?? 0)),
      needKgPerM2: needByMonth(yard, ground),
      growth: season ? growthPotentials(yard.climate, season) : null,
      capKgPerM2: yard.caps.nPerYear,
    };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'season-chart': SeasonChart;
  }
}
