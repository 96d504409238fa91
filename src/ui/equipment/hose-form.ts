import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { flowOfFill } from '../../pace/calibrate/flow';
import { meanOfReadings } from '../../pace/calibrate/readings';
import { stepOfWalk } from '../../pace/calibrate/walk';
import { formatLength } from '../../units/format';
import { formatFlow } from '../../units/formatPace';
import { changeSettings } from '../../yard/edits';
import type { Settings } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';
import './timed-readings';

/** The garden hose and the person's step: what passes, reach and rinsing go by. */
@customElement('hose-form')
export class HoseForm extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr)); gap: 0.6rem 0.5rem; align-items: start; margin: 0.5rem 0; }
      h3 { margin: 0.75rem 0 0.25rem; }
    `,
  ];

  @state() private bucketL: number | null = null;
  @state() private times: readonly number[] = [];
  @state() private distanceM: number | null = null;
  @state() private steps: number | null = null;

  protected override render() {
    const { hose, stepM } = this.app.yard.settings;
    const { units } = this.app;
    return html`
      <h3>Hose</h3>
      <div class="fields">
        <quantity-field label="Length (empty: not told)" quantity="length" optional .system=${units} .value=${hose.lengthM} .min=${1} .max=${300}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.set('Set hose length', { hose: { ...hose, lengthM: event.detail.valueSi } })}></quantity-field>
        <quantity-field label="Plain water from it (empty: not told)" quantity="flow" optional .system=${units} .value=${hose.flowLPerS} .min=${1e-4} .max=${10}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.set('Set hose flow', { hose: { ...hose, flowLPerS: event.detail.valueSi } })}></quantity-field>
      </div>
      <details class="fold"><summary>Time a bucket with the hose</summary>
        <p class="quiet">The nozzle you rinse with, the tap as far open as then; plain water, onto ground that can take it.</p>
        <div class="fields"><quantity-field label="Bucket to the mark holds" quantity="volume" unit=${units === 'us' ? 'gal' : 'L'} optional .system=${units} .value=${this.bucketL} .min=${0.1} .max=${2000}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            this.bucketL = event.detail.valueSi;
          }}></quantity-field></div>
        <timed-readings label="Time" .values=${this.times} .now=${() => this.app.services.now().getTime()} @times-change=${(
          event: CustomEvent<readonly number[]>,
        ) => {
          this.times = event.detail;
        }}></timed-readings>
        ${this.renderFlow()}</details>
      <h3>Your step</h3>
      <div class="fields">
        <quantity-field label="One step (empty: not measured)" quantity="length" optional .system=${units} .value=${stepM} .min=${0.2} .max=${1.5}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.set('Set step', { stepM: event.detail.valueSi })}></quantity-field>
      </div>
      <details class="fold"><summary>Count steps over a distance</summary>
        <div class="fields">
          <quantity-field label="Distance" quantity="length" optional .system=${units} .value=${this.distanceM} .min=${1} .max=${1000}
            @quantity-change=${(event: CustomEvent<QuantityChange>) => {
              this.distanceM = event.detail.valueSi;
            }}></quantity-field>
          <number-field label="Steps counted" optional whole .value=${this.steps} .min=${1} .max=${10_000} @number-change=${(
            event: CustomEvent<NumberChange>,
          ) => {
            this.steps = event.detail.value;
          }}></number-field></div>
        ${this.renderStep()}</details>`;
  }

  private renderFlow() {
    const mean = meanOfReadings(this.times);
    if (mean === null || this.bucketL === null) return nothing;
    const flowLPerS = flowOfFill(this.bucketL, mean.mean);
    return html`<p role="status">The hose gives <b>${formatFlow(flowLPerS, this.app.units)}</b>.</p>
      <button class="primary" @click=${() => {
        this.set('Set hose flow', { hose: { ...this.app.yard.settings.hose, flowLPerS } });
        this.times = [];
      }}>Put it in</button>`;
  }

  private renderStep() {
    if (this.distanceM === null || this.steps === null) return nothing;
    const stepM = stepOfWalk(this.distanceM, this.steps);
    const isOdd = stepM < 0.2 || stepM > 1.5;
    return isOdd
      ? html`<p class="note error" role="alert">A step of ${formatLength(stepM, this.app.units)} is not one of a person: look at distance and count.</p>`
      : html`<p role="status">Your step is <b>${formatLength(stepM, this.app.units)}</b>.</p>
          <button class="primary" @click=${() => this.set('Set step', { stepM })}>Put it in</button>`;
  }

  private set(label: string, change: Partial<Settings>): void {
    // typed on and on it is one step of undo
    this.app.dispatch(label, (yard) => changeSettings(yard, change), `hose ${label}`);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'hose-form': HoseForm;
  }
}
