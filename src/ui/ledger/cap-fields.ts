import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { publishedCap } from '../../plan/guides';
import { formatMostRate } from '../../units/format';
import { DEFAULT_CAPS } from '../../yard/defaults';
import { setCaps } from '../../yard/edits';
import type { NutrientCaps } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';

const FIELDS: readonly (readonly [keyof NutrientCaps, string])[] = [
  ['totalNPerDose', 'N at once'],
  ['solubleNPerDose', 'Soluble N at once'],
  ['p2o5PerDose', 'P₂O₅ at once'],
  ['nPerYear', 'N in a calendar year'],
  ['p2o5PerYear', 'P₂O₅ in a calendar year'],
  ['k2oPerYear', 'K₂O in a calendar year'],
];

/** Most of each nutrient that any zone should get; published figures stand until they are changed. */
@customElement('cap-fields')
export class CapFields extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      h3 { margin-top: 1.25rem; padding-top: 0.6rem; border-top: 2px solid var(--ink); }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(15rem, 1fr)); gap: 0.75rem; align-items: start; margin-bottom: 0.75rem; }
    `,
  ];

  protected override render() {
    const { caps } = this.app.yard;
    const isUsual = FIELDS.every(([key]) => caps[key] === DEFAULT_CAPS[key]);
    return html`
      <h3>Caps</h3>
      <p>These come filled in with published figures: of the University of Illinois for N at once, of Florida’s rule for soluble N and P₂O₅.
        They are a careful general guide wherever you are, not the law of your place: change or clear them.</p>
      <p class="quiet">Visits and the ledger warn above these. Empty: no cap. The label and the local code go first; where they ask for less, type less.</p>
      <div class="fields">${FIELDS.map(([key, label]) => this.renderCap(key, label))}</div>
      <button ?disabled=${isUsual} @click=${() => this.app.dispatch('Reset caps', (yard) => setCaps(yard, DEFAULT_CAPS))}>Back to the published caps</button>
      ${isUsual ? html`<p class="quiet">They stand as published.</p>` : nothing}
    `;
  }

  private renderCap(key: keyof NutrientCaps, label: string) {
    const { app } = this;
    const published = publishedCap(key);
    const hint = published
      ? `Published: ${formatMostRate(published.kgPerM2, app.units)} (${published.source}).`
      : key === 'nPerYear'
        ? 'No published cap for all grasses: the need of the grass tells.'
        : 'No published cap.';
    return html`<quantity-field label=${label} quantity="mass-per-area" optional hint=${hint} .system=${app.units} .value=${app.yard.caps[key]} .min=${0}
      @quantity-change=${(event: CustomEvent<QuantityChange>) =>
        app.dispatch('Change cap', (yard) =>
          setCaps(yard, { ...yard.caps, [key]: event.detail.valueSi }),
        )}></quantity-field>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'cap-fields': CapFields;
  }
}
