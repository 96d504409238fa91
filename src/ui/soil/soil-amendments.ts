import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { limeVisits } from '../../plan/limeVisits';
import { amendmentNeed, limeParts } from '../../soil/amendmentNeed';
import { formatArea, formatMass, formatNumber, formatNutrientRate } from '../../units/format';
import { productName } from '../../words/productWords';
import { chosenZones } from '../../yard/choose';
import { addVisit } from '../../yard/edits';
import type { Product, SoilTest } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** Lime and sulfur as the lab recommends them, for the ground of the test. Nothing is worked out from pH. */
@customElement('soil-amendments')
export class SoilAmendments extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      p { margin-bottom: 0.35rem; }
      ul { margin: 0 0 0.35rem; padding-left: 1.2rem; }
    `,
  ];

  @property({ attribute: false }) test!: SoilTest;

  protected override render() {
    const { limeKgPerM2, sulfurKgPerM2 } = this.test;
    const areaM2 = this.areaM2;
    return html`
      ${limeKgPerM2 ? this.renderLime(limeKgPerM2, areaM2) : nothing}
      ${sulfurKgPerM2 ? this.renderSulfur(sulfurKgPerM2, areaM2) : nothing}
    `;
  }

  /** Net ground of the zones of the test, m². */
  private get areaM2(): number {
    const { yard, session } = this.app;
    const { zones } = session.derived.measured;
    return chosenZones(yard, this.test.zones).reduce((sum, { id }) => sum + (zones.get(id)?.netM2 ?? 0), 0);
  }

  private renderLime(rate: number, areaM2: number) {
    const { units, yard } = this.app;
    const parts = limeParts(rate);
    const limes = yard.products.filter((product) => (product.limePct ?? 0) > 0);
    return html`
      <p><b>Lime, as the lab advises:</b> ${formatNutrientRate(rate, units)}; on ${formatArea(areaM2, units)} that is
        ${mass(amendmentNeed(rate, areaM2), units)} of pure, effective lime.</p>
      ${
        limes.length === 0
          ? html`<p class="quiet">With a lime on the shelf (its effective value typed from the label) its own amount stands here.</p>`
          : html`<ul>${limes.map(
              (
                lime,
              ) => html`<li>${productName(lime)} (${formatNumber(lime.limePct ?? 0)} % effective): ${mass(this.needOf(lime, rate, areaM2), units)}
                <button class="plain" @click=${() => this.plan(lime)}>Make a visit of it</button></li>`,
            )}</ul>`
      }
      ${parts > 1 ? html`<p class="quiet">So much is put down in ${parts === 2 ? 'two' : 'three'} goes six months apart (Penn State, notes on the home garden report), unless the lab says otherwise.</p>` : nothing}
    `;
  }

  private renderSulfur(rate: number, areaM2: number) {
    const { units, yard } = this.app;
    const sulfurs = yard.products.filter(
      ({ form, analysis }) => form === 'soil-amendment' && (analysis.elementsPct.S ?? 0) > 50,
    );
    return html`
      <p><b>Elemental sulfur, as the lab advises:</b> ${formatNutrientRate(rate, units)}; on ${formatArea(areaM2, units)} that is
        ${mass(amendmentNeed(rate, areaM2), units)}.</p>
      ${
        sulfurs.length === 0
          ? nothing
          : html`<ul>${sulfurs.map((one) => html`<li>${productName(one)} (${formatNumber(one.analysis.elementsPct.S ?? 0)} % S): ${mass(amendmentNeed(rate, areaM2, one.analysis.elementsPct.S), units)}</li>`)}</ul>`
      }
      <p class="quiet">Sulfur burns turf easily: keep to the label and to what the lab allows at once.</p>
    `;
  }

  private plan(lime: Product): void {
    const { app } = this;
    const visits = limeVisits(this.test, lime, (prefix) => app.newId(prefix));
    const [first] = visits;
    if (!first) {
      const message = `${productName(lime)}: its label rate is needed before a visit can be made of it.`;
      app.tell({ code: 'lime-no-rate', severity: 'warning', message, place: { productId: lime.id } });
      return;
    }
    app.dispatch('Plan lime', (yard) => visits.reduce(addVisit, yard));
    app.setView({ step: 'visit', visitId: first.id });
  }

  private needOf(lime: Product, rate: number, areaM2: number): number | null {
    return amendmentNeed(rate, areaM2, lime.limePct ?? 0);
  }
}

function mass(kg: number | null, units: Parameters<typeof formatMass>[1]): string {
  return kg === null ? 'not known' : formatMass(kg, units);
}
