import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { mendSlip } from '../../measure/slips';
import type { Slip } from '../../measure/types';
import { formatArea } from '../../units/format';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** Ground that two zones of a kind claim, or that nobody claims between neighbours; each with its mend. */
@customElement('slip-list')
export class SlipList extends AppPart {
  static override styles = [
    shared,
    css`
      ul { list-style: none; margin: 0; padding: 0; }
      li { display: flex; flex-wrap: wrap; align-items: center; gap: 0.5rem; padding: 0.35rem 0; border-bottom: 1px solid var(--line); }
      li p { flex: 1 1 12rem; margin: 0; }
    `,
  ];

  protected override render() {
    const slips = this.app.slips;
    return html`
      <ul>
        ${slips.map(
          (slip) => html`<li>
          <p>${this.describe(slip)}</p>
          <button @click=${() => this.show(slip)}>Show</button>
          <button class="primary" @click=${() => this.mend(slip)}>Mend</button>
        </li>`,
        )}
      </ul>
    `;
  }

  private describe(slip: Slip) {
    const names = slip.zoneIds.map(
      (id) => this.app.yard.zones.find((zone) => zone.id === id)?.name || 'a zone without a name',
    );
    const area = formatArea(slip.areaM2, this.app.units);
    return slip.type === 'overlap'
      ? html`<b>Overlap</b> of ${area}: ${names.join(' and ')} lie on the same ground. Mending takes it from the earlier one.`
      : html`<b>Gap</b> of ${area} between ${names.join(' and ')}. Mending gives it to a neighbour.`;
  }

  private show(slip: Slip): void {
    this.app.setView({ selectedZoneIds: [...slip.zoneIds] });
    const at = slip.parts[0]?.[0]?.[0];
    if (at) this.app.map?.goTo(at, 21);
  }

  private mend(slip: Slip): void {
    const { measured } = this.app.session.derived;
    this.app.attempt(slip.type === 'overlap' ? 'Mend overlap' : 'Mend gap', (yard) =>
      mendSlip(yard, slip, measured),
    );
  }
}
