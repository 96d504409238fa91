import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatAreaPm } from '../units/format';
import { changeSettings } from '../yard/edits';
import type { UnitSystem } from '../yard/types';
import { AppPart } from './parts/app-part';
import './parts/hatch-swatch';
import { KIND_WORDS } from '../words/zoneWords';
import { shared } from './parts/shared';
import { showTheme } from './theme';

/** The ruled corner of the sheet: whose yard, how much of what ground, in which units, saved or not. */
@customElement('title-block')
export class TitleBlock extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; background: var(--sheet); }
      .cells { display: grid; grid-template-columns: 1fr auto; border-top: 2px solid var(--ink); }
      .cell { padding: 0.35rem 0.75rem; border-bottom: 1px solid var(--line); min-width: 0; }
      .cell + .cell { border-left: 1px solid var(--line); }
      .wide { grid-column: 1 / -1; border-left: 0; }
      h1 { margin: 0; font-size: 1.25rem; line-height: 1.2; overflow-wrap: anywhere; }
      ul { list-style: none; margin: 0; padding: 0; display: grid; grid-template-columns: 1fr 1fr; column-gap: 1rem; }
      li { display: flex; align-items: center; gap: 0.4rem; min-height: 2.4rem; font-size: var(--text-small); line-height: 1.15; }
      li span { display: grid; }
      li b { font-weight: 600; white-space: nowrap; }
      .switches { display: flex; align-items: stretch; padding: 0; }
      .switches button { border: 0; border-right: 1px solid var(--line); border-radius: 0; padding: 0 0.6rem; font-size: var(--text-small); }
      .switches button:last-child { border-right: 0; }
      .save { display: flex; align-items: center; gap: 0.4rem; font-size: var(--text-small); margin: 0; }
      .save.failed { color: var(--danger); }
      .mini { min-width: 0; line-height: 1.2; }
      .mini h1 { font-size: 1rem; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
      .mini p { margin: 0; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
    `,
  ];

  /** one line only: the head of a narrow screen's drawer. */
  @property({ type: Boolean }) mini = false;
  @property({ type: Boolean }) bare = false;
  /** without the kinds: leaves the room to the panel of another step. */
  @property({ type: Boolean }) brief = false;

  protected override render() {
    const { yard, derived } = this.app.session;
    const { totals } = derived.measured;
    const name = yard.name || 'Yard without a name';
    if (this.mini) {
      const [zoneId, second] = this.app.view.selectedZoneIds;
      const zone = second === undefined ? yard.zones.find((each) => each.id === zoneId) : undefined;
      const measured = zone && derived.measured.zones.get(zone.id);
      if (zone && measured) {
        return html`<div class="mini"><h1>${zone.name || 'Zone without a name'}</h1>
          <p class="quiet">${formatAreaPm(measured.netM2, measured.netSigmaM2, this.app.units)}</p></div>`;
      }
      const turf = totals.find((total) => total.kind === 'turf' && total.count > 0);
      return html`<div class="mini"><h1>${name}</h1>
        ${turf ? html`<p class="quiet">turf ${formatAreaPm(turf.netM2, turf.netSigmaM2, this.app.units)}</p>` : nothing}
      </div>`;
    }
    const shown = totals.filter((total) => total.count > 0);
    return html`
      <section class="cells" aria-label="Title block">
        ${this.bare ? nothing : html`<div class="cell wide"><h1>${name}</h1></div>`}
        ${yard.settings.isLocal ? html`<p class="cell wide quiet">Local drawing, no place on the Earth</p>` : nothing}
        ${
          this.brief
            ? nothing
            : html`<div class="cell wide">
          ${
            shown.length === 0
              ? html`<p class="quiet">No ground measured yet.</p>`
              : html`<ul aria-label="Ground by kind, each square foot or metre once">
                  ${shown.map(
                    (total) => html`<li>
                      <hatch-swatch .zone=${{ kind: total.kind, mowing: null, material: null }} ?dark=${this.app.theme === 'dark'}></hatch-swatch>
                      <span>${KIND_WORDS[total.kind]} <b>${formatAreaPm(total.netM2, total.netSigmaM2, this.app.units)}</b></span>
                    </li>`,
                  )}
                </ul>`
          }
        </div>`
        }
        <div class="cell">${this.renderSave()}</div>
        <div class="cell switches">
          ${this.unitButton('us', 'ft', 'US customary units')}
          ${this.unitButton('metric', 'm', 'Metric units')}
          <button aria-pressed=${this.app.theme === 'dark' ? 'true' : 'false'} @click=${this.turnTheme}>Dark</button>
        </div>
      </section>
    `;
  }

  private unitButton(system: UnitSystem, text: string, label: string) {
    return html`<button aria-label=${label} aria-pressed=${this.app.units === system ? 'true' : 'false'}
      @click=${() => this.app.dispatch('Change units', (yard) => changeSettings(yard, { units: system }))}>${text}</button>`;
  }

  private renderSave() {
    const { save } = this.app.session;
    const words = { saved: 'Saved on this device', saving: 'Saving…', failed: 'Not saved' }[save.state];
    return html`<p class="save ${save.state}" role="status" title=${save.state === 'failed' ? save.message : nothing}>
      <span aria-hidden="true">${{ saved: '✓', saving: '…', failed: '!' }[save.state]}</span>${words}
    </p>`;
  }

  private turnTheme(): void {
    const theme = this.app.theme === 'dark' ? 'light' : 'dark';
    showTheme(theme, true);
    this.app.setTheme(theme);
  }
}
