import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { fittingUnit, type Quantity, type UnitChoice, unitChoices } from '../../units/choices';
import { formatEntry } from '../../units/format';
import { parseArea, parseLength, parseMass, parseNumber, parseVolume } from '../../units/parse';
import type { UnitSystem } from '../../yard/types';
import { rangeFault } from './range-fault';
import { shared } from './shared';
import { showFault } from './show-fault';

/** Detail of the event `quantity-change`: the quantity in SI, or null for an emptied optional field. */
export interface QuantityChange {
  readonly valueSi: number | null;
}

const PARSERS = {
  area: parseArea,
  length: parseLength,
  mass: parseMass,
  volume: parseVolume,
  'bulk-volume': parseVolume,
} as const;

/**
 * A number with a choice of unit. Takes and gives SI only. Text with units of its own
 * (12' 6", 3.8 m) is understood for area, length, mass and volume.
 * Event `quantity-change` with `{ valueSi }` when a good entry is left or Enter is pressed.
 */
@customElement('quantity-field')
export class QuantityField extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { mode: 'open', delegatesFocus: true };

  static override styles = [
    shared,
    css`
      :host { display: block; min-width: 9rem; }
      label { margin-bottom: 0.15rem; }
      .pair { display: grid; grid-template-columns: minmax(4.5rem, 1fr) auto; }
      .pair input { border-right-width: 0; text-align: right; }
      .pair select { width: auto; max-width: 11rem; }
      .unit { align-self: stretch; display: grid; align-items: center; padding: 0 0.6rem; border: 1px solid var(--line-strong); color: var(--ink); white-space: nowrap; }
      .fault { color: var(--danger); font-size: var(--text-small); margin: 0.15rem 0 0; }
      .hint { color: var(--ink-soft); font-size: var(--text-small); margin: 0.15rem 0 0; }
    `,
  ];

  @property() label = '';
  @property() quantity: Quantity = 'length';
  @property() system: UnitSystem = 'us';
  /** the quantity in SI; null when not known. */
  @property({ attribute: false }) value: number | null = null;
  /** least and most that is accepted, SI. */
  @property({ attribute: false }) min: number | null = null;
  @property({ attribute: false }) max: number | null = null;
  /** an emptied field gives null rather than a fault. */
  @property({ type: Boolean }) optional = false;
  @property({ type: Boolean }) disabled = false;
  @property() hint = '';
  /** id of the unit to begin with; one that fits the value otherwise. */
  @property() unit = '';

  @state() private chosen: string | null = null;
  /** what is being typed; null shows the value. */
  @state() private draft: string | null = null;
  @state() private fault = '';
  @query('input') private input!: HTMLInputElement;

  /** the number typed last and what it came to, until another control is gone to. */
  private typed: { readonly text: string; readonly valueSi: number } | null = null;

  constructor() {
    super();
    this.addEventListener('focusout', (event) => {
      if (event.relatedTarget) this.typed = null;
    });
  }

  private get choices(): readonly UnitChoice[] {
    return unitChoices(this.quantity, this.system);
  }

  private get choice(): UnitChoice {
    const wanted = this.chosen ?? this.unit;
    return (
      this.choices.find((choice) => choice.id === wanted) ??
      fittingUnit(this.quantity, this.system, this.value)
    );
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    if (changed.has('system') || changed.has('quantity')) {
      this.chosen = null;
      this.typed = null;
    }
    if (changed.has('value') && !this.matches(':focus-within')) {
      this.draft = null;
      this.fault = '';
    }
  }

  protected override render() {
    const { choice, choices } = this;
    const text = this.draft ?? this.shownText();
    const help = this.fault ? 'fault' : this.hint ? 'hint' : nothing;
    return html`
      <label for="number">${this.label}</label>
      <div class="pair">
        <input id="number" inputmode="decimal" autocomplete="off" spellcheck="false" .value=${text}
          ?disabled=${this.disabled} aria-invalid=${this.fault ? 'true' : 'false'} aria-describedby=${help}
          @input=${() => {
            this.draft = this.input.value;
          }} @change=${this.commit} />
        ${
          choices.length > 1
            ? html`<select aria-label=${`Unit of ${this.label}`} ?disabled=${this.disabled} @change=${this.chooseUnit}>
                ${choices.map((each) => html`<option value=${each.id} .selected=${each.id === choice.id}>${each.label}</option>`)}
              </select>`
            : html`<span class="unit">${choice.label}</span>`
        }
      </div>
      ${this.fault ? html`<p class="fault" id="fault" role="alert">${this.fault}</p>` : nothing}
      ${this.hint && !this.fault ? html`<p class="hint" id="hint">${this.hint}</p>` : nothing}
    `;
  }

  private shownText(): string {
    if (this.value === null) return '';
    return formatEntry(this.choice.fromSI(this.value));
  }

  private chooseUnit(event: Event): void {
    this.chosen = (event.target as HTMLSelectElement).value;
    // a number just typed keeps its digits and is read in the new unit, as is one that was refused
    if (this.draft === null && this.typed?.valueSi === this.value) this.draft = this.typed?.text ?? null;
    if (this.draft !== null) this.commit();
  }

  private readText(text: string): { ok: true; value: number } | { ok: false; message: string } {
    const plain = parseNumber(text);
    if (plain.ok) return { ok: true, value: this.choice.toSI(plain.value) };
    const parser = PARSERS[this.quantity as keyof typeof PARSERS];
    return parser ? parser(text, this.system) : plain;
  }

  private checkRange(value: number): string {
    const { choice } = this;
    const shown = (si: number | null) => (si === null ? null : choice.fromSI(si));
    return rangeFault(choice.fromSI(value), shown(this.min), shown(this.max), choice.label);
  }

  private commit(): void {
    const text = (this.draft ?? this.input.value).trim();
    if (text === '') {
      this.fault = this.optional ? '' : 'Type a number.';
      if (this.fault) showFault(this);
      if (this.optional) this.send(null);
      return;
    }
    // the same number typed again over a shortened one changes nothing
    if (this.value !== null && text === this.shownText() && this.typed === null && !this.fault) {
      this.draft = null;
      return;
    }
    const read = this.readText(text);
    this.fault = read.ok ? this.checkRange(read.value) : read.message;
    if (!read.ok || this.fault) {
      this.draft = text;
      showFault(this);
      return;
    }
    // a number stays in the unit it was typed in
    const isPlain = parseNumber(text).ok;
    if (isPlain) this.chosen = this.choice.id;
    this.typed = isPlain ? { text, valueSi: read.value } : null;
    this.send(read.value);
  }

  private send(valueSi: number | null): void {
    this.value = valueSi;
    this.draft = null;
    this.dispatchEvent(
      new CustomEvent<QuantityChange>('quantity-change', {
        detail: { valueSi },
        bubbles: true,
        composed: true,
      }),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'quantity-field': QuantityField;
  }
}
