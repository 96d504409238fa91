import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { type LedgerLimits, ledgerLimits, leftOf } from '../../season/ledgerLimits';
import { type LaidDown, laidBy, meanOfZones } from '../../season/ledgerSums';
import type { LedgerEntry } from '../../season/types';
import { yearDayWords } from '../../season/yearDayWords';
import { formatNutrientCell, inNutrientUnit, nutrientPlace, nutrientUnit } from '../../units/nutrientRow';
import { ITEM_LONG_WORDS, ITEM_WORDS } from '../../words/ledgerWords';
import { CLASS_WORDS, doseName } from '../../words/productWords';
import { groundName } from '../../words/zoneWords';
import { zoneClass } from '../../yard/choose';
import { ZONE_CLASSES } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';
import { WidthWatch } from '../parts/width-watch';
import { barStyles, drawBars, type LedgerBar } from './ledger-bars';
import { goneName, type LedgerModel, planKey } from './ledger-model';

interface Row {
  readonly name: string;
  /** null: the mean of a class. */
  readonly zoneId: string | null;
  readonly laid: LaidDown;
  readonly limits: LedgerLimits;
}

/** One nutrient over the year: zone by zone against need and cap, each opening to its doses. */
@customElement('ledger-zones')
export class LedgerZones extends AppPart {
  static override styles = [
    shared,
    barStyles,
    css`
      :host { display: block; }
      .scroll { overflow-x: auto; }
      table { font-size: var(--text-small); }
      th, td { padding-right: 0.35rem; }
      td.num, th.num { padding-left: 0.35rem; padding-right: 0; }
      thead th { vertical-align: bottom; }
      thead th.num { white-space: normal; }
      tbody th, td { vertical-align: middle; padding-top: 0; padding-bottom: 0; }
      tr.mean th, tr.mean td { padding-top: 0.6rem; padding-bottom: 0.3rem; }
      tbody th { color: var(--ink); font-weight: 400; font-size: var(--text-small); }
      th button { width: 100%; text-align: left; padding: 0 0.25rem; margin-left: -0.25rem; font-size: var(--text-small); line-height: 1.2; }
      tr.mean th, tr.mean td { font-weight: 650; border-bottom-color: var(--line-strong); }
      .over { font-weight: 700; color: var(--danger); }
      tr.doses > td { padding: 0.25rem 0 0.75rem 0.75rem; border-left: 4px solid var(--line-strong); background: var(--sheet-sunk); }
      tr.doses td.day { white-space: nowrap; }
      tr.doses p { margin: 0.25rem 0; }
      tr.doses button { min-height: 2.5rem; padding: 0 0.25rem; font-size: var(--text-small); text-align: left; line-height: 1.2; }
      @media (pointer: coarse) { tr.doses button { min-height: var(--touch); } }
    `,
  ];

  @property({ attribute: false }) model!: LedgerModel;
  @state() private openId: string | null = null;
  @state() private width = 342;
  protected readonly widthWatch = new WidthWatch(this, (widthPx) => {
    const width = Math.round(widthPx);
    if (width > 0 && Math.abs(width - this.width) > 1) this.width = width;
  });

  protected override render() {
    const { model, app } = this;
    const { units } = app;
    const rows = this.rows();
    const value = ({ laid }: Row) => laid.total[model.item] ?? 0;
    const place = nutrientPlace(
      Math.max(0, ...rows.flatMap((row) => [value(row), row.limits.need ?? 0, row.limits.cap ?? 0])),
      units,
    );
    const show = (rate: number | null) => (rate === null ? '' : formatNutrientCell(rate, place, units));
    const hasNeed = rows.some((row) => row.limits.need !== null);
    const hasCap = rows.some((row) => row.limits.cap !== null);
    const columns = 4 + (hasNeed ? 1 : 0) + (hasCap ? 1 : 0) + (hasNeed || hasCap ? 1 : 0);
    const unit = nutrientUnit(units);
    const caption = `${ITEM_LONG_WORDS[model.item]} in ${model.year}, ${unit}`;
    return html`
      ${drawBars(
        rows.filter((row) => row.zoneId !== null || rows.length > 1).map((row) => this.barOf(row)),
        unit,
        `Bars: ${caption}, done and to come, by zone. The table below has the figures.`,
        this.width,
      )}
      <div class="scroll" tabindex="0" role="region" aria-label=${`Table: ${caption}`}>
        <table>
          <caption class="visually-hidden">${caption}</caption>
          <thead><tr><th scope="col">Zone</th><th scope="col" class="num">Done</th><th scope="col" class="num">To come</th>
            <th scope="col" class="num">Year</th>${hasNeed ? html`<th scope="col" class="num">Need</th>` : nothing}
            ${hasCap ? html`<th scope="col" class="num">Cap</th>` : nothing}
            ${hasNeed || hasCap ? html`<th scope="col" class="num">Left</th>` : nothing}</tr></thead>
          <tbody>
            ${rows.map((row) => {
              const left = leftOf(value(row), row.limits);
              const isOpen = row.zoneId !== null && row.zoneId === this.openId;
              return html`<tr class=${row.zoneId === null ? 'mean' : ''}>
                  <th scope="row">${row.zoneId === null ? row.name : html`<button class="plain" aria-expanded=${isOpen} @click=${() => this.toggle(row.zoneId)}>${row.name}</button>`}</th>
                  <td class="num">${show(row.laid.done[model.item] ?? 0)}</td>
                  <td class="num">${show(row.laid.toCome[model.item] ?? 0)}</td>
                  <td class="num"><b>${show(value(row))}</b></td>
                  ${hasNeed ? html`<td class="num">${show(row.limits.need)}</td>` : nothing}
                  ${hasCap ? html`<td class="num">${show(row.limits.cap)}</td>` : nothing}
                  ${
                    hasNeed || hasCap
                      ? html`<td class="num ${left !== null && left < -1e-12 ? 'over' : ''}">${left !== null && left < -1e-12 ? html`over ${show(-left)}` : show(left)}</td>`
                      : nothing
                  }</tr>
                ${isOpen && row.zoneId ? html`<tr class="doses"><td colspan=${columns}>${this.renderDoses(row.zoneId, place)}</td></tr>` : nothing}`;
            })}
          </tbody>
        </table>
      </div>
      <p class="quiet">${hasNeed || hasCap ? 'Left is to the lower of need and cap. ' : ''}Open a zone for its doses. The mean of a class is over all its ground, strips left alone counted in.${this.model.gone.length > 0 ? ' Ground that is gone stands by its recorded name.' : ''}</p>
    `;
  }

  private rows(): readonly Row[] {
    const { model } = this;
    const gone = model.gone.flatMap((ground): Row[] => {
      const year = model.years.get(ground.zoneId);
      const limits = { need: null, cap: null };
      return year ? [{ name: goneName(ground), zoneId: ground.zoneId, laid: year.year, limits }] : [];
    });
    const classes = ZONE_CLASSES.flatMap((each): Row[] => {
      const zones = model.zones.filter((zone) => zoneClass(zone) === each);
      const years = zones.flatMap((zone) => model.years.get(zone.id) ?? []);
      const own = zones.flatMap((zone): Row[] => {
        const year = model.years.get(zone.id);
        const limits = ledgerLimits(model.yard, zone, model.item);
        return year ? [{ name: groundName(zone.name), zoneId: zone.id, laid: year.year, limits }] : [];
      });
      if (own.length < 2) return own;
      const same = (of: (limits: LedgerLimits) => number | null) => {
        const [first, ...others] = own.map((row) => of(row.limits));
        return first !== undefined && others.every((other) => other === first) ? first : null;
      };
      const limits = { need: same((one) => one.need), cap: same((one) => one.cap) };
      return [
        { name: `${CLASS_WORDS[each]}, mean`, zoneId: null, laid: meanOfZones(years).year, limits },
        ...own,
      ];
    });
    return [...classes, ...gone];
  }

  private barOf({ name, laid, limits }: Row): LedgerBar {
    const { units } = this.app;
    const show = (rate: number) => inNutrientUnit(rate, units);
    return {
      name,
      done: show(laid.done[this.model.item] ?? 0),
      toCome: show(laid.toCome[this.model.item] ?? 0),
      need: limits.need === null ? null : show(limits.need),
      cap: limits.cap === null ? null : show(limits.cap),
    };
  }

  private toggle(zoneId: string | null): void {
    this.openId = zoneId === this.openId ? null : zoneId;
  }

  private renderDoses(zoneId: string, place: number) {
    const { model, app } = this;
    const entries = model.years.get(zoneId)?.entries ?? [];
    if (entries.length === 0) return html`<p>No dose of ${model.year} has it as its ground.</p>`;
    const show = (entry: LedgerEntry | undefined) =>
      entry ? formatNutrientCell(laidBy(entry)[model.item] ?? 0, place, app.units) : '';
    return html`<table>
      <thead><tr><th scope="col">Day</th><th scope="col">Product</th><th scope="col" class="num">Planned ${ITEM_WORDS[model.item]}</th>
        <th scope="col" class="num">Laid down</th></tr></thead>
      <tbody>${entries.map(
        (entry) => html`<tr><td class="day">${yearDayWords((entry.date ?? '').slice(5))}</td>
          <td><button class="plain" @click=${() => app.setView({ step: 'visit', visitId: entry.visitId })}>${this.doseName(entry)}</button></td>
          <td class="num">${show(model.planned().get(planKey(entry)))}</td>
          <td class="num">${entry.isDone ? show(entry) : 'to come'}</td></tr>`,
      )}</tbody></table>`;
  }

  private doseName({ visitId, doseId, productName }: LedgerEntry): string {
    const { yard } = this.model;
    const dose = yard.visits.find(({ id }) => id === visitId)?.doses.find(({ id }) => id === doseId);
    return dose ? doseName(dose, yard.products) : productName;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ledger-zones': LedgerZones;
  }
}
