import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { ledgerLimits } from '../../season/ledgerLimits';
import type { LaidDown, LedgerItem, LedgerYear } from '../../season/ledgerSums';
import { needByMonth } from '../../season/needByMonth';
import { formatNutrientCell, nutrientPlace, nutrientUnit } from '../../units/nutrientRow';
import { ITEM_LONG_WORDS, ITEM_WORDS } from '../../words/ledgerWords';
import { groundName } from '../../words/zoneWords';
import { NUTRIENTS } from '../../yard/types';
import { SHORT_MONTH_NAMES } from '../../yard/yearDay';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';
import { goneName, type LedgerModel, ledgerZones, meanOfModel } from './ledger-model';

/** A year month by month: `items` of one ground as columns, or with `byZone` one item zone by zone. */
@customElement('ledger-months')
export class LedgerMonths extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .scroll { overflow-x: auto; }
      table { font-size: var(--text-small); }
      thead th { vertical-align: bottom; }
      thead th.num { white-space: normal; }
      td.num, th.num { padding-left: 0.4rem; padding-right: 0; }
      tbody th { color: var(--ink); font-weight: 400; font-size: var(--text-small); }
      .wide tbody th { min-width: 6rem; }
      .wide tbody th, .wide thead th:first-child { position: sticky; left: 0; background: var(--sheet); }
      tr.sum th, tr.sum td, td.sum { font-weight: 650; }
      tr.sum th, tr.sum td { border-top: 2px solid var(--ink); }
      caption { text-align: left; padding-bottom: 0.25rem; }
      .none, .need { color: var(--ink-soft); }
    `,
  ];

  @property({ attribute: false }) model!: LedgerModel;
  @property({ attribute: false }) items: readonly LedgerItem[] = [];
  @property() ground = '';
  @property({ type: Boolean }) byZone = false;

  protected override render() {
    return this.byZone ? this.renderZones() : this.renderItems();
  }

  private renderItems() {
    const { model, app } = this;
    const year = meanOfModel(model);
    const most = (item: LedgerItem) => year.year.total[item] ?? 0;
    const items = this.items.filter((item) => most(item) > 0 || isNutrient(item));
    const isMean = model.zones.length > 1;
    const caption = `${this.ground}${isMean ? `, mean by area of ${model.zones.length} zones,` : ''} in ${model.year} by month, ${nutrientUnit(app.units)}`;
    const needs = this.needs();
    const needMost = Math.max(most('N'), ...(needs ?? []));
    const needCell = (need: number) =>
      html`<td class="num need">${need > 0 ? formatNutrientCell(need, nutrientPlace(needMost, app.units), app.units) : '·'}</td>`;
    const cells = (laid: LaidDown, need: number) =>
      items.map(
        (item) =>
          html`${this.cell(laid, item, most(item))}${needs && item === 'N' ? needCell(need) : nothing}`,
      );
    return html`
      <div class="scroll" tabindex="0" role="region" aria-label=${`Table: ${caption}`}>
      <table>
        <caption class="quiet">${caption}</caption>
        <thead><tr><th scope="col">Month</th>${items.map((item) => html`<th scope="col" class="num">${ITEM_WORDS[item]}</th>${needs && item === 'N' ? html`<th scope="col" class="num">Need of N</th>` : nothing}`)}</tr></thead>
        <tbody>
          ${year.months.map(
            (month, index) =>
              html`<tr><th scope="row">${SHORT_MONTH_NAMES[index]}${doneWords(month)}</th>${cells(month, needs?.[index] ?? 0)}</tr>`,
          )}
          <tr class="sum"><th scope="row">Year</th>${cells(year.year, sumOf(needs ?? []))}</tr>
        </tbody>
      </table></div>
      <p class="quiet">${nutrientUnit(app.units)}, done and to come together${isMean ? '; the mean over all ground of these zones, strips left alone counted in' : ''}.${goneWords(model)} A mark tells what of a month is done: ● all, ◐ a part.</p>
    `;
  }

  private renderZones() {
    const { model, app } = this;
    const { item } = model;
    const named = [
      ...model.zones.map(({ id, name }) => [id, groundName(name)] as const),
      ...model.gone.map((ground) => [ground.zoneId, goneName(ground)] as const),
    ];
    const rows = named.flatMap(([id, name]) => {
      const year = model.years.get(id);
      return year ? [{ id, row: [name, year] as const }] : [];
    });
    const most = Math.max(0, ...rows.map(({ row: [, year] }) => year.year.total[item] ?? 0));
    const caption = `${ITEM_LONG_WORDS[item]} in ${model.year} by zone and month, ${nutrientUnit(app.units)}`;
    const needs = item === 'N' ? this.needs() : null;
    const needOf = (zoneId: string) => {
      const zone = model.zones.find(({ id }) => id === zoneId);
      return zone ? (ledgerLimits(model.yard, zone, item).need ?? 0) : 0;
    };
    const rate = (value: number) =>
      value > 0 ? formatNutrientCell(value, nutrientPlace(Math.max(most, value), app.units), app.units) : '·';
    const line = ([name, { months, year }]: readonly [string, LedgerYear], need: number, isSum: boolean) =>
      html`<tr class=${isSum ? 'sum' : ''}><th scope="row">${name}</th>${months.map((month) => this.cell(month, item, most))}${this.cell(year, item, most, true)}${needs ? html`<td class="num need">${rate(need)}</td>` : nothing}</tr>`;
    return html`
      <div class="scroll" tabindex="0" role="region" aria-label=${`Table: ${caption}`}>
        <table class="wide">
          <caption class="visually-hidden">${caption}</caption>
          <thead><tr><th scope="col">Zone</th>${SHORT_MONTH_NAMES.map((month) => html`<th scope="col" class="num">${month}</th>`)}<th scope="col" class="num">Year</th>${needs ? html`<th scope="col" class="num">Need</th>` : nothing}</tr></thead>
          <tbody>
            ${rows.map(({ id, row }) => line(row, needOf(id), false))}
            ${rows.length > 1 ? line(['Mean by area', meanOfModel(model)], sumOf(needs ?? []), true) : nothing}
            ${
              needs
                ? html`<tr class="need"><th scope="row">Need${model.zones.length > 1 ? ', mean by area' : ''}</th>${needs.map((need) => html`<td class="num">${rate(need)}</td>`)}<td class="num sum">${rate(sumOf(needs))}</td><td></td></tr>`
                : nothing
            }
          </tbody>
        </table>
      </div>
      <p class="quiet">${ITEM_LONG_WORDS[item]}, ${nutrientUnit(app.units)}, done and to come together.${goneWords(model)}</p>
    `;
  }

  /** Need of N month by month over the ground shown; null where none is known. */
  private needs(): readonly number[] | null {
    const { model, app } = this;
    return needByMonth(model.yard, ledgerZones(model.zones, app.session.derived.measured));
  }

  private cell({ total }: LaidDown, item: LedgerItem, most: number, isSum = false) {
    const value = total[item] ?? 0;
    const { units } = this.app;
    return value > 0
      ? html`<td class="num ${isSum ? 'sum' : ''}">${formatNutrientCell(value, nutrientPlace(most, units), units)}</td>`
      : html`<td class="num none">·</td>`;
  }
}

/** Ground that is gone is told apart: the mean is of the ground there is. */
function goneWords({ zones, gone }: LedgerModel): string {
  return zones.length > 0 && gone.length > 0 ? ' Ground that is gone is not in the mean.' : '';
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** N, P2O5 and K2O stand in the table whether any is laid down or not. */
function isNutrient(item: LedgerItem): boolean {
  return (NUTRIENTS as readonly string[]).includes(item);
}

/** Whether a month's feeding is done. */
function doneWords({ done, toCome }: LaidDown) {
  const [some, more] = [done, toCome].map((laid) => Object.values(laid).some((value) => value > 0));
  if (!some) return nothing;
  return html` <span aria-hidden="true">${more ? '◐' : '●'}</span><span class="visually-hidden">${more ? ', partly done' : ', done'}</span>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'ledger-months': LedgerMonths;
  }
}
