import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Tool, Trial } from '../../map/types';
import { areaScale } from '../../measure/areaScale';
import { perimeterOfPartsM } from '../../measure/geodesic';
import { checkParcel, type ParcelCheck } from '../../measure/parcel';
import { parcelFromZones } from '../../measure/parcelEdits';
import { formatArea, formatAreaPm, formatLength } from '../../units/format';
import { surveyWords } from '../../words/surveyWords';
import { setParcel } from '../../yard/edits';
import type { Parcel, Rings, UnitSystem, Yard } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import './parcel-check';
import { shared } from '../parts/shared';
import { surveyFields } from './survey-fields';

const DRAW: Tool = { type: 'draw', shape: 'polygon', purpose: 'parcel', kind: 'other', zoneId: null };

/** The outline of the property: drawn, taken from zones or from a plat; and the account of all ground inside it. */
@customElement('parcel-form')
export class ParcelForm extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; margin: 0.5rem 0; align-items: start; }
      .fields > label:first-child, .whole { grid-column: 1 / -1; margin: 0; }
      button.whole { justify-self: start; }
      .ways { display: grid; gap: 0.5rem; margin: 0.75rem 0; }
      .row { margin: 0.5rem 0 0.75rem; }
      .figure { margin: 0.25rem 0; }
    `,
  ];

  private kept: {
    readonly yard: Yard;
    readonly measured: unknown;
    readonly check: ParcelCheck | null;
  } | null = null;
  private shown: ParcelCheck | null = null;

  /** Kept while what it comes from is the same. */
  private get check(): ParcelCheck | null {
    const { yard, session } = this.app;
    const { measured } = session.derived;
    const { kept } = this;
    const isSame =
      kept?.measured === measured &&
      kept.yard.zones === yard.zones &&
      kept.yard.parcel === yard.parcel &&
      kept.yard.settings === yard.settings;
    if (kept && isSame) return kept.check;
    const check = checkParcel(yard, measured);
    this.kept = { yard, measured, check };
    return check;
  }

  /** What is in no zone, and what lies beyond, is outlined on the map while this is open. */
  protected override updated(): void {
    const { check } = this;
    if (check === this.shown) return;
    this.shown = check;
    this.app.setTrial(check && trialOf(check, this.app.units));
  }

  protected override render() {
    const { parcel } = this.app.yard;
    return html`
      <p class="note">For the account of your own ground. Where a boundary matters, a licensed surveyor finds it.</p>
      ${parcel ? this.renderParcel(parcel) : this.renderFirst()}
    `;
  }

  private renderFirst() {
    return html`
      <p>With the outline of the property, every bit of ground inside it is held against the zones: what is in none of them, and what lies beyond.</p>
      <div class="ways">
        ${this.drawButton('Draw it on the map')}
        ${this.fromZones()}
        <button @click=${() => this.app.setView({ way: 'plat' })}>Type it from a plat or deed</button>
      </div>
    `;
  }

  private renderParcel(parcel: Parcel) {
    const { check } = this;
    const { units } = this.app;
    if (!check) return nothing;
    const cannot = check.issues.filter((issue) => issue.severity === 'error');
    return html`
      ${
        cannot.length > 0
          ? cannot.map((issue) => html`<p class="note error">${issue.message}</p>`)
          : html`<p class="figure">${formatAreaPm(check.parcelM2, check.sigmaM2, units)}</p>
              <p class="quiet">${surveyWords(parcel.survey, units)}; ${formatLength(Math.sqrt(areaScale(this.app.yard.settings.elevationM)) * perimeterOfPartsM(parcel.parts), units)} round</p>
              <parcel-check .app=${this.app} .rev=${this.rev} .check=${check}></parcel-check>`
      }
      <details class="fold"><summary>How the outline was measured</summary>
        <div class="fields">${surveyFields(this.app, parcel.survey, (label, survey) => this.set(label, { ...parcel, survey }))}</div></details>
      <details class="fold"><summary>Another outline</summary>
        <div class="ways">
          ${this.drawButton('Draw it again')}
          ${this.fromZones()}
          <button @click=${() => this.app.setView({ way: 'plat' })}>Type it from a plat or deed</button>
          <button class="danger" @click=${() => this.set('Remove outline of the property', null)}>Remove the outline</button>
        </div></details>
    `;
  }

  private drawButton(words: string) {
    const { tool } = this.app.view;
    const isOn = tool.type === 'draw' && tool.purpose === 'parcel';
    return html`<button class=${this.app.yard.parcel ? '' : 'primary'} aria-pressed=${isOn ? 'true' : 'false'}
      @click=${() => this.app.setView({ tool: isOn ? { type: 'select' } : DRAW })}>${isOn ? 'Drawing: put a point at each corner' : words}</button>`;
  }

  private fromZones() {
    const { view, yard } = this.app;
    const chosen = yard.zones.filter((zone) => view.selectedZoneIds.includes(zone.id));
    const ids = (chosen.length > 0 ? chosen : yard.zones).map((zone) => zone.id);
    if (ids.length === 0) return nothing;
    const words =
      chosen.length === 0
        ? 'Take it round all zones'
        : chosen.length === 1
          ? `Take it from ${chosen[0]?.name || 'the chosen zone'}`
          : `Take it round the ${chosen.length} chosen zones`;
    return html`<button @click=${() => {
      const { plane } = this.app.session.derived.measured;
      this.app.attempt('Take outline of the property', (now) => parcelFromZones(now, ids, plane));
    }}>${words}</button>`;
  }

  private set(label: string, parcel: Parcel | null): void {
    this.app.dispatch(label, (yard) => setParcel(yard, parcel));
  }
}

function trialOf({ unassigned, outside }: ParcelCheck, units: UnitSystem): Trial {
  const lines = (parts: readonly Rings[], style: 'main' | 'warn') =>
    parts.flatMap((rings) => rings.map((points) => ({ points, isClosed: true, style })));
  return {
    lines: [
      ...unassigned.flatMap((piece) => lines(piece.parts, 'warn')),
      ...outside.flatMap((piece) => lines(piece.parts, 'main')),
    ],
    points: [],
    circles: [],
    unassigned: unassigned.map(({ parts, areaM2 }) => ({
      parts,
      label: `In no zone: ${formatArea(areaM2, units)}`,
    })),
  };
}
