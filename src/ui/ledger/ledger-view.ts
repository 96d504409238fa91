import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { ledgerDosesCsv, ledgerMonthsCsv } from '../../io/writeLedgerCsv';
import { doseAmounts } from '../../season/ledgerAmounts';
import { type LedgerItem, yearOf } from '../../season/ledgerSums';
import type { LedgerEntry } from '../../season/types';
import { ITEM_LONG_WORDS } from '../../words/ledgerWords';
import { doseName } from '../../words/productWords';
import { groundName } from '../../words/zoneWords';
import { AppPart, fieldValue } from '../parts/app-part';
import { saveFile } from '../parts/save-file';
import { shared } from '../parts/shared';
import {
  goneGround,
  goneName,
  groundChoices,
  groundWords,
  type LedgerGround,
  type LedgerModel,
  ledgerModel,
  ledgerScope,
  meanOfModel,
} from './ledger-model';
import './ledger-months';
import './ledger-zones';

const VIEWS = { zones: 'Against need and cap', months: 'By month', matrix: 'Zones by month' } as const;
type View = keyof typeof VIEWS;

/** The ledger of a calendar year: what was and will be laid down, zone by zone and month by month. */
@customElement('ledger-view')
export class LedgerView extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .choices { display: grid; grid-template-columns: repeat(auto-fit, minmax(7.5rem, 1fr)); gap: 0.5rem; margin-bottom: 0.5rem; }
      .views { display: grid; grid-template-columns: repeat(3, 1fr); margin-bottom: 0.75rem; }
      .views button { border-radius: 0; padding: 0 0.25rem; line-height: 1.15; font-size: var(--text-small); }
      .views button + button { border-left-width: 0; }
      .row { margin-top: 0.5rem; }
    `,
  ];

  /** the year shown; null: one that has something. Another is asked for by `year-chosen` (detail: the year). */
  @property({ attribute: false }) year: number | null = null;
  @state() private item: LedgerItem = 'N';
  @state() private ground: LedgerGround = 'all';
  @state() private view: View = 'zones';
  private model: LedgerModel | null = null;

  protected override render() {
    const { app } = this;
    const { entries } = app.session.derived.season();
    const grounds = groundChoices(app.yard, goneGround(entries, app.yard));
    if (grounds.length === 1) return html`<p>No ground that can be treated is measured yet.</p>`;
    const scope = ledgerScope(entries);
    const thisYear = Number(app.today().slice(0, 4));
    const years = [...new Set([...scope.years, thisYear, ...(this.year === null ? [] : [this.year])])].sort(
      (a, b) => a - b,
    );
    const year = this.year ?? usualYear(scope.years, thisYear);
    const { items } = scope;
    const item = items.includes(this.item) ? this.item : 'N';
    const ground = grounds.includes(this.ground) ? this.ground : 'all';
    const model = ledgerModel(app.session.derived, ground, year, item, this.model);
    this.model = model;
    return html`
      <div class="choices">
        <label>Year<select @change=${(event: Event) => {
          this.chooseYear(Number(fieldValue(event)));
        }}>${years.map((each) => html`<option value=${each} .selected=${each === year}>${each}</option>`)}</select></label>
        ${
          this.view === 'months'
            ? nothing
            : html`<label>Counted<select @change=${(event: Event) => {
                this.item = fieldValue(event) as LedgerItem;
              }}>${items.map((each) => html`<option value=${each} .selected=${each === item}>${ITEM_LONG_WORDS[each]}</option>`)}</select></label>`
        }
        <label>Ground<select @change=${(event: Event) => {
          this.ground = fieldValue(event) as LedgerGround;
        }}>${grounds.map((each) => html`<option value=${each} .selected=${each === ground}>${groundWords(app.yard, each)}</option>`)}</select></label>
      </div>
      <div class="views" role="group" aria-label="Table shown">
        ${(Object.keys(VIEWS) as View[]).map(
          (each) =>
            html`<button aria-pressed=${each === this.view} @click=${() => {
              this.view = each;
            }}>${VIEWS[each]}</button>`,
        )}
      </div>
      ${this.renderShown(model, items, ground)}
      ${this.renderUndated(entries)}
      <div class="row">
        <button @click=${() => this.saveMonths(model, items, ground)}>Year by month (.csv)</button>
        <button @click=${() => this.saveDoses(model, items)}>Every dose (.csv)</button>
      </div>
    `;
  }

  private chooseYear(year: number): void {
    this.year = year;
    this.dispatchEvent(
      new CustomEvent<number>('year-chosen', { detail: year, bubbles: true, composed: true }),
    );
  }

  private renderShown(model: LedgerModel, items: readonly LedgerItem[], ground: LedgerGround) {
    const { app, rev } = this;
    if (this.view === 'zones')
      return html`<ledger-zones .app=${app} .rev=${rev} .model=${model}></ledger-zones>`;
    return html`<ledger-months .app=${app} .rev=${rev} .model=${model} .items=${items} .ground=${groundWords(app.yard, ground)}
      .byZone=${this.view === 'matrix'}></ledger-months>`;
  }

  private renderUndated(entries: readonly LedgerEntry[]) {
    const ids = [...new Set(entries.filter((entry) => entry.date === null).map((entry) => entry.visitId))];
    if (ids.length === 0) return nothing;
    const names = ids.map((id) => `“${this.visitName(id)}”`).join(', ');
    return html`<p class="note">${ids.length === 1 ? 'A visit has no date and belongs' : `${ids.length} visits have no date and belong`} to no year: ${names}.</p>`;
  }

  private visitName(id: string): string {
    return this.app.yard.visits.find((visit) => visit.id === id)?.name.trim() || 'Without a name';
  }

  private saveMonths(model: LedgerModel, items: readonly LedgerItem[], ground: LedgerGround): void {
    const { app } = this;
    const named = [
      ...model.zones.map(({ id, name }) => [id, groundName(name)] as const),
      ...model.gone.map((ground) => [ground.zoneId, goneName(ground)] as const),
    ];
    const own = named.flatMap(([id, name]) => {
      const year = model.years.get(id);
      return year ? [[name, year] as const] : [];
    });
    const mean = [`${groundWords(app.yard, ground)}, mean by area`, meanOfModel(model)] as const;
    const grounds = own.length > 1 ? [...own, mean] : own;
    const text = ledgerMonthsCsv(grounds, items, model.year, app.units);
    saveFile(`${this.fileName()} ${model.year} by month.csv`, 'text/csv', text);
  }

  private saveDoses(model: LedgerModel, items: readonly LedgerItem[]): void {
    const { app } = this;
    const gone = new Map(model.gone.map((ground) => [ground.zoneId, goneName(ground)]));
    const entries = [...model.years.values()]
      .flatMap((zone) => zone.entries)
      .filter((entry) => yearOf(entry) === model.year)
      .sort((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : (a.date ?? '') > (b.date ?? '') ? 1 : 0));
    const { derived } = app.session;
    const amounts = doseAmounts(app.yard.visits.flatMap((visit) => derived.visit(visit.id)?.figures ?? []));
    const text = ledgerDosesCsv(
      entries,
      items,
      {
        zone: (id) => gone.get(id) ?? groundName(app.yard.zones.find((zone) => zone.id === id)?.name ?? ''),
        visit: (id) => this.visitName(id),
        product: ({ visitId, doseId }) => {
          const dose = app.yard.visits
            .find(({ id }) => id === visitId)
            ?.doses.find(({ id }) => id === doseId);
          return dose ? doseName(dose, app.yard.products) : '';
        },
        amounts: (doseId) => amounts.get(doseId),
      },
      app.units,
    );
    saveFile(`${this.fileName()} ${model.year} doses.csv`, 'text/csv', text);
  }

  private fileName(): string {
    return `${this.app.yard.name.replace(/[^\p{L}\p{N} _-]+/gu, ' ').trim() || 'Yard'}, ledger`;
  }
}

/** This year where anything is laid down in it, else the nearest later year, else the last. */
function usualYear(filled: readonly number[], thisYear: number): number {
  if (filled.includes(thisYear)) return thisYear;
  return filled.find((year) => year > thisYear) ?? filled.at(-1) ?? thisYear;
}

declare global {
  interface HTMLElementTagNameMap {
    'ledger-view': LedgerView;
  }
}
