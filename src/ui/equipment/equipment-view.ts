import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import {
  CALIBRATION_WORDS,
  calibrationReminder,
  equipmentLine,
  equipmentName,
} from '../../words/equipmentWords';
import { APPLICATOR_WORDS } from '../../words/productWords';
import { addEntry, removeEntry, replaceEntry } from '../../yard/edits';
import { APPLICATORS, type Applicator, type CalibrationKind, type Equipment } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { entryList } from '../parts/entry-list';
import { fold } from '../parts/fold';
import { shared } from '../parts/shared';
import { calibrationDrafts } from './calibration-draft';
import './calibration-form';
import './calibration-list';
import type { EquipmentChange } from './equipment-change';
import { copyOfEquipment, freshEquipment } from './equipment-edits';
import './equipment-form';
import { type AskedDose, takeEquipmentAsk } from './equipment-open';
import './hose-form';
import { undoStep } from '../parts/undo-step';

/** The person's own sprayers and spreaders, the hose and the step; calibrated here. */
@customElement('equipment-view')
export class EquipmentView extends AppPart {
  static override styles = [
    shared,
    entryList,
    fold,
    css`
      :host { display: block; }
      .open .kind { color: var(--ink-soft); font-size: var(--text-small); white-space: nowrap; }
      .open .due { grid-column: 1 / -1; color: var(--warn); font-size: var(--text-small); font-weight: 650; }
      .acts { margin: 0.25rem 0 0.75rem; }
      .add { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0.5rem; align-items: end; margin-bottom: 0.75rem; }
      h3 { margin: 1rem 0 0.5rem; padding-top: 0.5rem; border-top: 1px solid var(--line); }
    `,
  ];

  @state() private openId: string | null = null;
  @state() private kind: CalibrationKind | null = null;
  @state() private next: Applicator = 'hose-end';
  private isNew = false;
  /** the dose that the calibration asked for is done for. */
  private dose: AskedDose | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    const ask = takeEquipmentAsk();
    if (!ask) return;
    this.openId = ask.equipmentId;
    this.kind = ask.kind;
    this.dose = ask.dose;
  }

  protected override updated(): void {
    const form = this.isNew ? this.renderRoot.querySelector('equipment-form') : null;
    if (!form) return;
    this.isNew = false;
    form.focusName();
  }

  protected override render() {
    const { app, rev } = this;
    const { equipment } = app.yard;
    const inHand = equipment.find((each) => each.id === this.openId);
    if (inHand && this.kind !== null)
      return html`<calibration-form .app=${app} .rev=${rev} .equipment=${inHand} .kind=${this.kind} .asked=${this.dose}
        @calibration-close=${() => this.calibrate(null)}></calibration-form>`;
    return html`
      ${this.renderUnderWay()}
      ${
        equipment.length === 0
          ? html`<p>No equipment yet. Add what you spray and spread with, then calibrate it: how wide it covers and what comes out decide where passes lie, how fast to walk and where a bottle runs out.</p>`
          : html`<ul @equipment-change=${(event: CustomEvent<EquipmentChange>) => this.change(event.detail)}>${repeat(
              equipment,
              (each) => each.id,
              (each) => this.renderOne(each),
            )}</ul>`
      }
      <form class="add" @submit=${(event: Event) => this.add(event)}>
        <label>Kind of equipment<select @change=${(event: Event) => {
          this.next = fieldValue(event) as Applicator;
        }}>${APPLICATORS.map((each) => html`<option value=${each} .selected=${each === this.next}>${APPLICATOR_WORDS[each]}</option>`)}</select></label>
        <button class="primary">Add equipment</button></form>
      <details class="fold"><summary>Hose and step</summary><hose-form .app=${app} .rev=${rev}></hose-form></details>
    `;
  }

  /** Calibrations that were left half done: by a reload, or for another screen. */
  private renderUnderWay() {
    const { yard } = this.app;
    return calibrationDrafts.placesIn(yard.id).map(({ equipmentId, kind }) => {
      const equipment = yard.equipment.find((each) => each.id === equipmentId);
      if (!equipment) return nothing;
      return html`<p class="note">${CALIBRATION_WORDS[kind]} under way: ${equipmentName(equipment)}. What is filled in is kept.
        <button @click=${() => {
          this.openId = equipmentId;
          this.calibrate(kind);
        }}>Go on with it</button></p>`;
    });
  }

  private renderOne(equipment: Equipment) {
    const isOpen = equipment.id === this.openId;
    const reminder = calibrationReminder(equipment, this.app.today());
    return html`<li class=${isOpen ? 'chosen' : ''}>
      <button class="open" aria-expanded=${isOpen ? 'true' : 'false'} @click=${() => {
        this.openId = isOpen ? null : equipment.id;
      }}>
        <span class="name">${equipmentName(equipment)}</span><span class="kind">${equipmentName(equipment) === APPLICATOR_WORDS[equipment.applicator] ? nothing : APPLICATOR_WORDS[equipment.applicator]}</span>
        <span class="words">${equipmentLine(equipment, this.app.units)}</span>
        ${reminder === null || isOpen ? nothing : html`<span class="due">${reminder}</span>`}
      </button>
      ${isOpen ? this.renderOpen(equipment) : nothing}</li>`;
  }

  private renderOpen(equipment: Equipment) {
    const { app, rev } = this;
    return html`
      <div class="row acts">
        <button @click=${() => this.copy(equipment)}>Copy</button>
        <button class="danger" @click=${() => this.removeNow(equipment)}>Remove</button>
        <button @click=${() => {
          this.openId = null;
        }}>Close</button></div>
      <equipment-form .app=${app} .rev=${rev} .equipment=${equipment}>
      <h3>Calibrate</h3>
      <calibration-list .app=${app} .rev=${rev} .equipment=${equipment}
        @calibration-open=${(event: CustomEvent<CalibrationKind>) => this.calibrate(event.detail)}></calibration-list></equipment-form>`;
  }

  private change({ field, change }: EquipmentChange): void {
    const id = this.openId;
    this.app.dispatch(
      'Change equipment',
      (yard) => {
        const now = yard.equipment.find((each) => each.id === id);
        return now ? replaceEntry(yard, 'equipment', { ...now, ...change }) : yard;
      },
      `equipment ${id} ${field}`,
    );
  }

  private calibrate(kind: CalibrationKind | null): void {
    const left = this.kind;
    this.kind = kind;
    this.dose = null;
    void this.updateComplete.then(async () => {
      if (kind !== null || left === null) {
        this.scrollIntoView({ block: 'start' });
        return;
      }
      const list = this.renderRoot.querySelector('calibration-list');
      await list?.updateComplete;
      list?.focusWay(left);
    });
  }

  private add(event: Event): void {
    event.preventDefault();
    const { app } = this;
    const made = freshEquipment(app.newId('equipment'), this.next, app.yard.equipment, app.units);
    app.dispatch('Add equipment', (yard) => addEntry(yard, 'equipment', made));
    this.openId = made.id;
    this.isNew = true;
  }

  private copy(equipment: Equipment): void {
    const { app } = this;
    const made = copyOfEquipment(app.newId('equipment'), equipment, app.yard.equipment);
    app.dispatch('Copy equipment', (yard) => addEntry(yard, 'equipment', made));
    this.openId = made.id;
    this.isNew = true;
  }

  private removeNow(equipment: Equipment): void {
    const { app } = this;
    const doses = app.yard.visits
      .flatMap((visit) => visit.doses)
      .filter((dose) => dose.passes.equipmentId === equipment.id).length;
    app.dispatch('Remove equipment', (yard) => removeEntry(yard, 'equipment', equipment.id));
    this.openId = null;
    const used =
      doses === 0
        ? ''
        : ` ${doses === 1 ? 'A dose that named it takes' : `${doses} doses that named it take`} what else is at hand.`;
    app.note('equipment-removed', `“${equipmentName(equipment)}” is removed.${used}`, undoStep(app));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'equipment-view': EquipmentView;
  }
}
