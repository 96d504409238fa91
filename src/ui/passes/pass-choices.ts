import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { spacingOf } from '../../pace/usual';
import { formatLength, formatPercent } from '../../units/format';
import { equipmentName } from '../../words/equipmentWords';
import { APPLICATOR_WORDS } from '../../words/productWords';
import { MARK_WORDS } from '../../words/zoneWords';
import type { Equipment, Mark, PassChoice, UnitSystem, Visit, VisitDose } from '../../yard/types';
import { openEquipment } from '../equipment/equipment-open';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { shared } from '../parts/shared';
import { doseInHand } from './dose-in-hand';
import { lapChoices } from './lap-choices';
import { changePasses, setWalkEnd } from './passes-edits';

/** What the person chooses for the walk of a dose; each choice is one step for undo. */
@customElement('pass-choices')
export class PassChoices extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; margin-bottom: 0.75rem; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.6rem 0.5rem; align-items: end; }
      .whole { grid-column: 1 / -1; }
      .fields > p { margin: 0; }
      fieldset { grid-column: 1 / -1; border: 0; margin: 0; padding: 0; }
      legend { padding: 0; font-size: var(--text-small); color: var(--ink-soft); }
      button.plain { padding: 0; min-height: 0; }
      @media (pointer: coarse) { button.plain { min-height: var(--touch); } }
    `,
  ];

  protected override render() {
    const hand = doseInHand(this.app);
    if (!hand?.equipment) return nothing;
    const { dose, visit } = hand;
    const { equipment, isAssumed } = hand.equipment;
    const { units } = this.app;
    return html`<div class="fields">
      ${this.renderEquipment(dose, equipment, isAssumed)}
      <p class="whole quiet">${swathWords(equipment, units)}${isAssumed ? ' These are usual figures of the trade: measure your own.' : ''}
        <button class="plain" @click=${() => openEquipment(this.app, isAssumed ? null : equipment.id)}>${isAssumed ? 'Add yours' : 'Its figures'}</button></p>
      <fieldset><legend>Coats</legend>
        ${this.renderCoat(dose, 1, 'One, at the full rate')}
        ${this.renderCoat(dose, 2, 'Two at half the rate, the second across the first (evens out granules)')}
      </fieldset>
      <label class="whole">Laps along the outline<select @change=${(event: Event) => this.setLaps(fieldValue(event))}>
        ${lapChoices(dose.passes.headerLaps).map(([value, words]) => html`<option value=${value} .selected=${value === String(dose.passes.headerLaps ?? '')}>${words}</option>`)}
      </select></label>
      ${
        equipment.hasEdgeGuard
          ? html`<label class="check whole"><input type="checkbox" .checked=${dose.passes.isGuarded}
              @change=${(event: Event) => this.change('Put edge guard down', { isGuarded: isTicked(event) })} />Edge guard down along the edges</label>`
          : nothing
      }
      ${this.renderEnd(visit, 'startMarkId', 'Begin at')}
      ${this.renderEnd(visit, 'endMarkId', 'End at')}
      ${
        this.places.length === 0
          ? html`<p class="whole quiet">A walk can begin and end at a gate or a hose bib; none is on the drawing. <button class="plain" @click=${() => this.app.setView({ step: 'measure' })}>Mark one</button></p>`
          : html`<p class="whole quiet">Begin and end hold for the whole visit, for all its products.</p>`
      }
    </div>`;
  }

  private renderEquipment(dose: VisitDose, equipment: Equipment, isAssumed: boolean) {
    const all = this.app.yard.equipment;
    const named = all.find((each) => each.id === dose.passes.equipmentId);
    const fits = isAssumed
      ? `usual figures, ${APPLICATOR_WORDS[equipment.applicator].toLowerCase()}`
      : equipmentName(equipment);
    const auto = named ? 'By the label' : `By the label: ${fits}`;
    return html`<label class="whole">Equipment<select @change=${(event: Event) => this.change('Choose equipment', { equipmentId: fieldValue(event) || null })}>
      <option value="" .selected=${!named}>${auto}</option>
      ${all.map((each) => html`<option value=${each.id} .selected=${each.id === named?.id}>${equipmentName(each)}</option>`)}
    </select></label>`;
  }

  private renderCoat(dose: VisitDose, coats: 1 | 2, words: string) {
    return html`<label class="check"><input type="radio" name="coats" .checked=${dose.passes.coats === coats}
      @change=${() => this.change(coats === 1 ? 'Lay one coat' : 'Lay two coats', { coats })} />${words}</label>`;
  }

  private get places(): readonly Mark[] {
    return this.app.yard.marks.filter((mark) => mark.kind === 'gate' || mark.kind === 'hose-bib');
  }

  private renderEnd(visit: Visit, end: 'startMarkId' | 'endMarkId', words: string) {
    const { places } = this;
    if (places.length === 0) return nothing;
    const choose = (event: Event) => {
      const markId = fieldValue(event) || null;
      this.app.dispatch(`${words} another place`, (yard) => setWalkEnd(yard, visit.id, end, markId));
    };
    return html`<label>${words}<select @change=${choose}>
      <option value="" .selected=${visit[end] === null}>where shortest</option>
      ${places.map((mark) => html`<option value=${mark.id} .selected=${mark.id === visit[end]}>${mark.name.trim() || MARK_WORDS[mark.kind]}</option>`)}
    </select></label>`;
  }

  private setLaps(value: string): void {
    this.change('Set laps along the outline', { headerLaps: value === '' ? null : Number(value) });
  }

  private change(label: string, change: Partial<PassChoice>): void {
    const hand = doseInHand(this.app);
    if (!hand) return;
    this.app.dispatch(label, (yard) => changePasses(yard, hand.visit.id, hand.dose.id, change));
  }
}

function swathWords({ swathM, overlapShare }: Equipment, units: UnitSystem): string {
  const apart = formatLength(spacingOf({ swathM, overlapShare }), units);
  return overlapShare > 0
    ? `Swath ${formatLength(swathM, units)}, passes at most ${apart} apart (${formatPercent(overlapShare)} overlap).`
    : `Passes at most ${apart} apart, one swath.`;
}
