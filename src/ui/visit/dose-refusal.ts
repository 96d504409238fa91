import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { refusedZones } from '../../plan/soilGate';
import { decisionOn, newSoilOverride, SOIL_REFUSAL } from '../../plan/soilOverride';
import { productsWithoutPhosphorus } from '../../plan/withoutPhosphorus';
import { visitZones } from '../../yard/choose';
import { addEntry, removeEntry, replaceVisit } from '../../yard/edits';
import type { Visit, VisitDose, Zone } from '../../yard/types';
import { zoneNames } from '../../yard/zoneNames';
import { AppPart, fieldValue } from '../parts/app-part';
import { shared } from '../parts/shared';
import './dose-offers';
import { chooseZone } from './zone-choice-edits';

/** What can be done where the soil speaks against a dose, or is not known. Draws nothing where it does not. */
@customElement('dose-refusal')
export class DoseRefusal extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      h5 { margin: 0.5rem 0 0.25rem; font-size: var(--text-small); color: var(--ink-soft); font-weight: 650; }
      .ways { display: grid; gap: 0.4rem; margin-bottom: 0.5rem; }
      .ways button { text-align: left; padding: 0.35rem 0.75rem; line-height: 1.25; }
      .ways small { display: block; color: var(--ink-soft); font-size: var(--text-small); }
      summary { min-height: var(--touch); display: flex; align-items: center; cursor: pointer; text-decoration: underline; }
      form { display: grid; gap: 0.5rem; }
      form button { justify-self: start; }
    `,
  ];

  @property({ attribute: false }) visit!: Visit;
  @property({ attribute: false }) dose!: VisitDose;
  @state() private reason = '';
  @state() private isReasonMissing = false;
  /** offers are tried in the whole season: only where they are looked at. */
  @state() private isOffersOpen = false;

  protected override render() {
    const { app, dose, visit } = this;
    const issues = app.visit?.figures.issues.filter((issue) => issue.place.doseId === dose.id) ?? [];
    const has = (code: string) => issues.some((issue) => issue.code === code);
    if (has(SOIL_REFUSAL)) return this.renderRefused();
    const override = has('soil-phosphorus-overridden')
      ? decisionOn(app.yard, visit, dose, this.ground.refused)?.override
      : null;
    return html`
      ${
        override
          ? html`<button @click=${() => app.dispatch('Withdraw override', (yard) => removeEntry(yard, 'overrides', override.id))}>Withdraw that decision</button>`
          : nothing
      }
      ${has('soil-no-test') ? this.renderUntested() : nothing}
    `;
  }

  /** How many zones of the dose have ground to treat, and those of them that the soil refuses it. */
  private get ground(): { readonly count: number; readonly refused: readonly Zone[] } {
    const { app, visit, dose } = this;
    const asked = app.visit?.asked;
    const ids = visitZones(app.yard, visit, dose)
      .map((zone) => zone.id)
      .filter((id) => (asked?.get(id)?.areaM2 ?? 0) > 0);
    return { count: ids.length, refused: refusedZones(app.yard, ids, visit.date) };
  }

  private renderRefused() {
    const { count, refused } = this.ground;
    const ids = refused.map((zone) => zone.id);
    return html`
      <h5>What can be done</h5>
      ${this.renderOffers()}
      <div class="ways">
        ${
          refused.length < count
            ? html`<button @click=${() => this.leaveOut(ids)}>Leave out ${zoneNames(this.app.yard, ids)}
                <small>The dose goes on the rest of its ground.</small></button>`
            : html`<p class="quiet">All the ground of this dose has more than enough phosphorus.</p>`
        }
      </div>
      <details><summary>Put it out all the same</summary>
        <form @submit=${(event: Event) => this.override(event)}>
          <label>Reason, kept in the log (such as new sod, or the lab’s advice)<textarea required aria-invalid=${this.isReasonMissing ? 'true' : 'false'} .value=${this.reason}
            @input=${(event: Event) => {
              this.reason = fieldValue(event);
              this.isReasonMissing = false;
            }}></textarea></label>
          ${this.isReasonMissing ? html`<p class="note error" role="alert">A reason is needed.</p>` : nothing}
          <p class="quiet">Too much phosphorus runs off into water. The label and local rules come first; the log shows this decision under Need. It holds for ${zoneNames(this.app.yard, ids)}, this rate and this soil test; more ground, a higher rate or a new test ask anew.</p>
          <button>Put it out all the same</button>
        </form>
      </details>
    `;
  }

  private renderUntested() {
    return html`
      <div class="ways"><button @click=${() => this.app.setView({ step: 'need' })}>Enter a soil test</button></div>
      ${
        productsWithoutPhosphorus(this.app.yard, this.dose).length > 0
          ? html`<details @toggle=${(event: Event) => {
              this.isOffersOpen = (event.target as HTMLDetailsElement).open;
            }}><summary>Without phosphorus instead</summary>${this.isOffersOpen ? this.renderOffers() : nothing}</details>`
          : nothing
      }
    `;
  }

  private renderOffers() {
    return html`<dose-offers .app=${this.app} .rev=${this.rev} .visit=${this.visit} .dose=${this.dose}></dose-offers>`;
  }

  private leaveOut(zoneIds: readonly string[]): void {
    const { yard } = this.app;
    this.changeDose('Leave out ground', (dose) => ({
      ...dose,
      zones: zoneIds.reduce(
        (choice, zoneId) => chooseZone(yard, choice, zoneId, false),
        dose.zones ?? this.visit.zones,
      ),
    }));
  }

  private changeDose(label: string, change: (dose: VisitDose) => VisitDose): void {
    const [visitId, doseId] = [this.visit.id, this.dose.id];
    this.app.dispatch(label, (yard) => {
      const visit = yard.visits.find((one) => one.id === visitId);
      if (!visit) return yard;
      const doses = visit.doses.map((dose) => (dose.id === doseId ? change(dose) : dose));
      return replaceVisit(yard, { ...visit, doses });
    });
  }

  private override(event: Event): void {
    event.preventDefault();
    const { app, visit, dose } = this;
    const reason = this.reason.trim();
    this.isReasonMissing = reason === '';
    if (reason === '') return;
    const entry = newSoilOverride(app.yard, visit, dose, this.ground.refused, {
      id: app.newId('override'),
      on: app.today(),
      reason,
    });
    app.dispatch('Put out all the same', (yard) => addEntry(yard, 'overrides', entry));
    this.reason = '';
  }
}
