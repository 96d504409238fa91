import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { CAUTIONS } from '../../words/cautions';
import { workOrder } from '../../words/workOrder';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** What is done in the visit, in order, and the cautions of the work. */
@customElement('visit-order')
export class VisitOrder extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      ol, ul { margin: 0 0 0.75rem; padding-left: 1.4rem; }
      li { margin-bottom: 0.35rem; }
    `,
  ];

  protected override render() {
    const { visit, units } = this.app;
    const steps = visit ? workOrder(visit, units, this.app.yard) : [];
    return html`
      <ol>${steps.map((step) => html`<li>${step}</li>`)}</ol>
      <div class="note warning">
        <ul>${CAUTIONS.map((caution) => html`<li>${caution}</li>`)}</ul>
      </div>
    `;
  }
}
