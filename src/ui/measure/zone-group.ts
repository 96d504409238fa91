import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { joinZones } from '../../measure/shapes';
import { sigmaOfZones } from '../../measure/uncertainty';
import { formatAreaPm } from '../../units/format';
import { zoneName } from '../../words/zoneWords';
import { removeZones } from '../../yard/edits';
import { lockedIssue, lockedZone } from '../../yard/locks';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import { shared } from '../parts/shared';

/** What can be done with several zones at once. */
@customElement('zone-group')
export class ZoneGroup extends AppPart {
  static override styles = [
    shared,
    fold,
    css`:host { display: block; } .box { border: 1px solid var(--line-strong); padding: 0.75rem; margin-bottom: 0.75rem; }`,
  ];

  protected override render() {
    const ids = this.app.view.selectedZoneIds;
    const names = this.app.yard.zones.filter((zone) => ids.includes(zone.id)).map(zoneName);
    const { measured } = this.app.session.derived;
    const netM2 = ids.reduce((sum, id) => sum + (measured.zones.get(id)?.netM2 ?? 0), 0);
    return html`
      <section class="box" aria-label="Chosen zones">
        <h3>${ids.length} zones chosen</h3>
        <p class="quiet">${names.join(', ')}</p>
        <p>Together <b>${formatAreaPm(netM2, sigmaOfZones(measured, ids), this.app.units)}</b> net</p>
        <div class="row">
          <button ?disabled=${ids.length !== 2} @click=${this.join}>Join the two</button>
          <button @click=${() => this.app.map?.fit(ids)}>Show</button>
          <button class="danger" @click=${this.removeChosen}>Delete ${ids.length}</button>
          <button class="plain" @click=${() => this.app.setView({ selectedZoneIds: [] })}>Choose none</button>
        </div>
        ${ids.length === 2 ? '' : html`<p class="quiet">Choose exactly two zones to join them.</p>`}
        <details class="fold" @toggle=${this.opened}><summary>How measured, lock</summary>
          <group-edit .app=${this.app} .rev=${this.rev}></group-edit></details>
      </section>
    `;
  }

  private join(): void {
    const [first, second] = this.app.view.selectedZoneIds;
    if (!first || !second) return;
    const { plane } = this.app.session.derived.measured;
    if (this.app.attempt('Join zones', (yard) => joinZones(yard, [first, second], plane))) {
      this.app.setView({ selectedZoneIds: [first] });
    }
  }

  private opened(event: Event): void {
    if (!(event.target as HTMLDetailsElement).open) return;
    import('./group-edit').catch(() => {
      const message = 'This part could not be loaded. Check the connection, then close and open it again.';
      this.app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
    });
  }

  private removeChosen(): void {
    const ids = this.app.view.selectedZoneIds;
    const locked = lockedZone(this.app.yard.zones, ids);
    if (locked) {
      this.app.tell(lockedIssue(locked));
      return;
    }
    this.app.dispatch(`Delete ${ids.length} zones`, (yard) => removeZones(yard, ids));
  }
}
