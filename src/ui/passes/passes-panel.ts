import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { doseName } from '../../words/productWords';
import { visitChoices } from '../../words/visitWords';
import type { Visit } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { fold } from '../parts/fold';
import { issueNotes } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import { type DoseInHand, doseInHand } from './dose-in-hand';
import { oldFigures } from './old-figures';
import './pass-choices';
import './pass-export';
import './pass-marks';
import './pass-pace';
import './pass-result';
import './pass-zones';
import './walk-layers';
import './walk-player';
import './zone-headings';

/** Passes: how one product of a visit is walked over the ground. */
@customElement('passes-panel')
export class PassesPanel extends AppPart {
  static override styles = [
    shared,
    fold,
    oldFigures,
    css`
      :host { display: block; }
      .pick { display: grid; gap: 0.5rem; margin-bottom: 0.75rem; }
      h3 { margin: 1.25rem 0 0.5rem; padding-top: 0.6rem; border-top: 2px solid var(--ink); }
      .wait { min-height: 2.5rem; }
      /* stands over the figures of before, which so do not move */
      .over { position: sticky; top: 0.25rem; z-index: 2; height: 0; margin: 0; overflow: visible; text-align: right; }
      .over span { display: inline-block; padding: 0.2rem 0.6rem; border: 1.5px solid var(--ink); border-radius: var(--radius); background: var(--sheet); color: var(--ink); font-weight: 650; }
    `,
  ];

  /** whether the headings are unfolded; null: as the dose has some or none. */
  @state() private isHeadingOpen: boolean | null = null;

  protected override render() {
    const { visits } = this.app.yard;
    const visit = visits.find((each) => each.id === this.app.view.visitId);
    return html`
      <h2>Passes</h2>
      ${visit ? this.renderVisit(visit) : this.renderEmpty()}
    `;
  }

  private renderEmpty() {
    return html`<p>Passes are the lines walked over the ground with a product. They are laid for a visit, and none is planned yet.</p>
      <div class="row"><button class="primary" @click=${() => this.app.setView({ step: 'visit' })}>Plan a visit</button></div>`;
  }

  private renderVisit(visit: Visit) {
    const { app } = this;
    const hand = doseInHand(app);
    return html`
      <div class="pick">
        <label>Visit<select @change=${(event: Event) => app.setView({ visitId: fieldValue(event), doseId: null })}>
          ${visitChoices(app.yard.visits, app.today()).map(({ id, words }) => html`<option value=${id} .selected=${id === visit.id}>${words}</option>`)}
        </select></label>
        ${
          hand
            ? html`<label>Product<select @change=${(event: Event) => app.setView({ doseId: fieldValue(event) })}>
                ${visit.doses.map((dose, i) => html`<option value=${dose.id} .selected=${dose.id === hand.dose.id}>${visit.doses.length > 1 ? `${i + 1}. ` : ''}${doseName(dose, app.yard.products)}</option>`)}
              </select></label>`
            : nothing
        }
      </div>
      ${hand ? this.renderDose(hand) : this.renderNoDose()}
    `;
  }

  private renderNoDose() {
    return html`<p>Nothing goes out at this visit yet. With a product chosen, its passes are laid here.</p>
      <div class="row"><button class="primary" @click=${() => this.app.setView({ step: 'visit' })}>Choose products</button></div>`;
  }

  private renderDose(hand: DoseInHand) {
    const { app, rev } = this;
    if (!hand.figures) {
      return html`<p class="note warning">This product cannot be planned as it stands, so there is nothing to walk.</p>
        <div class="row"><button class="primary" @click=${() => app.setView({ step: 'visit' })}>See why</button></div>`;
    }
    if (!hand.figures.zones.some((zone) => zone.isPlaced !== false && zone.areaM2 > 0)) {
      return html`<p class="note warning">None of its ground lies on the map, so no passes can be laid on it.</p>
        <div class="row"><button @click=${() => app.setView({ step: 'visit' })}>Choose its ground</button>
          <button @click=${() => app.setView({ step: 'measure' })}>Draw ground</button></div>`;
    }
    return html`
      ${hand.visit.doneOn === null ? nothing : html`<p class="quiet">This visit is done. The walk is laid over the ground and the label as they are today.</p>`}
      ${this.renderState()}
      ${hand.walk ? this.renderLaid(html`<pass-result .app=${app} .rev=${rev}></pass-result>`) : nothing}
      <h3>How it is walked</h3>
      <pass-choices .app=${app} .rev=${rev}></pass-choices>
      <details class="fold" ?open=${this.isHeadingOpen ?? Object.keys(hand.dose.passes.headings).length > 0} @toggle=${this.noteHeadings}><summary>Heading of the passes</summary>
        <zone-headings .app=${app} .rev=${rev}></zone-headings></details>
      ${
        hand.walk
          ? this.renderLaid(html`
            <h3>Zone by zone, in walking order</h3>
            <pass-zones .app=${app} .rev=${rev}></pass-zones>
            <h3>Where it runs out</h3>
            <pass-marks .app=${app} .rev=${rev}></pass-marks>
            <h3>Pace</h3>
            <pass-pace .app=${app} .rev=${rev}></pass-pace>
            <h3>On the drawing</h3>
            <walk-layers .app=${app} .rev=${rev}></walk-layers>
            <h3>For other programs</h3>
            <pass-export .app=${app} .rev=${rev}></pass-export>`)
          : nothing
      }
    `;
  }

  private noteHeadings(event: Event): void {
    this.isHeadingOpen = (event.target as HTMLDetailsElement).open;
  }

  /** What comes of a walk; grey while another is laid, so that nobody takes old figures for new. */
  private renderLaid(content: TemplateResult) {
    const isOld = this.app.coverage.state === 'working';
    return html`<div class=${isOld ? 'old' : ''} aria-busy=${isOld ? 'true' : 'false'}>${content}</div>`;
  }

  private renderState() {
    const { coverage } = this.app;
    if (coverage.state === 'failed') {
      const message = `The passes could not be laid: ${coverage.message}`;
      return html`${issueNotes([{ code: 'passes-not-laid', severity: 'error', message, place: {} }])}
        <div class="row"><button @click=${() => this.app.walks.retry()}>Try again</button></div>`;
    }
    const isWorking = coverage.state === 'working' || this.app.walks.desk === null;
    const hasOld = coverage.state === 'working' && coverage.before !== null;
    return html`<p class="quiet ${isWorking && coverage.state !== 'working' ? 'wait' : ''} ${hasOld ? 'over' : ''}" role="status">${isWorking ? html`<span>Laying the passes…</span>` : ''}</p>`;
  }
}
