import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { applyUse } from '../../plan/applyUse';
import { nutrientRates } from '../../plan/nutrients';
import { productRate } from '../../plan/rate';
import { offersWithoutPhosphorus, type TriedOffer } from '../../session/offersWithoutPhosphorus';
import { formatNutrientRate, formatPercent } from '../../units/format';
import { analysisWords, productName } from '../../words/productWords';
import { replaceVisit } from '../../yard/edits';
import type { Visit, VisitDose } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { withoutName } from '../parts/issue-notes';
import { shared } from '../parts/shared';

/** Reasons told of one offer; what more there are the visit tells once it is taken. */
const MOST_REASONS = 2;

/**
 * What the shelf holds without phosphorus for a dose, tried in the visit as it would be: a button for what fits,
 * at the largest share of its label rate that does, and the reason for what does not.
 */
@customElement('dose-offers')
export class DoseOffers extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .ways { display: grid; gap: 0.4rem; margin-bottom: 0.5rem; }
      .ways button { text-align: left; padding: 0.35rem 0.75rem; line-height: 1.25; }
      small { display: block; color: var(--ink-soft); font-size: var(--text-small); line-height: 1.3; }
      ul { list-style: none; margin: 0 0 0.5rem; padding: 0; }
      li { padding: 0.35rem 0 0.35rem 0.75rem; border-left: 3px solid var(--line-strong); line-height: 1.25; }
      li + li { margin-top: 0.4rem; }
    `,
  ];

  @property({ attribute: false }) visit!: Visit;
  @property({ attribute: false }) dose!: VisitDose;

  protected override render() {
    const { app, visit, dose } = this;
    const offers = offersWithoutPhosphorus(app.session.derived, visit.id, dose.id);
    if (offers.length === 0) {
      return html`<p>Nothing on the shelf without phosphorus would feed this ground.
        <button class="plain" @click=${() => app.setView({ step: 'shelf' })}>Add a product</button></p>`;
    }
    const unfit = offers.filter(({ rateFactor }) => rateFactor === null);
    return html`
      ${
        unfit.length < offers.length
          ? html`<div class="ways">${offers.map((offer) =>
              offer.rateFactor === null ? nothing : this.renderFit(offer, offer.rateFactor),
            )}</div>`
          : html`<p class="quiet">Nothing on the shelf without phosphorus fits this visit as it is.</p>`
      }
      ${
        unfit.length > 0
          ? html`<ul aria-label="What does not fit">${unfit.map(
              (offer) =>
                html`<li>${productName(offer.product)} does not fit<small>${this.reasons(offer)}</small></li>`,
            )}</ul>`
          : nothing
      }
    `;
  }

  private renderFit(offer: TriedOffer, rateFactor: number) {
    const name = productName(offer.product);
    const isInVisit = this.visit.doses.some(
      ({ id, productId }) => id !== this.dose.id && productId === offer.product.id,
    );
    return html`<button @click=${() => this.take(offer, rateFactor)}>Take ${name} instead${
      rateFactor < 1 ? html`, at ${formatPercent(rateFactor)} of its label rate` : nothing
    }
      <small>${analysisWords(offer.product)}${this.nitrogenWords(offer, rateFactor)}${
        isInVisit ? '; it is in this visit already, which is counted in' : ''
      }</small>
      ${rateFactor < 1 ? html`<small>More does not fit. At the label rate: ${this.reasons(offer)}</small>` : nothing}</button>`;
  }

  /** What a share of the label rate lays down. */
  private nitrogenWords({ product, useId }: TriedOffer, rateFactor: number): string {
    const label = applyUse(product, useId);
    const { rate } = label ? productRate(label, rateFactor) : { rate: null };
    const laid = label && rate ? nutrientRates(label, rate) : null;
    const at = rateFactor < 1 ? '' : ' at the label rate';
    return laid && laid.N > 0 ? `; N ${formatNutrientRate(laid.N, this.app.units)}${at}` : '';
  }

  private reasons({ product, against }: TriedOffer): string {
    // an interval speaks at both of its ends: one sentence of a kind is enough
    const told = withoutName(against, productName(product)).filter(
      ({ code }, index, all) => all.findIndex((other) => other.code === code) === index,
    );
    return told
      .slice(0, MOST_REASONS)
      .map(({ message }) => message)
      .join(' ');
  }

  private take({ product, useId }: TriedOffer, rateFactor: number): void {
    const [visitId, doseId] = [this.visit.id, this.dose.id];
    this.app.dispatch(`Take ${productName(product)} instead`, (yard) => {
      const visit = yard.visits.find((one) => one.id === visitId);
      if (!visit) return yard;
      const change = { productId: product.id, useId, rateFactor, actual: null };
      const doses = visit.doses.map((dose) => (dose.id === doseId ? { ...dose, ...change } : dose));
      return replaceVisit(yard, { ...visit, doses });
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'dose-offers': DoseOffers;
  }
}
