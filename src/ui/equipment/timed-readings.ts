import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { MOST_READINGS, meanOfReadings } from '../../pace/calibrate/readings';
import { formatPercent } from '../../units/format';
import { formatReading } from '../../units/formatPace';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { shared } from '../parts/shared';

/** How often the running watch is drawn, ms. */
const TICK_MS = 100;
/** A stopwatch is never that long, s. */
const MOST_S = 36_000;

/**
 * Repeated times of one thing: a stopwatch with one large button, and each reading as a field that can be typed.
 * Event `times-change` with the readings in seconds.
 */
@customElement('timed-readings')
export class TimedReadings extends LitElement {
  static override styles = [
    shared,
    css`
      :host { display: grid; gap: 0.5rem; }
      .watch { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1.2fr); gap: 0.5rem; align-items: stretch; }
      .watch output { display: grid; place-items: center; min-height: 3.75rem; font-size: 1.75rem; font-weight: 650; border: 1px solid var(--line); background: var(--sheet-sunk); }
      .watch button { min-height: 3.75rem; font-size: 1.125rem; font-weight: 650; }
      .watch button.stop { background: var(--danger); border-color: var(--danger); color: var(--sheet); }
      .times { display: grid; grid-template-columns: repeat(auto-fill, minmax(8.5rem, 1fr)); gap: 0.5rem; }
      .one { display: grid; grid-template-columns: minmax(0, 1fr) auto; align-items: end; }
      .one button { border-left: 0; }
      p { margin: 0; }
    `,
  ];

  @property() label = 'Time';
  @property({ attribute: false }) values: readonly number[] = [];
  /** the clock, ms. */
  @property({ attribute: false }) now: () => number = () => Date.now();

  @state() private startedAt: number | null = null;
  @state() private shownS = 0;
  /** one empty field more, to type in. */
  @state() private isTyping = false;
  private ticking = 0;

  override disconnectedCallback(): void {
    clearInterval(this.ticking);
    this.startedAt = null;
    super.disconnectedCallback();
  }

  protected override render() {
    const { values } = this;
    const isFull = values.length >= MOST_READINGS;
    const isRunning = this.startedAt !== null;
    const name = this.label.toLowerCase();
    return html`
      <div class="watch">
        <output role="timer" aria-label="Stopwatch" aria-live="off">${formatReading(this.shownS)}</output>
        ${
          isRunning
            ? html`<button type="button" class="stop" @click=${this.stop}>Stop</button>`
            : html`<button type="button" class="primary" ?disabled=${isFull} @click=${this.start}>${values.length === 0 ? 'Start' : 'Start again'}</button>`
        }
      </div>
      <div class="times">
        ${values.map(
          (value, i) => html`<div class="one">
            <number-field label=${`${this.label} ${i + 1}`} suffix="s" .value=${Number(value.toFixed(2))} .min=${0.1} .max=${MOST_S}
              @number-change=${(event: CustomEvent<NumberChange>) => this.set(i, event)}></number-field>
            <button type="button" aria-label=${`Take out ${name} ${i + 1}`} @click=${() => this.send(values.filter((_, at) => at !== i))}>×</button></div>`,
        )}
        ${
          this.isTyping && !isFull
            ? html`<number-field id="typed" label=${`${this.label} ${values.length + 1}`} suffix="s" optional .value=${null} .min=${0.1} .max=${MOST_S} @focusout=${this.addTyped} @keydown=${(
                event: KeyboardEvent,
              ) => {
                if (event.key === 'Enter') this.addTyped();
              }} @number-change=${this.noteTyped}></number-field>`
            : nothing
        }
      </div>
      <div class="row">
        ${isFull ? nothing : html`<button type="button" ?disabled=${this.isTyping} @click=${this.typeOne}>Type a ${name}</button>`}
        ${this.renderMean()}
      </div>
    `;
  }

  private renderMean() {
    const mean = meanOfReadings(this.values);
    if (mean === null || mean.count < 2) return nothing;
    return html`<p class="quiet" role="status">Mean of ${mean.count}: <b>${formatReading(mean.mean)}</b>, ${formatPercent(mean.spread)} from least to most</p>`;
  }

  private start(): void {
    const from = this.now();
    this.startedAt = from;
    this.shownS = 0;
    this.ticking = window.setInterval(() => {
      this.shownS = (this.now() - from) / 1000;
    }, TICK_MS);
  }

  private stop(): void {
    const from = this.startedAt;
    clearInterval(this.ticking);
    this.startedAt = null;
    if (from === null) return;
    const seconds = Math.round((this.now() - from) / 10) / 100;
    this.shownS = seconds;
    if (seconds >= 0.1) this.send([...this.values, seconds]);
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.watch button')?.focus());
  }

  private typedS: number | null = null;

  private typeOne(): void {
    this.isTyping = true;
    this.typedS = null;
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('#typed')?.focus());
  }

  private noteTyped(event: CustomEvent<NumberChange>): void {
    event.stopPropagation();
    this.typedS = event.detail.value;
  }

  /** A typed time counts when the field is left or Enter is pressed. */
  private addTyped(): void {
    const typed = this.typedS;
    if (typed === null) return;
    this.typedS = null;
    this.isTyping = false;
    this.send([...this.values, typed]);
  }

  private set(index: number, event: CustomEvent<NumberChange>): void {
    event.stopPropagation();
    const { value } = event.detail;
    if (value !== null) this.send(this.values.with(index, value));
  }

  private send(values: readonly number[]): void {
    this.dispatchEvent(
      new CustomEvent<readonly number[]>('times-change', { detail: values, bubbles: true, composed: true }),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'timed-readings': TimedReadings;
  }
}
