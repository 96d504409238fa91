import { css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { isBulk } from '../../plan/rate';
import type { ContainerCount, DoseFigures, TankLoads } from '../../plan/types';
import { formatAmounts, formatZoneAreas } from '../../units/columns';
import { formatArea, formatAreaPm, formatMoney, formatVolume, formatVolumeLike } from '../../units/format';
import { changeWords, countWords, lastWords, stockWords } from '../../words/containerWords';
import { laidRows } from '../../words/labelWords';
import { groundName, ROUNDED_APART } from '../../words/zoneWords';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** more loads than this are a slip of the tank's size. */
const MANY_LOADS = 200;

/** What a dose comes to: packs, amounts by zone, water, tank loads, nutrients. */
@customElement('dose-result')
export class DoseResult extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; margin-top: 0.5rem; }
      .packs { list-style: none; margin: 0 0 0.5rem; padding: 0; display: grid; gap: 0.6rem; }
      .packs li { display: grid; grid-template-columns: 1.5rem auto 1fr; gap: 0 0.6rem; align-items: center; }
      .packs .figure { min-width: 1.6rem; text-align: right; }
      .packs p { margin: 0; line-height: 1.25; }
      .packs .edge { color: var(--warn); font-weight: 650; }
      .stock { margin: 0 0 0.5rem; }
      h5 { margin: 0.75rem 0 0.15rem; font-size: var(--text-small); color: var(--ink-soft); font-weight: 650; }
      tr.sum td { font-weight: 650; border-bottom: 0; }
      dl { display: grid; grid-template-columns: auto 1fr; gap: 0.15rem 0.75rem; margin: 0.5rem 0 0; }
      dt { color: var(--ink-soft); font-size: var(--text-small); }
      dd { margin: 0; text-align: right; }
      .vessel { fill: none; stroke: var(--ink); stroke-width: 1.5; }
      .left { fill: var(--accent); }
    `,
  ];

  @property({ attribute: false }) figures!: DoseFigures;

  protected override render() {
    const { figures, app } = this;
    const { units } = app;
    const stock = this.stockWords();
    const isDone = (app.visit?.figures.visit.doneOn ?? null) !== null;
    return html`
      ${stock === '' ? nothing : html`<h5>With what is on the shelf</h5><p class="stock">${stock}</p>`}
      ${
        figures.containers.length > 0
          ? html`<h5>${stock === '' ? 'Open' : 'Without the shelf, open'}${figures.containers.length > 1 ? ', of one size' : ''}</h5>
            <ul class="packs">${figures.containers.map((count) => this.renderPack(count))}</ul>`
          : nothing
      }
      ${this.renderZones()}
      <dl>
        <dt>Treated</dt><dd>${formatAreaPm(figures.areaM2, figures.areaSigmaM2, units)}</dd>
        ${figures.stripM2 > 0 ? html`<dt>Taken off as no-apply strip</dt><dd>${formatArea(figures.stripM2, units, 4)}</dd>` : nothing}
        ${figures.carrierL !== null ? html`<dt>Water to mix in</dt><dd>${formatVolume(figures.carrierL, units)}</dd>` : nothing}
        ${laidRows(figures, units).map(({ what, rate }) => html`<dt>${what} ${isDone ? 'by the plan' : 'laid down'}</dt><dd>${rate}</dd>`)}
      </dl>
      ${figures.tank ? this.renderTank(figures.tank) : nothing}
    `;
  }

  private stockWords(): string {
    const { app, figures } = this;
    const { derived } = app.session;
    if (!app.visit) return '';
    const visits = app.yard.visits.flatMap((visit) => derived.visit(visit.id)?.figures ?? []);
    return stockWords(visits, app.visit.figures, figures, app.units);
  }

  private renderPack(count: ContainerCount) {
    const { product } = this.figures;
    const price = product.packs.find((pack) => pack.id === count.packId)?.price ?? null;
    const change = changeWords(count);
    return html`<li>
      ${drawLast(count)}
      <span class="figure">${count.open}</span>
      <div>
        <p><b>${countWords(product, count, this.app.units)}</b>${price === null ? nothing : html` <span class="quiet">at ${formatMoney(price, this.app.yard.settings.currency)}</span>`}</p>
        <p class="quiet">${lastWords(count)}</p>
        ${change ? html`<p class="quiet edge">${change}</p>` : nothing}
      </div>
    </li>`;
  }

  private renderZones() {
    const { figures, app } = this;
    const { units } = app;
    const { zones } = figures;
    const areas = formatZoneAreas(
      zones.map(({ zoneId, areaM2 }) => ({
        areaM2,
        sigmaM2: app.visit?.treated.get(zoneId)?.areaSigmaM2 ?? 0,
      })),
      figures.areaM2,
      figures.areaSigmaM2,
      units,
    );
    const amounts = formatAmounts(
      zones.map((zone) => zone.amount),
      figures.amount,
      units,
      isBulk(figures.product),
    );
    return html`
      <table>
        <thead><tr><th scope="col">Zone</th><th scope="col" class="num">Area</th><th scope="col" class="num">Amount</th></tr></thead>
        <tbody>
          ${zones.map(
            (
              zone,
              index,
            ) => html`<tr><td>${groundName(zone.name)}</td><td class="num">${areas.parts[index]}</td>
              <td class="num">${amounts.parts[index]}</td></tr>`,
          )}
          <tr class="sum"><td>Total</td><td class="num">${areas.total}</td><td class="num">${amounts.total}</td></tr>
        </tbody>
      </table>
      ${areas.isOff ? html`<p class="quiet">${ROUNDED_APART}</p>` : nothing}
    `;
  }

  private renderTank(tank: TankLoads) {
    const { units } = this.app;
    const rows = [
      ...(tank.full && tank.fullLoads > 0
        ? [{ head: tank.fullLoads === 1 ? '1 full load' : `${tank.fullLoads} full, each`, load: tank.full }]
        : []),
      ...(tank.last ? [{ head: tank.fullLoads > 0 ? 'Last' : 'One load', load: tank.last }] : []),
    ];
    const product = formatAmounts(
      rows.map(({ load }) => load.product),
      null,
      units,
      isBulk(this.figures.product),
    );
    const water = (litres: number) => formatVolumeLike(litres, this.figures.carrierL ?? litres, units);
    const loads = tank.fullLoads + (tank.last ? 1 : 0);
    return html`
      <h5>Tank loads, ${formatVolume(tank.tankL, units)} tank: ${formatVolume(tank.totalL, units)} of spray in all</h5>
      ${loads > MANY_LOADS ? html`<p class="note warning"><b>Check: </b>${loads.toLocaleString('en-US')} loads cannot be meant; check what the tank holds.</p>` : nothing}
      <table>
        <thead><tr><th scope="col">Load</th><th scope="col" class="num">Product</th><th scope="col" class="num">Water</th><th scope="col" class="num">Covers</th></tr></thead>
        <tbody>
          ${rows.map(
            ({ head, load }, index) => html`<tr><td>${head}</td><td class="num">${product.parts[index]}</td>
              <td class="num">${water(load.waterL)}</td><td class="num">${formatArea(load.areaM2, units)}</td></tr>`,
          )}
        </tbody>
      </table>
    `;
  }
}

/** The last pack as a vessel filled to what stays in it; the words beside it say the same. */
function drawLast(count: ContainerCount) {
  const height = 22 * count.lastLeft;
  return html`<svg viewBox="0 0 20 30" width="24" height="36" aria-hidden="true">${svg`
    <rect class="left" x="3" y=${27 - height} width="14" height=${height}></rect>
    <path class="vessel" d="M7 1H13V4L17 7V27H3V7L7 4Z"></path>`}</svg>`;
}
