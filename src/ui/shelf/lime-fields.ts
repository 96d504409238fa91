import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { effectiveLimePct, FINENESS_TABLES, type FinenessTable } from '../../plan/limeValue';
import { formatNumber } from '../../units/format';
import type { Issue, Product } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { fold } from '../parts/fold';
import { issueNotes, issuesAt } from '../parts/issue-notes';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { shared } from '../parts/shared';
import { sendProductChange } from './product-form';

const [FIRST_TABLE] = FINENESS_TABLES;

/** Effective neutralising value of lime, and a help to work it out where the label gives its parts alone. */
@customElement('lime-fields')
export class LimeFields extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: grid; gap: 0.5rem; }
      .fields { display: grid; grid-template-columns: repeat(auto-fill, minmax(9rem, 1fr)); gap: 0.5rem; align-items: start; }
      .whole { grid-column: 1 / -1; }
      p { margin: 0; }
    `,
  ];

  @property({ attribute: false }) product!: Product;
  @property({ attribute: false }) issues: readonly Issue[] = [];
  @state() private tableId = FIRST_TABLE?.id ?? '';
  @state() private ccePct: number | null = null;
  @state() private passing: ReadonlyMap<number, number> = new Map();

  protected override render() {
    return html`
      <number-field label="Effective neutralising value of lime" suffix="%" optional .value=${this.product.limePct} .min=${0}
        @number-change=${(event: CustomEvent<NumberChange>) => this.send(event.detail.value)}></number-field>
      <p class="quiet">On labels also as ECCE, ENV or RNV: percent of pure calcium carbonate, fineness counted in. Leave empty for what is no lime.</p>
      ${issueNotes(issuesAt(this.issues, 'limePct'))}
      <details class="fold"><summary>Work it out from CCE and fineness</summary>${this.renderHelp()}</details>
    `;
  }

  private renderHelp() {
    const table = FINENESS_TABLES.find((each) => each.id === this.tableId) ?? FIRST_TABLE;
    if (!table) return nothing;
    return html`<div class="fields">
      <label class="whole">Rule for fineness<select @change=${(event: Event) => {
        this.tableId = fieldValue(event);
      }}>${FINENESS_TABLES.map((each) => html`<option value=${each.id} .selected=${each.id === table.id}>${each.name}</option>`)}</select></label>
      <number-field label="Calcium carbonate equivalent" suffix="%" optional .value=${this.ccePct} .min=${0}
        @number-change=${(event: CustomEvent<NumberChange>) => {
          this.ccePct = event.detail.value;
        }}></number-field>
      ${table.meshes.map(
        (
          mesh,
        ) => html`<number-field label=${`Passes ${mesh} mesh`} suffix="%" optional .value=${this.passing.get(mesh) ?? null} .min=${0} .max=${100}
          @number-change=${(event: CustomEvent<NumberChange>) => this.setPassing(mesh, event.detail.value)}></number-field>`,
      )}
      <div class="whole">${this.renderResult(table)}</div>
      <p class="quiet whole">Source: ${table.source}. States differ; the value on the label goes first.</p>
    </div>`;
  }

  private renderResult(table: FinenessTable) {
    const readings = [...this.passing].map(([mesh, passingPct]) => ({ mesh, passingPct }));
    if (this.ccePct === null || readings.length === 0) return nothing;
    const read = effectiveLimePct(this.ccePct, readings, table);
    if (!read.ok) return html`<p role="status">${read.message}</p>`;
    return html`<p role="status">Effective value: <b>${formatNumber(read.value, 3)} %</b></p>
      <button type="button" @click=${() => this.send(Number(read.value.toPrecision(4)))}>Take ${formatNumber(read.value, 3)} %</button>`;
  }

  private setPassing(mesh: number, pct: number | null): void {
    const next = new Map(this.passing);
    if (pct === null) next.delete(mesh);
    else next.set(mesh, pct);
    this.passing = next;
  }

  private send(limePct: number | null): void {
    sendProductChange(this, 'limePct', { limePct });
  }
}
