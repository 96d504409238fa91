import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { createPlane } from '../measure/plane';
import { boxOf } from '../measure/planeBox';
import { placeZone } from '../survey/tape/placeZone';
import type { Zone } from '../yard/types';
import { AppPart } from './app-part';
import { beginMoving } from './begin-moving';
import './number-field';
import type { NumberChange } from './number-field';
import { shared } from './shared';
import './zone-sketch';

/** A zone without a place: its sketch, and the way onto the map. */
@customElement('zone-place')
export class ZonePlace extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: grid; gap: 0.5rem; }
      p { margin: 0; }
      .place { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: end; }
    `,
  ];

  @property({ attribute: false }) zone!: Zone;

  @state() private turnDeg = 0;

  protected override render() {
    const { zone, app } = this;
    return html`
      <zone-sketch .zone=${zone} .units=${app.units}></zone-sketch>
      <p class="quiet">It has no place on the map: it is measured by itself, and nothing cuts it.</p>
      <div class="place">
        <number-field label="Turn it clockwise first" suffix="°" .min=${-360} .max=${360} .value=${this.turnDeg}
          @number-change=${(event: CustomEvent<NumberChange>) => {
            this.turnDeg = event.detail.value ?? 0;
          }}></number-field>
        <button class="primary" @click=${this.place}>Put on the map</button>
      </div>
    `;
  }

  private place(): void {
    const { app, zone } = this;
    const at = app.map?.center() ?? app.session.derived.measured.plane.origin;
    if (!app.attempt('Put zone on the map', (yard) => placeZone(yard, zone.id, at, this.turnDeg))) return;
    this.turnDeg = 0;
    app.setView({ selectedZoneIds: [zone.id] });
    const plane = createPlane([0, 0]);
    const box = boxOf(zone.parts.map((rings) => rings.map((ring) => ring.map((p) => plane.toPlane(p)))));
    beginMoving(app, zone.id, Math.max(box.maxX - box.minX, box.maxY - box.minY));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'zone-place': ZonePlace;
  }
}
