import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { parseNumber } from '../../units/parse';
import { shared } from './shared';
import { showFault } from './show-fault';

/** Detail of the event `number-change`; null for an emptied optional field. */
export interface NumberChange {
  readonly value: number | null;
}

/**
 * A plain number without a unit of its own, such as a percent, a count or a price. Sends
 * `number-change` at each good entry while typing; a bad one is said below the field when it is left.
 */
@customElement('number-field')
export class NumberField extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { mode: 'open', delegatesFocus: true };

  static override styles = [
    shared,
    css`
      :host { display: block; }
      label { margin-bottom: 0.15rem; }
      .pair { display: grid; grid-template-columns: minmax(3rem, 1fr) auto; }
      input { text-align: right; }
      .unit { display: grid; align-items: center; padding: 0 0.5rem; border: 1px solid var(--line-strong); border-left: 0; white-space: nowrap; }
      .fault { color: var(--danger); font-size: var(--text-small); margin: 0.15rem 0 0; }
    `,
  ];

  @property() label = '';
  @property({ attribute: false }) value: number | null = null;
  /** what is shown and typed is the value times this: 100 for a share in percent. */
  @property({ attribute: false }) scale = 1;
  /** least and most, as typed. */
  @property({ attribute: false }) min: number | null = null;
  @property({ attribute: false }) max: number | null = null;
  /** word after the number. */
  @property() suffix = '';
  /** sign of the currency, which may be typed along. */
  @property() sign = '';
  @property({ type: Boolean }) optional = false;
  @property({ type: Boolean }) whole = false;

  @state() private draft: string | null = null;
  @state() private fault = '';
  @query('input') private input!: HTMLInputElement;

  protected override willUpdate(changed: Map<string, unknown>): void {
    if (changed.has('value') && !this.matches(':focus-within')) {
      this.draft = null;
      this.fault = '';
    }
  }

  protected override render() {
    const shown = this.value === null ? '' : String(Number((this.value * this.scale).toPrecision(7)));
    return html`
      <label for="number">${this.label}</label>
      <div class="pair">
        <input id="number" inputmode="decimal" autocomplete="off" spellcheck="false" .value=${this.draft ?? shown}
          aria-invalid=${this.fault ? 'true' : 'false'} aria-describedby=${this.fault ? 'fault' : nothing}
          @input=${this.typed} @change=${this.left} />
        ${this.suffix ? html`<span class="unit">${this.suffix}</span>` : nothing}
      </div>
      ${this.fault ? html`<p class="fault" id="fault" role="alert">${this.fault}</p>` : nothing}
    `;
  }

  private read(text: string): { value: number | null } | { fault: string } {
    if (text === '') return this.optional ? { value: null } : { fault: 'Type a number.' };
    const read = parseNumber(this.withoutWords(text));
    if (!read.ok) return { fault: read.message };
    const typed = read.value;
    if (this.whole && !Number.isInteger(typed)) return { fault: 'Type a whole number.' };
    if (this.min !== null && typed < this.min) return { fault: `Must be ${this.min} or more.` };
    if (this.max !== null && typed > this.max) return { fault: `Must be ${this.max} or less.` };
    return { value: typed / this.scale };
  }

  /** Without the sign or the word that stands beside the field anyway: "$19", "12 %". */
  private withoutWords(text: string): string {
    const { sign, suffix } = this;
    if (sign && text.startsWith(sign)) return text.slice(sign.length);
    const end = [sign, suffix].find((word) => word !== '' && text.endsWith(word));
    return end === undefined ? text : text.slice(0, -end.length);
  }

  private typed(): void {
    this.draft = this.input.value;
    const read = this.read(this.draft.trim());
    if ('fault' in read) return;
    this.fault = '';
    this.value = read.value;
    this.dispatchEvent(
      new CustomEvent<NumberChange>('number-change', {
        detail: { value: read.value },
        bubbles: true,
        composed: true,
      }),
    );
  }

  private left(): void {
    const read = this.read(this.input.value.trim());
    this.fault = 'fault' in read ? read.fault : '';
    if (this.fault) showFault(this);
    else this.draft = null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'number-field': NumberField;
  }
}
