import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { lengthOfLineM } from '../../measure/geodesic';
import { sigmaOfAccuracyM } from '../../survey/walk/sigmaOfAccuracy';
import { formatAreaPm, formatLength } from '../../units/format';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import { shared } from '../parts/shared';
import { dropButtons, limitsFold } from './walk-parts';
import type { WalkRecorder } from './walk-recorder';
import { countWords, FAULT_WORDS, MODE_WORDS, qualityWord } from './walk-words';

/** A walk under way or paused: made for one thumb and bright sun. */
@customElement('walk-live')
export class WalkLive extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .now { display: flex; align-items: baseline; gap: 0.6rem; flex-wrap: wrap; margin: 0; }
      .now b { font-size: 1.5rem; line-height: 1.15; }
      .big { display: grid; gap: 0.5rem; margin: 0.5rem 0; }
      .big button { min-height: 64px; font-size: 1.2rem; font-weight: 650; width: 100%; }
      .big .pair { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; }
      .big .pair button { min-height: 52px; font-size: 1.05rem; }
      .row { margin-top: 0.5rem; }
      dl { display: grid; grid-template-columns: auto 1fr; gap: 0.15rem 0.75rem; margin: 0 0 0.5rem; }
      dt { color: var(--ink-soft); }
      dd { margin: 0; font-weight: 650; }
      .poor { color: var(--danger); }
      .taken { font-weight: 650; }
    `,
  ];

  @property({ attribute: false }) recorder!: WalkRecorder;
  @state() private isSure = false;

  protected override render() {
    const { recorder } = this;
    const { draft, state, trouble } = recorder;
    if (!draft) return nothing;
    return html`
      ${trouble ? html`<p class="note ${trouble.severity}" role="alert">${trouble.message}</p>` : nothing}
      ${state === 'walking' ? this.renderNow() : html`<p class="now"><b>Paused</b> <span>${countWords(recorder.accepted.length, recorder.counts, recorder.usedCount)}</span></p>`}
      <div class="big">${state === 'walking' ? this.renderButtons() : this.renderPaused()}</div>
      ${this.renderFigures()}
      ${
        state === 'walking' && !recorder.isScreenKept
          ? html`<p class="note">The browser does not keep the screen on: set the device not to sleep, or touch the screen now and then.</p>`
          : nothing
      }
      ${limitsFold(recorder, this.app.units, (settings) => {
        recorder.change(settings);
        this.requestUpdate();
      })}
      <div class="row">${dropButtons(recorder, this.isSure, (isSure) => {
        this.isSure = isSure;
      })}</div>
    `;
  }

  private renderNow() {
    const { last, draft, accepted, counts } = this.recorder;
    if (!last || !draft) return html`<p class="now" role="status"><b>Waiting for a position…</b></p>`;
    const accuracyM = last.fix.accuracyM ?? 0;
    const word = qualityWord(accuracyM, draft.limits.maxAccuracyM);
    const size = formatLength(accuracyM, this.app.units);
    const isTooPoor = last.fault === 'inaccurate';
    return html`
      <p class="now ${isTooPoor ? 'poor' : ''}"><b>${word}</b><b>within ${size}</b></p>
      <p class="quiet">${countWords(accepted.length, counts, this.recorder.usedCount)}.${last.fault ? html` <span class="poor">The last one was left out: ${FAULT_WORDS[last.fault]}.</span>` : nothing}</p>
      ${this.renderTaken()}
    `;
  }

  /** What the last corner came to. */
  private renderTaken() {
    const { taken } = this.recorder;
    if (!taken || this.recorder.standNow()) return nothing;
    const { number, count, leftOut } = taken;
    if (count > 0 && leftOut > 0)
      return html`<p class="note warning" role="status">Corner ${number} was ended because you walked on: it is taken from the ${count} ${count === 1 ? 'position' : 'positions'} before that, and the last ${leftOut} left out. If you still stand there, take it back and stand anew.</p>`;
    return html`<p class="taken" role="status">${
      count > 0
        ? `Corner ${number} is taken, from ${count} ${count === 1 ? 'position' : 'positions'}. Walk on.`
        : `Corner ${number} is not taken: no usable position came. Stand longer.`
    }</p>`;
  }

  private renderButtons() {
    const { recorder } = this;
    const { draft } = recorder;
    const isCorners = draft?.mode === 'corners';
    const count = draft?.stands.length ?? 0;
    return html`
      ${isCorners ? this.renderCorner(count + 1) : this.renderEdge(count)}
      <div class="pair">
        <button @click=${() => recorder.pause()}>Pause</button>
        <button ?disabled=${!this.canFinish} @click=${() => recorder.end()}>Finish</button>
      </div>
      ${
        isCorners && count > 0 && !recorder.standNow()
          ? html`<button class="plain" @click=${() => recorder.dropLastCorner()}>Take corner ${count} back</button>`
          : nothing
      }
    `;
  }

  private renderCorner(number: number) {
    const { recorder } = this;
    const stand = recorder.standNow();
    return stand
      ? html`<button class="primary" @click=${() => recorder.endStand()}>Corner ${number}: stand still… ${recorder.countIn(stand)} taken.<br />Tap to walk on</button>`
      : html`<button class="primary" ?disabled=${!recorder.last} @click=${() => recorder.beginStand()}>Corner ${number} is here</button>`;
  }

  private renderEdge(count: number) {
    const { recorder } = this;
    return recorder.standNow()
      ? html`<button @click=${() => recorder.endStand()}>Leave the edge</button>`
      : html`<button class="primary" ?disabled=${!recorder.last} @click=${() => recorder.beginStand()}>${count > 0 ? 'I am on the edge again' : 'I am on the edge: begin'}</button>`;
  }

  private get canFinish(): boolean {
    const { recorder } = this;
    return recorder.draft?.mode === 'corners'
      ? recorder.draft.stands.length >= 3
      : recorder.line().length >= 3;
  }

  private renderPaused() {
    const { recorder } = this;
    return html`<button class="primary" @click=${() => recorder.resume()}>Go on walking</button>
      <button ?disabled=${!this.canFinish} @click=${() => recorder.end()}>Finish</button>`;
  }

  private renderFigures() {
    const { recorder, app } = this;
    const { draft, accepted } = recorder;
    if (!draft) return nothing;
    const result = recorder.result();
    const outline = result?.ok ? result.outline : null;
    const lengthM =
      draft.mode === 'round'
        ? lengthOfLineM(recorder.line().map(({ position }) => position))
        : (outline?.perimeterM ?? 0);
    const best = accepted.at(-1)?.accuracyM;
    return html`<dl>
      <dt>Area so far</dt><dd>${outline ? formatAreaPm(outline.areaM2, outline.areaSigmaM2, app.units) : 'none yet'}</dd>
      ${draft.mode === 'corners' ? html`<dt>Corners</dt><dd>${draft.stands.length}${outline ? html`, each to ± ${formatLength(2 * outline.vertexSigmaM, app.units)} (two standard deviations)` : nothing}</dd>` : nothing}
      ${draft.mode === 'round' || outline ? html`<dt>${draft.mode === 'round' ? 'Walked' : 'All round'}</dt><dd>${formatLength(lengthM, app.units)}</dd>` : nothing}
      ${best && !outline ? html`<dt>One position</dt><dd>± ${formatLength(2 * sigmaOfAccuracyM(best), app.units)} each way</dd>` : nothing}
      <dt>How</dt><dd>${MODE_WORDS[draft.mode].name}, begun ${timeOf(draft.startedMs)}</dd>
    </dl>`;
  }
}

function timeOf(ms: number): string {
  return new Date(ms).toLocaleTimeString([], { hour: 'numeric', minute: '2-digit' });
}
