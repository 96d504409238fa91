import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { doseAreaWords } from '../../words/slopeWords';
import { newDose, newVisit } from '../../yard/defaults';
import { addVisit, removeVisit, replaceVisit } from '../../yard/edits';
import type { Visit, ZoneChoice } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import './done-form';
import './dose-card';
import { fold } from '../parts/fold';
import { issueNotes } from '../parts/issue-notes';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import './rinse-list';
import { shared } from '../parts/shared';
import './strip-list';
import './visit-order';
import { visitChoices } from '../../words/visitWords';
import { freeName } from '../../words/zoneWords';
import './zone-choice';
import { undoStep } from '../parts/undo-step';

/** Visit: what goes where on one day, and everything to bring and to do for it. */
@customElement('visit-panel')
export class VisitPanel extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .pick { display: grid; gap: 0.5rem; margin-bottom: 0.5rem; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; margin: 0.5rem 0; align-items: end; }
      .whole { grid-column: 1 / -1; }
      h3 { margin: 1rem 0 0.5rem; padding-top: 0.6rem; border-top: 2px solid var(--ink); }
      .nutrients { margin-top: 0.5rem; }
    `,
  ];

  private get visit(): Visit | undefined {
    return this.app.yard.visits.find((visit) => visit.id === this.app.view.visitId);
  }

  protected override render() {
    const { visits } = this.app.yard;
    return html`
      <h2>Visit</h2>
      ${
        visits.length === 0
          ? html`<p>No visit is planned yet. Add one, choose its ground, then the products in the order they go out.</p>`
          : html`<div class="pick">
              <label>Visit shown<select @change=${(event: Event) => this.app.setView({ visitId: fieldValue(event) })}>
                ${visitChoices(visits, this.app.today()).map(({ id, words }) => html`<option value=${id} .selected=${id === this.app.view.visitId}>${words}</option>`)}
              </select></label></div>`
      }
      <div class="row">
        <button class=${visits.length === 0 ? 'primary' : ''} @click=${this.add}>Add a visit</button>
        ${
          this.visit
            ? html`<button @click=${this.copy}>Copy it</button><button class="danger" @click=${this.removeShown}>Remove it</button>`
            : nothing
        }
      </div>
      ${this.visit ? this.renderVisit(this.visit) : nothing}
    `;
  }

  private renderVisit(visit: Visit) {
    const { app, rev } = this;
    const derived = app.visit;
    // what concerns one dose stands on its card
    const issues = [...(derived?.figures.issues ?? []), ...(derived?.issues ?? [])].filter(
      (issue) => issue.place.doseId === undefined,
    );
    // rules and caps of the year name the product themselves
    const season = app.session.derived.season().issues.filter((issue) => issue.place.visitId === visit.id);
    return html`
      <div class="fields">
        <label class="whole">Name<input autocomplete="off" .value=${visit.name}
          @input=${(event: Event) => this.change('Name visit', { name: fieldValue(event) }, 'name')} /></label>
        <label>Date<input type="date" .value=${visit.date ?? ''}
          @change=${(event: Event) => this.change('Set date of visit', { date: fieldValue(event) || null })} /></label>
        ${visit.date === null ? html`<button @click=${() => this.change('Set date of visit', { date: app.today() })}>Today</button>` : nothing}
      </div>
      <h3>Ground</h3>
      <zone-choice .app=${app} .rev=${rev} .choice=${visit.zones}
        @choice-change=${(event: CustomEvent<ZoneChoice>) => this.change('Choose ground', { zones: event.detail })}></zone-choice>
      ${
        app.yard.zones.some((zone) => zone.slope !== null && app.visit?.treated.has(zone.id))
          ? html`<p class="quiet">${doseAreaWords(app.yard.settings)} The yard’s settings change that.</p>`
          : nothing
      }
      <h3>Products, in the order they go out</h3>
      ${visit.doses.map((dose, index) => html`<dose-card .app=${app} .rev=${rev} .visit=${visit} .dose=${dose} .index=${index}></dose-card>`)}
      ${this.renderAddDose(visit)}
      <div class="fields"><quantity-field class="whole" label="What the sprayer's tank holds (empty: as its equipment tells)" quantity="volume" unit="gal" optional .system=${app.units}
        .value=${visit.tankL} .min=${0.5} .max=${100_000} @quantity-change=${(
          event: CustomEvent<QuantityChange>,
        ) =>
          this.change('Set tank', {
            tankL: event.detail.valueSi ? event.detail.valueSi : null,
          })}></quantity-field></div>
      ${issueNotes([...issues, ...season])}
      ${
        derived && derived.figures.doses.length > 0
          ? html`
            <h3>Edges to rinse or sweep</h3>
            <rinse-list .app=${app} .rev=${rev}></rinse-list>
            <h3>Left untreated</h3>
            <strip-list .app=${app} .rev=${rev}></strip-list>
            <h3>Order of work and cautions</h3>
            <visit-order .app=${app} .rev=${rev}></visit-order>`
          : nothing
      }
      ${
        visit.doses.length > 0
          ? html`<h3>Done</h3><done-form .app=${app} .rev=${rev} .visit=${visit}></done-form>`
          : nothing
      }
      <details class="fold" ?open=${visit.note !== ''}><summary>Note</summary>
        <label>Note<textarea .value=${visit.note} @input=${(event: Event) => this.change('Change note', { note: fieldValue(event) }, 'note')}></textarea></label></details>
    `;
  }

  private renderAddDose(visit: Visit) {
    const { products } = this.app.yard;
    if (products.length === 0) {
      return html`<p class="note">The shelf is empty. <button class="plain" @click=${() => this.app.setView({ step: 'shelf' })}>Add a product first</button></p>`;
    }
    return html`<form class="pick" @submit=${(event: Event) => this.addDose(visit, event)}>
      <label>Add a product<select>
        <option value="" selected>choose from the shelf</option>
        ${products.map((product) => html`<option value=${product.id}>${product.name}</option>`)}
      </select></label>
      <button>Add to visit</button></form>`;
  }

  /** By a button, not by the choice: a list walked through by keys changes at every one. */
  private addDose(visit: Visit, event: Event): void {
    event.preventDefault();
    const list = (event.target as HTMLFormElement).querySelector('select');
    const productId = list?.value;
    if (!list || !productId) {
      list?.focus();
      return;
    }
    list.value = '';
    this.change('Add product to visit', {
      doses: [...visit.doses, newDose(this.app.newId('dose'), productId)],
    });
  }

  private change(label: string, change: Partial<Visit>, field?: string): void {
    const id = this.visit?.id;
    this.app.dispatch(
      label,
      (yard) => {
        const now = yard.visits.find((visit) => visit.id === id);
        return now ? replaceVisit(yard, { ...now, ...change }) : yard;
      },
      field && `visit ${id} ${field}`,
    );
  }

  private freeName(word: string): string {
    return freeName(
      word,
      this.app.yard.visits.map((visit) => visit.name),
    );
  }

  private add(): void {
    const { app } = this;
    const visit = newVisit(app.newId('visit'), {
      name: this.freeName('Visit'),
      zones: { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: [] },
    });
    app.dispatch('Add visit', (yard) => addVisit(yard, visit));
    app.setView({ visitId: visit.id });
  }

  private copy(): void {
    const { app, visit } = this;
    if (!visit) return;
    const doses = visit.doses.map((dose) => ({
      ...dose,
      id: app.newId('dose'),
      actual: null,
      taken: null,
      laid: null,
    }));
    // no date: the same product on the same day twice is never meant
    const copy: Visit = {
      ...visit,
      id: app.newId('visit'),
      name: this.freeName(`${visit.name}, copy`),
      date: null,
      doneOn: null,
      program: null,
      doses,
    };
    app.dispatch('Copy visit', (yard) => addVisit(yard, copy));
    app.setView({ visitId: copy.id });
  }

  private removeShown(): void {
    const { app, visit } = this;
    if (!visit) return;
    app.dispatch('Remove visit', (yard) => removeVisit(yard, visit.id));
    app.note('visit-removed', `“${visit.name}” is removed.`, undoStep(app));
  }
}
