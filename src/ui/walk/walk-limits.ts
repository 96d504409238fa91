import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { WalkDraft } from '../../session/walkDraft';
import type { WalkMode } from '../../survey/walk/types';
import { M_PER_FT } from '../../units/factors';
import type { UnitSystem } from '../../yard/types';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';

/** How a walk is recorded and read. */
export type WalkSettings = Pick<WalkDraft, 'limits' | 'toleranceM' | 'standS'>;

const STANDS_S = [5, 10, 15, 20, 30, 60];
/** Speeds offered, m/s. */
const SPEEDS_MS = [2, 3, 4, 6];

/** Limits of what is used. Event `walk-settings` with the new settings. */
@customElement('walk-limits')
export class WalkLimits extends LitElement {
  static override styles = [
    shared,
    css`
      :host { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: start; }
      .whole { grid-column: 1 / -1; margin: 0; }
    `,
  ];

  @property({ attribute: false }) settings!: WalkSettings;
  @property() system: UnitSystem = 'us';
  @property() mode: WalkMode = 'corners';

  protected override render() {
    const { settings } = this;
    const { limits, toleranceM, standS } = settings;
    return html`
      <quantity-field class="whole" label="Worst accuracy that is used" quantity="length" unit=${this.unit} .system=${this.system} .min=${0.5} .max=${100} .value=${limits.maxAccuracyM}
        hint="The radius round a position, as the phone tells it"
        @quantity-change=${(event: CustomEvent<QuantityChange>) => {
          const { valueSi } = event.detail;
          if (valueSi !== null) this.send({ limits: { ...limits, maxAccuracyM: valueSi } });
        }}></quantity-field>
      <label>Fastest you go<select @change=${(event: Event) =>
        this.send({
          limits: { ...limits, maxSpeedMS: Number((event.target as HTMLSelectElement).value) },
        })}>
        ${SPEEDS_MS.map((speed) => html`<option value=${speed} .selected=${speed === limits.maxSpeedMS}>${this.speedWords(speed)}</option>`)}</select></label>
      ${
        this.mode === 'corners'
          ? html`<label>Stand at each corner<select @change=${(event: Event) =>
              this.send({
                standS: Number((event.target as HTMLSelectElement).value),
              })}>
              ${STANDS_S.map((seconds) => html`<option value=${seconds} .selected=${seconds === standS}>${seconds} seconds</option>`)}</select></label>`
          : html`<quantity-field label="Keep bends of more than" quantity="length" optional unit=${this.unit} .system=${this.system} .min=${0.1} .max=${50} .value=${toleranceM}
              hint="Empty: found from the noise"
              @quantity-change=${(event: CustomEvent<QuantityChange>) => this.send({ toleranceM: event.detail.valueSi })}></quantity-field>`
      }
      ${this.mode === 'corners' ? html`<p class="quiet whole">Errors a few seconds apart are nearly the same, so standing four times as long does not halve the error.</p>` : nothing}
    `;
  }

  private get unit(): string {
    return this.system === 'us' ? 'ft' : 'm';
  }

  private speedWords(speed: number): string {
    const words = speed <= 2 ? 'walking' : speed <= 3 ? 'brisk' : speed <= 4 ? 'jogging' : 'running';
    const shown = this.system === 'us' ? `${Math.round(speed / M_PER_FT)} ft/s` : `${speed} m/s`;
    return `${shown} (${words})`;
  }

  private send(change: Partial<WalkSettings>): void {
    this.dispatchEvent(
      new CustomEvent<WalkSettings>('walk-settings', { detail: { ...this.settings, ...change } }),
    );
  }
}
