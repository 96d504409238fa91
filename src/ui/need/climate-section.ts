import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { readMonthlyMeans } from '../../need/readMonthlyMeans';
import { unitChoices } from '../../units/choices';
import type { Climate, Issue } from '../../yard/types';
import { MONTH_NAMES } from '../../yard/yearDay';
import { AppPart, fieldValue } from '../parts/app-part';
import { fold } from '../parts/fold';
import { issueNotes } from '../parts/issue-notes';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { shared } from '../parts/shared';

/** Largest file of temperatures that is read, bytes: a century of days. */
const MOST_BYTES = 5_000_000;
const NONE: readonly (number | null)[] = Array<null>(12).fill(null);

/** Monthly mean temperatures of the yard: typed month by month, or read from pasted text or a file. */
@customElement('climate-section')
export class ClimateSection extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .twelve { display: grid; grid-template-columns: repeat(auto-fill, minmax(7rem, 1fr)); gap: 0.5rem; margin: 0.5rem 0; }
      textarea { min-height: 7rem; font-family: ui-monospace, monospace; }
      .row { margin: 0.5rem 0; }
      input[type='file'] { padding: 0.5rem; font-size: var(--text-small); }
    `,
  ];

  /** months typed while not all twelve are known, °C. */
  @state() private draft: readonly (number | null)[] = NONE;
  @state() private text = '';
  @state() private issues: readonly Issue[] = [];
  @state() private notes: readonly string[] = [];

  private yardId = '';
  /** the months as they stood when the last reading was told of. */
  private toldOf: Climate['monthlyMeanC'] = null;

  /** What was typed for one yard is not for the next; what was told of a reading goes when the months change. */
  protected override willUpdate(): void {
    const { id, climate } = this.app.yard;
    if (climate.monthlyMeanC !== this.toldOf) this.forgetReading();
    if (id === this.yardId) return;
    this.yardId = id;
    this.draft = NONE;
    this.text = '';
    this.forgetReading();
  }

  private forgetReading(): void {
    this.issues = [];
    this.notes = [];
    this.toldOf = this.app.yard.climate.monthlyMeanC;
  }

  protected override render() {
    const { climate } = this.app.yard;
    const unit = unitChoices('temperature', this.app.units)[0];
    const values = climate.monthlyMeanC ?? this.draft;
    const known = values.filter((value) => value !== null).length;
    return html`
      <h3>Climate</h3>
      <p class="quiet">Mean air temperature of each month, such as the 30-year normals of the nearest weather station. It shares the year out by growth and finds the spring flush.</p>
      <div class="twelve">${MONTH_NAMES.map((name, month) => {
        const value = values[month] ?? null;
        return html`<number-field label=${name} suffix=${unit?.label ?? ''} .value=${value === null ? null : Math.round((unit?.fromSI(value) ?? value) * 100) / 100} ?optional=${climate.monthlyMeanC === null} .min=${unit?.fromSI(-60) ?? -60} .max=${unit?.fromSI(45) ?? 45}
          @number-change=${(event: CustomEvent<NumberChange>) => this.typed(month, event.detail.value === null ? null : (unit?.toSI(event.detail.value) ?? null))}></number-field>`;
      })}</div>
      ${climate.monthlyMeanC === null && known > 0 ? html`<p class="note">${known} of twelve months typed. They count, and are kept, once all twelve are there.</p>` : nothing}
      <label>Where they are from<input autocomplete="off" .value=${climate.source} @input=${(event: Event) => this.set({ source: fieldValue(event) }, 'climate source')} /></label>
      <details class="fold"><summary>Paste a table or a list of days</summary>${this.renderPaste()}</details>
      ${climate.monthlyMeanC === null ? nothing : html`<div class="row"><button class="danger" @click=${this.clear}>Clear the temperatures</button></div>`}
    `;
  }

  private renderPaste() {
    return html`
      <label>Twelve numbers, a table with the months, or days with a date and the mean or the highest and lowest
        <textarea spellcheck="false" .value=${this.text} @input=${(event: Event) => {
          this.text = fieldValue(event);
          this.forgetReading();
        }}></textarea></label>
      <div class="row"><button class="primary" @click=${() => this.read(this.text)}>Read it</button>
        <label>or a text or CSV file<input type="file" accept=".csv,.txt,.tsv,text/*" @change=${this.readFile} /></label></div>
      <p class="quiet">Write °F or °C with the figures; without it they are read in the unit of this yard.</p>
      ${issueNotes(this.issues)}
      ${this.notes.length > 0 ? html`<p class="note" role="status">Read. ${this.notes.join(' ')}</p>` : nothing}
    `;
  }

  private typed(month: number, valueC: number | null): void {
    const { monthlyMeanC } = this.app.yard.climate;
    this.forgetReading();
    const next = (monthlyMeanC ?? this.draft).with(month, valueC);
    if (monthlyMeanC === null) this.draft = next;
    if (next.every((value) => value !== null)) this.set({ monthlyMeanC: next }, `climate ${month}`);
  }

  private read(text: string): void {
    const read = readMonthlyMeans(text, this.app.units);
    if (read.ok) this.set({ monthlyMeanC: read.monthlyMeanC });
    this.forgetReading();
    if (read.ok) this.notes = ['The twelve months stand above.', ...read.notes];
    else this.issues = read.issues;
  }

  private async readFile(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (!file) return;
    input.value = '';
    if (file.size > MOST_BYTES) {
      const message = `“${file.name}” is larger than 5 MB: take fewer years.`;
      this.issues = [{ code: 'climate-file', severity: 'error', message, place: {} }];
      return;
    }
    try {
      this.read(await file.text());
    } catch {
      const message = `“${file.name}” could not be read.`;
      this.issues = [{ code: 'climate-file', severity: 'error', message, place: {} }];
    }
  }

  private clear(): void {
    this.draft = NONE;
    this.set({ monthlyMeanC: null });
  }

  private set(change: Partial<Climate>, mergeKey?: string): void {
    this.app.dispatch(
      'Change climate',
      (yard) => ({ ...yard, climate: { ...yard.climate, ...change } }),
      mergeKey,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'climate-section': ClimateSection;
  }
}
