import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatDay } from '../../units/formatDay';
import {
  CALIBRATION_FINDS,
  CALIBRATION_WORDS,
  CALIBRATIONS_OF,
  calibrationReminder,
  lastCalibrated,
  readingsWords,
} from '../../words/equipmentWords';
import { productName } from '../../words/productWords';
import type { Calibration, CalibrationKind, Equipment } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import { shared } from '../parts/shared';
import { calibrationDrafts } from './calibration-draft';
import { sendEquipmentChange } from './equipment-change';

/** Ways to calibrate a piece of equipment, and what was done. Event `calibration-open` with the kind. */
@customElement('calibration-list')
export class CalibrationList extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      ul { list-style: none; margin: 0 0 0.5rem; padding: 0; }
      .way { display: grid; gap: 0; width: 100%; text-align: left; padding: 0.5rem 0.75rem; margin-bottom: 0.4rem; }
      .way b { font-weight: 650; }
      .past li { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0.5rem; padding: 0.5rem 0; border-top: 1px solid var(--line); align-items: start; }
      .past p { margin: 0; }
    `,
  ];

  @property({ attribute: false }) equipment!: Equipment;

  /** Puts the cursor back on the way whose sheet was left. */
  focusWay(kind: CalibrationKind): void {
    const at = CALIBRATIONS_OF[this.equipment.applicator].indexOf(kind);
    this.renderRoot.querySelectorAll<HTMLElement>('.way')[at]?.focus();
  }

  protected override render() {
    const { equipment } = this;
    const reminder = calibrationReminder(equipment, this.app.today());
    const past = [...equipment.calibrations].sort((a, b) => b.on.localeCompare(a.on));
    return html`
      ${reminder === null ? nothing : html`<p class="note warning">${reminder}</p>`}
      <ul>${CALIBRATIONS_OF[equipment.applicator].map((kind) => html`<li>${this.renderWay(kind)}</li>`)}</ul>
      ${
        past.length === 0
          ? nothing
          : html`<details class="fold"><summary>Calibrations done (${past.length})</summary>
              <ul class="past">${past.map((each) => this.renderPast(each))}</ul></details>`
      }`;
  }

  private renderWay(kind: CalibrationKind) {
    const last = lastCalibrated(this.equipment, kind);
    const place = { yardId: this.app.yard.id, equipmentId: this.equipment.id, kind };
    const isOpen = calibrationDrafts.draftOf(place) !== null;
    const when = isOpen ? ' Under way.' : last === null ? '' : ` Last done ${formatDay(last, true)}.`;
    return html`<button type="button" class="way" @click=${() =>
      this.dispatchEvent(
        new CustomEvent<CalibrationKind>('calibration-open', { detail: kind, bubbles: true, composed: true }),
      )}>
      <b>${CALIBRATION_WORDS[kind]}</b><span class="quiet">Finds ${CALIBRATION_FINDS[kind]}.${when}</span></button>`;
  }

  private renderPast(each: Calibration) {
    const product =
      each.productId === null ? undefined : this.app.yard.products.find((one) => one.id === each.productId);
    const name = `${CALIBRATION_WORDS[each.kind]}, ${formatDay(each.on, true)}`;
    const words = [
      product ? productName(product) : '',
      readingsWords(each, this.app.units),
      each.note,
    ].filter((part) => part !== '');
    return html`<li><div><p><b>${name}</b></p><p class="quiet">${words.join('; ')}</p></div>
      <button type="button" aria-label=${`Take out ${name}`} @click=${() =>
        sendEquipmentChange(this, 'calibrations', {
          calibrations: this.equipment.calibrations.filter((one) => one !== each),
        })}>×</button></li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'calibration-list': CalibrationList;
  }
}
