import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement } from 'lit/decorators.js';
import { formatCuts } from '../../units/columns';
import { formatAreaPm } from '../../units/format';
import type { Zone } from '../../yard/types';
import { AppPart, isTicked } from '../parts/app-part';
import '../parts/hatch-swatch';
import { surfaceWords } from '../../words/slopeWords';
import { zoneStateWords } from '../../words/zoneWords';
import { shared } from '../parts/shared';

/** Every zone in document order with its net and gross area. Tick several to work on them together. */
@customElement('zone-list')
export class ZoneList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; margin-bottom: 0.75rem; }
      th, td { padding: 0.2rem 0; vertical-align: middle; }
      td.num { line-height: 1.2; padding: 0 0.5rem; }
      td.tick { width: 2.75rem; }
      td.tick label { display: grid; place-items: center start; min-height: var(--touch); }
      .pick { display: flex; align-items: center; gap: 0.5rem; width: 100%; padding: 0.25rem 0; border: 0; background: none; text-align: left; line-height: 1.2; }
      .pick:hover .name { text-decoration: underline; }
      .words { display: grid; overflow-wrap: anywhere; }
      .name { font-weight: 600; }
      tr.on { background: var(--sheet-sunk); box-shadow: inset 4px 0 0 var(--accent); }
      tr.on td.tick label { padding-left: 0.5rem; }
      tr.more td { padding: 0; }
      .slope { white-space: normal; display: inline-block; max-width: 11rem; }
      .none { color: var(--danger); }
    `,
  ];

  /** the zone whose row was last brought into sight. */
  private shownId: string | null = null;

  /** A zone chosen on the drawing is brought into sight here. */
  protected override updated(_changed: PropertyValues): void {
    const [id] = this.app.view.selectedZoneIds;
    if (id !== undefined) this.loadDetails();
    if (this.app.view.selectedZoneIds.length !== 1 || id === undefined || id === this.shownId) return;
    requestAnimationFrame(() => {
      // hidden in a closed drawer: tried again when that opens
      if (this.offsetParent === null && this.getClientRects().length === 0) return;
      this.shownId = id;
      this.renderRoot.querySelector('tr.on')?.scrollIntoView({ block: 'start' });
    });
  }

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
    const selected = app.view.selectedZoneIds;
    const isOn = app.view.selectedZoneIds.includes(zone.id);
    const measured = app.session.derived.measured.zones.get(zone.id);
    const name = zone.name || 'Zone without a name';
    return html`
      <tr class=${isOn ? 'on' : ''}>
        <td class="tick"><label><input type="checkbox" .checked=${isOn} aria-label=${`Choose ${name}`}
          @change=${(event: Event) => this.tick(zone.id, isTicked(event))} /></label></td>
        <td><button class="pick" aria-expanded=${isOn && selected.length === 1 ? 'true' : 'false'} @click=${() => this.pick(zone.id)}>
          <hatch-swatch .zone=${zone} ?dark=${app.theme === 'dark'}></hatch-swatch>
          <span class="words"><span class="name">${name}</span><span class="quiet">${zoneStateWords(zone)}</span></span>
        </button></td>
        <td class="num">
          ${
            measured
              ? html`${formatAreaPm(measured.netM2, measured.netSigmaM2, app.units)}
                  ${measured.cutBy.length > 0 ? html`<br /><span class="quiet">(${formatCuts(measured.grossM2, [], measured.netM2, measured.netSigmaM2, app.units).gross})</span>` : nothing}
                  ${
                    app.yard.settings.showSurface && zone.slope !== null
                      ? html`<br /><span class="quiet slope">${surfaceWords(measured.netM2, measured.netSigmaM2, zone.slope, app.units)}</span>`
                      : nothing
                  }`
              : html`<span class="none">not measurable</span>`
          }
        </td>
      </tr>
      ${
        isOn && selected.length === 1
          ? html`<tr class="more"><td colspan="3"><zone-details .app=${app} .rev=${this.rev}></zone-details></td></tr>`
          : nothing
      }
    `;
  }

  private askedDetails = false;

  /** What is shown of a chosen zone is fetched when one is chosen first. */
  private loadDetails(): void {
    if (this.askedDetails) return;
    this.askedDetails = true;
    import('./zone-details').catch(() => {
      this.askedDetails = false;
      const message = 'The details could not be loaded. Check the connection and choose the zone again.';
      this.app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
    });
  }

  private tick(zoneId: string, on: boolean): void {
    this.shownId = zoneId;
    const others = this.app.view.selectedZoneIds.filter((id) => id !== zoneId);
    this.app.setView({ selectedZoneIds: on ? [...others, zoneId] : others });
  }

  private pick(zoneId: string): void {
    const selected = this.app.view.selectedZoneIds;
    const isOnlyOne = selected.length === 1 && selected[0] === zoneId;
    this.shownId = zoneId;
    this.app.setView({ selectedZoneIds: isOnlyOne ? [] : [zoneId] });
  }
}
