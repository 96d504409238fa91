import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatAreaOfPm } from '../../units/format';
import { CLASS_WORDS } from '../../words/productWords';
import { zoneWords } from '../../words/zoneWords';
import { chosenZones, treatableZones, zoneClass } from '../../yard/choose';
import { ZONE_CLASSES, type Zone, type ZoneChoice, type ZoneClass } from '../../yard/types';
import { AppPart, isTicked } from '../parts/app-part';
import { shared } from '../parts/shared';
import { chooseClass, chooseZone } from './zone-choice-edits';

/** Which ground is treated: by class, or one by one. Event `choice-change` with the next choice. */
@customElement('zone-choice')
export class ZoneChoiceField extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .classes { display: grid; grid-template-columns: repeat(auto-fill, minmax(9.5rem, 1fr)); }
      ul { list-style: none; margin: 0; padding: 0; }
      li { border-top: 1px solid var(--line); display: flex; align-items: center; justify-content: space-between; gap: 0.5rem; }
      li label { flex: 1; min-width: 0; }
      .kind { color: var(--ink-soft); font-size: var(--text-small); }
      .area { white-space: nowrap; text-align: right; }
      summary { min-height: var(--touch); display: flex; align-items: center; cursor: pointer; text-decoration: underline; }
    `,
  ];

  @property({ attribute: false }) choice!: ZoneChoice;

  protected override render() {
    const { yard } = this.app;
    const zones = treatableZones(yard);
    if (zones.length === 0) {
      return html`<p class="note">There is no turf, bed or other ground yet. Draw it under Measure first.</p>`;
    }
    const chosen = new Set(chosenZones(yard, this.choice).map((zone) => zone.id));
    const present = ZONE_CLASSES.filter((one) => zones.some((zone) => zoneClass(zone) === one));
    return html`
      <div class="classes">${present.map((one) => this.renderClass(one, zones, chosen))}</div>
      <details ?open=${this.choice.include.length + this.choice.exclude.length > 0}>
        <summary>One by one (${chosen.size} of ${zones.length} chosen)</summary>
        <ul>${zones.map((zone) => this.renderZone(zone, chosen.has(zone.id)))}</ul>
      </details>
    `;
  }

  /** Ticked where all of the class is chosen, however it was; half ticked where some is. */
  private renderClass(one: ZoneClass, zones: readonly Zone[], chosen: ReadonlySet<string>) {
    const own = zones.filter((zone) => zoneClass(zone) === one);
    const count = own.filter((zone) => chosen.has(zone.id)).length;
    return html`<label class="check"><input type="checkbox" .checked=${count === own.length} .indeterminate=${count > 0 && count < own.length}
      @change=${(event: Event) => this.send(chooseClass(this.app.yard, this.choice, one, isTicked(event)))} />${CLASS_WORDS[one]}</label>`;
  }

  private renderZone(zone: Zone, isChosen: boolean) {
    const { app } = this;
    const measured = app.session.derived.measured.zones.get(zone.id);
    return html`<li>
      <label class="check"><input type="checkbox" .checked=${isChosen}
        @change=${(event: Event) => this.send(chooseZone(app.yard, this.choice, zone.id, isTicked(event)))} />
        <span>${zone.name || 'Without a name'} <span class="kind">${zoneWords(zone)}</span></span></label>
      ${measured ? html`<span class="area">${formatAreaOfPm(measured.netM2, measured.netSigmaM2, app.units)}</span>` : nothing}
    </li>`;
  }

  private send(choice: ZoneChoice): void {
    this.dispatchEvent(new CustomEvent<ZoneChoice>('choice-change', { detail: choice }));
  }
}
