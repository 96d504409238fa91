import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { DeskFilter, DeskOverview, DeskPage, DeskRow } from '../../io/deskTypes';
import type { TargetKind } from '../../io/importTypes';
import { formatArea } from '../../units/format';
import { KIND_WORDS, KINDS_TO_DRAW, MARK_WORDS } from '../../words/zoneWords';
import { MARK_KINDS } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';

const PAGE_ROWS = 50;
/** Distance of the filter at first, m. */
const FIRST_NEAR_M = 100;

const TARGET_WORDS: Readonly<Record<TargetKind, string>> = {
  ...KIND_WORDS,
  ...MARK_WORDS,
  parcel: 'Outline of the property',
};
const AREA_KINDS: readonly TargetKind[] = [...KINDS_TO_DRAW, 'parcel'];
const SHOW_WORDS: Readonly<Record<DeskFilter['show'], string>> = {
  all: 'all',
  usable: 'what can come in',
  ticked: 'what is ticked',
  refused: 'what cannot',
};
type Nearness = 'anywhere' | 'yard' | 'view';
const NEAR_WORDS: Readonly<Record<Nearness, string>> = {
  anywhere: 'anywhere',
  yard: 'near the open yard',
  view: 'near the middle of the map',
};

/**
 * The features of a file, a page at a time, with what becomes of each. Events: `filter-change`,
 * `offset-change`, `tick` and `edit` (their `which` is null for all that are listed).
 */
@customElement('import-list')
export class ImportList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .filters { display: grid; grid-template-columns: repeat(auto-fit, minmax(9.5rem, 1fr)); gap: 0.5rem; align-items: end; margin-bottom: 0.5rem; }
      .all { align-items: end; margin-bottom: 0.5rem; }
      .all label { flex: 0 1 14rem; }
      .pages { align-items: center; justify-content: space-between; margin: 0.5rem 0; }
      ol { list-style: none; margin: 0; padding: 0; border-top: 1px solid var(--line-strong); }
      ol > li { display: grid; grid-template-columns: auto minmax(7rem, 1.4fr) minmax(8rem, 1fr) minmax(6.5rem, auto); gap: 0.25rem 0.6rem; align-items: center; padding: 0.35rem 0; border-bottom: 1px solid var(--line); }
      li .tick { display: grid; place-items: center; width: var(--touch); height: var(--touch); }
      li .area { text-align: right; white-space: nowrap; }
      li .where, li .notes { grid-column: 2 / -1; margin: 0; }
      li .notes { padding: 0 0 0 1rem; font-size: var(--text-small); }
      li.bad { color: var(--danger); }
      li.check { color: var(--warn); }
      .cannot { font-weight: 650; grid-column: 3 / -1; }
      .name { overflow-wrap: anywhere; }
      @media (max-width: 820px) {
        ol > li { grid-template-columns: auto minmax(0, 1fr) auto; }
        li select { grid-column: 2 / -1; }
        li .area { grid-row: 1; grid-column: 3; }
        .cannot { grid-column: 2 / -1; }
      }
    `,
  ];

  @property({ attribute: false }) overview!: DeskOverview;
  @property({ attribute: false }) page: DeskPage | null = null;
  @property({ attribute: false }) filter!: DeskFilter;
  @property({ attribute: false }) offset = 0;
  @state() private nearM = FIRST_NEAR_M;

  protected override render() {
    const { page } = this;
    return html`${this.renderFilters()}
      ${page === null ? html`<p>Listing…</p>` : html`${this.renderAll(page)}${this.renderRows(page)}${this.renderPages(page)}`}`;
  }

  private renderFilters() {
    const { filter, overview } = this;
    if (overview.features <= 3) return nothing;
    const near: Nearness = filter.near === null ? 'anywhere' : filter.near.of;
    const places: readonly Nearness[] =
      this.app.yard.zones.length > 0 ? ['anywhere', 'yard', 'view'] : ['anywhere', 'view'];
    return html`<div class="filters" role="group" aria-label="Which features are listed">
      <label>Name holds<input type="search" autocomplete="off" .value=${filter.text} @input=${(event: Event) => this.setFilter({ text: fieldValue(event) })} /></label>
      ${selectField('Show', filter.show, ['all', 'usable', 'ticked', 'refused'], SHOW_WORDS, (show) => this.setFilter({ show }))}
      ${
        overview.layers.length > 0
          ? html`<label>Layer<select @change=${(event: Event) => this.setFilter({ layer: fieldValue(event) === '*' ? null : fieldValue(event) })}>
              <option value="*" .selected=${filter.layer === null}>all</option>
              ${overview.layers.map(({ name, count }) => html`<option value=${name} .selected=${filter.layer === name}>${name === '' ? 'no layer' : name} (${count.toLocaleString('en-US')})</option>`)}</select></label>`
          : nothing
      }
      ${selectField('Where', near, places, NEAR_WORDS, (value) => this.setNear(value, this.nearM))}
      ${
        near === 'anywhere'
          ? nothing
          : html`<quantity-field label="Within" quantity="length" .system=${this.app.units} .min=${1} .max=${100_000} .value=${this.nearM} @quantity-change=${(event: CustomEvent<QuantityChange>) => this.setNear(near, event.detail.valueSi ?? this.nearM)}></quantity-field>`
      }
    </div>`;
  }

  private renderAll({ total }: DeskPage) {
    if (total < 2) return nothing;
    return html`<div class="row all" role="group" aria-label="All that are listed">
      <button @click=${() => this.send('tick', { which: null, isOn: true })}>Tick all ${total.toLocaleString('en-US')} listed</button>
      <button @click=${() => this.send('tick', { which: null, isOn: false })}>Untick them</button>
      <label>Kind of all listed areas<select @change=${(event: Event) => {
        const select = event.target as HTMLSelectElement;
        if (select.value !== '') this.send('edit', { which: null, kind: select.value as TargetKind });
        select.value = '';
      }}><option value="">leave as they are</option>${KINDS_TO_DRAW.map((kind) => html`<option value=${kind}>${KIND_WORDS[kind]}</option>`)}</select></label>
    </div>`;
  }

  private renderRows({ rows }: DeskPage) {
    if (rows.length === 0) return html`<p class="note">Nothing in the file fits the list above.</p>`;
    return html`<ol aria-label="Features">${rows.map((row) => this.renderRow(row))}</ol>`;
  }

  private renderRow(row: DeskRow) {
    const title = row.name || row.place;
    const isUsable =
      row.outcome !== 'refused' && (row.outcome !== 'kept' || (row.isPoint && row.corners === 1));
    return html`<li>
      ${
        isUsable
          ? html`<label class="tick"><input type="checkbox" aria-label=${`Bring in ${title}`} .checked=${row.isTicked} @change=${(event: Event) => this.send('tick', { which: row.index, isOn: isTicked(event) })} /></label>
              <input aria-label=${`Name of ${title}`} autocomplete="off" .value=${row.name} placeholder="named by its kind" @change=${(event: Event) => this.send('edit', { which: row.index, name: fieldValue(event).trim() })} />
              <select aria-label=${`Kind of ${title}`} @change=${(event: Event) => this.send('edit', { which: row.index, kind: fieldValue(event) as TargetKind })}>
                ${(row.isPoint ? MARK_KINDS : AREA_KINDS).map((kind) => html`<option value=${kind} .selected=${kind === row.kind}>${TARGET_WORDS[kind]}</option>`)}</select>
              <span class="area">${row.isPoint ? '' : formatArea(row.areaM2, this.app.units)}</span>`
          : html`<span class="tick" aria-hidden="true">–</span><span class="name">${title}</span><span class="cannot ${row.outcome === 'refused' ? 'bad' : ''}">${row.outcome === 'refused' ? 'cannot come in' : 'no zone'}</span>`
      }
      <p class="where quiet">${row.place}${row.layer ? `, ${row.layer}` : ''}${row.corners > 1 ? `, ${row.corners.toLocaleString('en-US')} corners` : ''}</p>
      ${row.notes.length > 0 ? html`<ul class="notes">${row.notes.map((note) => html`<li class="plain ${note.severity === 'error' ? 'bad' : note.severity === 'warning' ? 'check' : ''}">${withoutPlace(note.message, row)}</li>`)}</ul>` : nothing}
    </li>`;
  }

  private renderPages({ total }: DeskPage) {
    if (total <= PAGE_ROWS) return nothing;
    const last = Math.min(total, this.offset + PAGE_ROWS);
    return html`<nav class="row pages" aria-label="Pages of the list">
      <button ?disabled=${this.offset === 0} @click=${() => this.send('offset-change', Math.max(0, this.offset - PAGE_ROWS))}>‹ Earlier</button>
      <span>${(this.offset + 1).toLocaleString('en-US')} to ${last.toLocaleString('en-US')} of ${total.toLocaleString('en-US')}</span>
      <button ?disabled=${last >= total} @click=${() => this.send('offset-change', this.offset + PAGE_ROWS)}>Later ›</button>
    </nav>`;
  }

  private setNear(of: Nearness, withinM: number): void {
    this.nearM = withinM;
    this.setFilter({ near: of === 'anywhere' ? null : { of, withinM } });
  }

  private setFilter(change: Partial<DeskFilter>): void {
    this.send('filter-change', { ...this.filter, ...change });
  }

  private send(type: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(type, { detail }));
  }
}

/** The message without the feature it begins with, which is read just above. */
function withoutPlace(message: string, { place }: DeskRow): string {
  if (!message.startsWith(place)) return message;
  const rest = message.slice(place.length).replace(/^( \(“[^”]*”\))?: /, '');
  return rest.charAt(0).toUpperCase() + rest.slice(1);
}
