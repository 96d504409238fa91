import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { formatArea, formatAreaPm } from '../units/format';
import type { Zone } from '../yard/types';
import { AppPart, isTicked } from './app-part';
import './hatch-swatch';
import { shared } from './shared';
import { zoneWords } from './words';

/** Every zone in document order with its net and gross area. Tick several to work on them together. */
@customElement('zone-list')
export class ZoneList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; margin-bottom: 0.75rem; }
      th, td { padding: 0.2rem 0; vertical-align: middle; }
      td.num { line-height: 1.2; padding-left: 0.5rem; }
      td.tick { width: 2.75rem; }
      td.tick label { display: grid; place-items: center start; min-height: var(--touch); }
      .pick { display: flex; align-items: center; gap: 0.5rem; width: 100%; padding: 0.25rem 0; border: 0; background: none; text-align: left; line-height: 1.2; }
      .pick:hover .name { text-decoration: underline; }
      .words { display: grid; overflow-wrap: anywhere; }
      .name { font-weight: 600; }
      tr.on { background: var(--sheet-sunk); box-shadow: inset 4px 0 0 var(--accent); }
      tr.on td.tick { padding-left: 0.5rem; }
      .none { color: var(--danger); }
    `,
  ];

  protected override render() {
    const { zones } = this.app.yard;
    return html`
      <table>
        <caption class="visually-hidden">Zones, net and gross area; plus or minus is two standard deviations</caption>
        <thead><tr><th><span class="visually-hidden">Chosen</span></th><th>Zone</th><th class="num">Net area (gross)</th></tr></thead>
        <tbody>${zones.map((zone) => this.renderRow(zone))}</tbody>
      </table>
    `;
  }

  private renderRow(zone: Zone) {
    const { app } = this;
    const isOn = app.view.selectedZoneIds.includes(zone.id);
    const measured = app.session.derived.measured.zones.get(zone.id);
    const name = zone.name || 'Zone without a name';
    return html`
      <tr class=${isOn ? 'on' : ''}>
        <td class="tick"><label><input type="checkbox" .checked=${isOn} aria-label=${`Choose ${name}`}
          @change=${(event: Event) => this.tick(zone.id, isTicked(event))} /></label></td>
        <td><button class="pick" @click=${() => this.pick(zone.id)}>
          <hatch-swatch .zone=${zone} ?dark=${app.theme === 'dark'}></hatch-swatch>
          <span class="words"><span class="name">${name}</span><span class="quiet">${zoneWords(zone)}</span></span>
        </button></td>
        <td class="num">
          ${
            measured
              ? html`${formatAreaPm(measured.netM2, measured.netSigmaM2, app.units)}
                  ${measured.cutBy.length > 0 ? html`<br /><span class="quiet">(${formatArea(measured.grossM2, app.units)})</span>` : nothing}`
              : html`<span class="none">not measurable</span>`
          }
        </td>
      </tr>
    `;
  }

  private tick(zoneId: string, on: boolean): void {
    const others = this.app.view.selectedZoneIds.filter((id) => id !== zoneId);
    this.app.setView({ selectedZoneIds: on ? [...others, zoneId] : others });
  }

  private pick(zoneId: string): void {
    this.app.setView({ selectedZoneIds: [zoneId] });
    this.dispatchEvent(new CustomEvent('zone-picked', { bubbles: true, composed: true }));
  }
}
