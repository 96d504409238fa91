import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { refusedZones } from '../../plan/soilGate';
import { decisionWords, lapsesOf } from '../../plan/soilOverride';
import { formatDay } from '../../units/formatDay';
import { productName } from '../../words/productWords';
import { visitZones } from '../../yard/choose';
import { removeEntry } from '../../yard/edits';
import type { Override } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** The log of refusals that were set aside; each can be withdrawn. Draws nothing while there is none. */
@customElement('override-list')
export class OverrideList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      h4 { margin: 1rem 0 0.25rem; font-size: 1rem; }
      ul { list-style: none; margin: 0; padding: 0; }
      li { border-top: 1px solid var(--line); padding: 0.5rem 0; display: grid; grid-template-columns: 1fr auto; gap: 0.5rem; align-items: start; }
      p { margin: 0; line-height: 1.3; }
    `,
  ];

  protected override render() {
    const { overrides } = this.app.yard;
    if (overrides.length === 0) return nothing;
    return html`<h4>Refusals set aside</h4><ul>${overrides.map((one) => this.renderOne(one))}</ul>`;
  }

  private renderOne(one: Override) {
    const { app } = this;
    const visit = app.yard.visits.find((each) => each.id === one.visitId);
    const name = productName(app.yard.products.find((each) => each.id === one.productId));
    const where = visit
      ? `${visit.name || 'Visit without a name'}${visit.date ? `, ${formatDay(visit.date, true)}` : ''}`
      : '';
    return html`<li>
      <div><p><b>${name}</b>${where ? ` in ${where}` : ''}</p>
        <p class="quiet">Decided ${one.on}: ${one.reason}</p>
        <p class="quiet">For ${decisionWords(app.yard, one)}. ${this.stateWords(one)}</p></div>
      <button aria-label=${`Withdraw the decision on ${name}`} @click=${() => app.dispatch('Withdraw override', (yard) => removeEntry(yard, 'overrides', one.id))}>Withdraw</button>
    </li>`;
  }

  /** Whether a decision still stands; empty where it does. */
  private stateWords(one: Override): string {
    const { yard } = this.app;
    const visit = yard.visits.find((each) => each.id === one.visitId);
    const dose = visit?.doses.find((each) => each.id === one.doseId);
    if (!visit || dose?.productId !== one.productId) return 'That dose is no more; kept as a record.';
    if (visit.doneOn !== null) return '';
    const asked = this.app.session.derived.visit(visit.id)?.asked;
    const ids = visitZones(yard, visit, dose)
      .map((zone) => zone.id)
      .filter((id) => asked === undefined || (asked.get(id)?.areaM2 ?? 0) > 0);
    const lapses = lapsesOf(yard, one, visit, dose, refusedZones(yard, ids, visit.date));
    return lapses.length === 0 ? '' : `It no longer holds: ${lapses.join('; ')}.`;
  }
}
