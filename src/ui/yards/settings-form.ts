import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { areaScale } from '../../measure/areaScale';
import { formatNumber } from '../../units/format';
import { changeSettings } from '../../yard/edits';
import type { Settings } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';

/** Settings of the open yard. */
@customElement('settings-form')
export class SettingsForm extends AppPart {
  static override styles = [
    shared,
    css`
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.75rem; align-items: start; }
      .whole { grid-column: 1 / -1; margin: 0; }
    `,
  ];

  protected override render() {
    const { settings } = this.app.yard;
    const { strips } = settings;
    return html`
      <div class="fields">
        <label>Units<select @change=${(event: Event) => this.change('Change units', { units: fieldValue(event) === 'metric' ? 'metric' : 'us' })}>
          <option value="us" .selected=${settings.units === 'us'}>US customary</option>
          <option value="metric" .selected=${settings.units === 'metric'}>Metric</option></select></label>
        <label>Sign before prices<input maxlength="4" autocomplete="off" .value=${settings.currency}
          @change=${(event: Event) => this.change('Change currency', { currency: fieldValue(event).trim() })} /></label>
        <p class="note warning whole">Widths left untreated. The label and the local code decide; where they ask for more, set more here.</p>
        ${this.length('Round a storm drain', strips.stormDrainM, (stormDrainM) => this.change('Change strip width', { strips: { ...strips, stormDrainM } }))}
        ${this.length('Round a well', strips.wellM, (wellM) => this.change('Change strip width', { strips: { ...strips, wellM } }))}
        ${this.length('Along water', strips.waterM, (waterM) => this.change('Change strip width', { strips: { ...strips, waterM } }))}
        ${this.length('Gap still counted as a slip', settings.gapToleranceM, (gapToleranceM) => this.change('Change gap width', { gapToleranceM }))}
        <quantity-field label="Height of the ground" quantity="length" optional .system=${this.app.units} .value=${settings.elevationM}
          .min=${-500} .max=${9000} hint=${this.elevationWords(settings.elevationM)}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.change('Change height', { elevationM: event.detail.valueSi })}></quantity-field>
        <label class="check whole"><input type="checkbox" .checked=${settings.showSurface}
          @change=${(event: Event) => this.change('Show ground along slopes', { showSurface: isTicked(event) })} />
          Show the ground along the slope beside flat areas</label>
        <label class="check whole"><input type="checkbox" .checked=${settings.doseBySurface}
          @change=${(event: Event) => this.change('Change area of doses', { doseBySurface: isTicked(event) })} />
          Dose by the ground along the slope</label>
        <p class="quiet whole">Areas are flat, as on a map. A slope of 10 % makes the ground 0.5 % larger, one of 30 % makes it 4.4 % larger.
          Doses go by the flat area unless the box above is ticked; then areas, amounts and containers of a visit are along the slope.</p>
      </div>
    `;
  }

  private elevationWords(elevationM: number | null): string {
    if (elevationM === null) return 'Above sea level; empty: not used.';
    const more = (areaScale(elevationM) - 1) * 100;
    return `Above sea level. Makes every area ${formatNumber(Math.abs(more), 2)} % ${more < 0 ? 'smaller' : 'larger'}.`;
  }

  private length(label: string, value: number, set: (value: number) => void) {
    return html`<quantity-field label=${label} quantity="length" .system=${this.app.units} .value=${value} .min=${0} .max=${1000}
      @quantity-change=${(event: CustomEvent<QuantityChange>) => {
        if (event.detail.valueSi !== null) set(event.detail.valueSi);
      }}></quantity-field>`;
  }

  private change(label: string, change: Partial<Settings>): void {
    this.app.dispatch(label, (yard) => changeSettings(yard, change));
  }
}
