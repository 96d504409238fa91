import { css, html, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { APPLICATOR_WORDS } from '../../words/productWords';
import { type Amount, APPLICATORS, type Equipment } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { focusAll } from '../parts/focus-all';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { sendEquipmentChange } from './equipment-change';
import { asApplicator, fillUnit } from './equipment-edits';
import './setting-list';

/** Usual share of the spread that is left with the guard down, as its empty field says. */
const GUARD_HINT = 'empty: a quarter of it';

/** The figures of one piece of equipment. Sends `equipment-change`. */
@customElement('equipment-form')
export class EquipmentForm extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(10rem, 1fr)); gap: 0.6rem 0.5rem; align-items: start; margin-bottom: 0.75rem; }
      .whole { grid-column: 1 / -1; margin: 0; }
      h3 { margin: 1rem 0 0.5rem; padding-top: 0.5rem; border-top: 1px solid var(--line); }
    `,
  ];

  @property({ attribute: false }) equipment!: Equipment;
  @query('#name') private nameField?: HTMLInputElement;

  /** Puts the cursor in the name, all of it chosen. */
  focusName(): void {
    focusAll(this, () => this.nameField);
  }

  protected override render() {
    const { equipment } = this;
    const { applicator } = equipment;
    const isSprayer = applicator === 'hose-end' || applicator === 'tank-sprayer';
    const isSpreader = applicator === 'broadcast-spreader' || applicator === 'drop-spreader';
    return html`<form @submit=${(event: Event) => event.preventDefault()}>
      <div class="fields">
        <label class="whole">Name<input id="name" autocomplete="off" .value=${equipment.name} @input=${(event: Event) => this.send('name', { name: fieldValue(event) })} /></label>
        <div class="whole">${selectField('Puts out as', applicator, APPLICATORS, APPLICATOR_WORDS, (next) => this.send('applicator', asApplicator(equipment, next)))}</div>
      </div>
      <slot></slot>
      <h3>Swath</h3>
      <div class="fields">
        <quantity-field label="Swath: what one pass covers" quantity="length" .system=${this.app.units} .value=${equipment.swathM} .min=${0.05} .max=${30}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            if (event.detail.valueSi !== null) this.send('swath', { swathM: event.detail.valueSi });
          }}></quantity-field>
        <number-field label="Overlap of neighbouring passes" suffix="%" .scale=${100} .value=${equipment.overlapShare} .min=${0} .max=${50}
          @number-change=${(event: CustomEvent<NumberChange>) => this.send('overlap', { overlapShare: event.detail.value ?? 0 })}></number-field>
      </div>
      ${isSprayer ? this.renderFlow() : nothing}
      ${isSpreader ? html`<h3>Settings by product</h3><setting-list .app=${this.app} .rev=${this.rev} .equipment=${equipment}></setting-list>` : nothing}
      <h3>Walk and fill</h3>
      <div class="fields">
        ${this.quantity('Your walk with it (empty: not timed)', 'speed', 'speedMPerS', 5, 'speed')}
        ${this.renderHolds()}
      </div>
      <h3>Edges</h3>
      <div class="fields">
        ${this.quantity('Lands beyond the edge aimed at (empty: as the label’s use says)', 'length', 'spreadDistanceM', 30, 'spread', 'whole')}
        <label class="check whole"><input type="checkbox" .checked=${equipment.hasEdgeGuard} @change=${(event: Event) => this.send('guard', { hasEdgeGuard: isTicked(event) })} />Has a guard for edges</label>
        ${equipment.hasEdgeGuard ? this.quantity(`Lands beyond it with the guard down (${GUARD_HINT})`, 'length', 'guardedSpreadM', 30, 'guarded', 'whole') : nothing}
      </div>
      <label>Note<textarea .value=${equipment.note} @input=${(event: Event) => this.send('note', { note: fieldValue(event) })}></textarea></label>
    </form>`;
  }

  private renderFlow() {
    const { equipment } = this;
    return html`<h3>What comes out</h3>
      <div class="fields">
        ${this.quantity('Spray in all (empty: not measured)', 'flow', 'flowLPerS', 5, 'flow')}
        <number-field label=${equipment.applicator === 'hose-end' ? 'Of it product (empty: not measured)' : 'Of it product (empty: as mixed in the tank)'} suffix="%" optional .scale=${100} .value=${equipment.productShare === null ? null : Number(equipment.productShare.toPrecision(4))} .min=${0} .max=${100}
          @number-change=${(event: CustomEvent<NumberChange>) => this.send('share', { productShare: event.detail.value })}></number-field>
      </div>`;
  }

  private renderHolds() {
    const { holds, applicator } = this.equipment;
    const isWet = applicator === 'hose-end' || applicator === 'tank-sprayer';
    // told in another unit, such as by a file, it shows as it was told: it counts through the density
    const unit = holds?.unit ?? fillUnit(applicator);
    const isVolume = unit === 'L';
    const label =
      applicator === 'by-hand' ? 'Pail' : applicator === 'hose-end' ? 'Bottle' : isWet ? 'Tank' : 'Hopper';
    const us = !isVolume ? 'lb' : applicator === 'hose-end' ? 'fl oz' : 'gal';
    return html`<quantity-field label=${`${label} holds (empty: not told)`} quantity=${isVolume ? 'volume' : 'mass'} unit=${this.app.units === 'us' ? us : ''} optional .system=${this.app.units} .value=${holds?.value ?? null} .min=${0.001} .max=${5000}
      @quantity-change=${({ detail: { valueSi } }: CustomEvent<QuantityChange>) => this.send('holds', { holds: valueSi === null ? null : ({ unit, value: valueSi } as Amount) })}></quantity-field>`;
  }

  private quantity(
    label: string,
    quantity: 'length' | 'flow' | 'speed',
    key: 'speedMPerS' | 'spreadDistanceM' | 'guardedSpreadM' | 'flowLPerS',
    max: number,
    field: string,
    place = '',
  ) {
    const least = quantity === 'length' ? 0 : 1e-4;
    return html`<quantity-field class=${place} label=${label} quantity=${quantity} optional .system=${this.app.units} .value=${this.equipment[key]} .min=${least} .max=${max}
      @quantity-change=${(event: CustomEvent<QuantityChange>) => this.send(field, { [key]: event.detail.valueSi })}></quantity-field>`;
  }

  private send(field: string, change: Partial<Equipment>): void {
    sendEquipmentChange(this, field, change);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'equipment-form': EquipmentForm;
  }
}
