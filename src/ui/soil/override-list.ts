import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { productName } from '../../words/productWords';
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
    const dose = visit?.doses.find((each) => each.id === one.doseId);
    const name = productName(app.yard.products.find((each) => each.id === one.productId));
    const holds = dose?.productId === one.productId;
    const where = visit
      ? `${visit.name || 'Visit without a name'}${visit.date ? `, ${visit.date}` : ''}`
      : '';
    return html`<li>
      <div><p><b>${name}</b>${where ? ` in ${where}` : ''}</p>
        <p class="quiet">Decided ${one.on}: ${one.reason}</p>
        ${holds ? nothing : html`<p class="quiet">That dose is no more; kept as a record.</p>`}</div>
      <button aria-label=${`Withdraw the decision on ${name}`} @click=${() => app.dispatch('Withdraw override', (yard) => removeEntry(yard, 'overrides', one.id))}>Withdraw</button>
    </li>`;
  }
}
