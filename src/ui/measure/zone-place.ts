import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { findCircle } from '../../measure/findCircle';
import { createPlane } from '../../measure/plane';
import { placeZone } from '../../survey/tape/placeZone';
import type { Zone } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { shared } from '../parts/shared';
import './zone-sketch';

/** A zone without a place on the map: its sketch, and the way onto the map. */
@customElement('zone-place')
export class ZonePlace extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; margin-bottom: 0.75rem; }
      zone-sketch { margin: 0.5rem 0; }
      .put { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: end; }
    `,
  ];

  @property({ attribute: false }) zone!: Zone;
  @state() private turn = '0';

  protected override render() {
    const { zone, app } = this;
    return html`
      <zone-sketch .zone=${zone} .units=${app.units}></zone-sketch>
      <p class="quiet">Known by its size alone, without a place on the map. It counts in the totals and in doses; nothing cuts it, and
        strips and rinse edges are not looked for.</p>
      <div class="put">
        ${
          this.isCircle
            ? nothing
            : html`<label>Turn clockwise, degrees<input inputmode="decimal" .value=${this.turn} @input=${(
                event: Event,
              ) => {
                this.turn = fieldValue(event);
              }} /></label>`
        }
        <button class="primary" ?disabled=${zone.isLocked} @click=${this.put}>Put on the map</button>
      </div>
    `;
  }

  /** A circle looks the same however it is turned. */
  private get isCircle(): boolean {
    const rings = this.zone.parts.flat();
    const plane = createPlane(rings[0]?.[0] ?? [0, 0]);
    return rings.length === 1 && findCircle((rings[0] ?? []).map((p) => plane.toPlane(p))) !== null;
  }

  private async put(): Promise<void> {
    const { zone, app } = this;
    const degrees = this.isCircle ? 0 : Number(this.turn.trim().replace(/°$/, '') || '0');
    if (!Number.isFinite(degrees)) {
      const message = 'Type by how many degrees to turn, such as 12.5 or -90.';
      app.tell({ code: 'turn-not-number', severity: 'error', message, place: { zoneId: zone.id } });
      return;
    }
    const at = await app.pick('Point at where the middle of the zone lies.');
    if (!at) return;
    app.setView({ tool: { type: 'select' } });
    if (app.attempt('Put zone on the map', (yard) => placeZone(yard, zone.id, at, degrees)))
      app.fitSoon([zone.id]);
  }
}
