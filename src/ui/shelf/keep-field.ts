import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { AppPart, fieldValue } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { shared } from '../parts/shared';
import { countIn, daysOf, fittingSpan, SPANS, type Span } from './keep-span';

/** Detail of the event `keep-change`: whole days, or null for an emptied field. */
export interface KeepChange {
  readonly days: number | null;
}

/** How long something keeps, in days, months or years; what is given back is whole days. */
@customElement('keep-field')
export class KeepField extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: grid; grid-template-columns: minmax(4rem, 1fr) auto; align-items: end; }
      select { width: auto; }
    `,
  ];

  @property() label = '';
  @property({ attribute: false }) days: number | null = null;
  @state() private span: Span | null = null;

  protected override render() {
    const span = this.span ?? fittingSpan(this.days);
    return html`
      <number-field label=${this.label} optional .value=${this.days === null ? null : countIn(this.days, span)} .min=${0}
        @number-change=${(event: CustomEvent<NumberChange>) => this.send(event.detail.value, span)}></number-field>
      <select aria-label=${`Unit of ${this.label}`} @change=${(event: Event) => {
        const next = fieldValue(event) as Span;
        // the number typed keeps its digits and is read in the new unit
        const count = this.days === null ? null : countIn(this.days, span);
        this.span = next;
        this.send(count, next);
      }}>${SPANS.map((each) => html`<option value=${each} .selected=${each === span}>${each}</option>`)}</select>
    `;
  }

  private send(count: number | null, span: Span): void {
    this.span = span;
    const days = count === null ? null : daysOf(count, span);
    this.dispatchEvent(new CustomEvent<KeepChange>('keep-change', { detail: { days } }));
  }
}
