import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { WalkOutline } from '../../survey/walk/types';
import { formatAreaPm, formatLength } from '../../units/format';
import { KIND_WORDS } from '../../words/zoneWords';
import { newParcel } from '../../yard/defaults';
import { addZone, setParcel } from '../../yard/edits';
import type { Survey, ZoneKind } from '../../yard/types';
import { zoneFromRing } from '../map-events';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import { groundChoice } from '../parts/ground-choice';
import { shared } from '../parts/shared';
import { dropButtons, limitsFold } from './walk-parts';
import type { WalkRecorder } from './walk-recorder';
import { countWords, lineWords, sourceWords } from './walk-words';

type Purpose = ZoneKind | 'parcel';
const PURPOSE_WORDS: Readonly<Record<Purpose, string>> = { ...KIND_WORDS, parcel: 'Outline of the property' };

/** A walk that is over: what it gives, and what becomes of it. */
@customElement('walk-keep')
export class WalkKeep extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .row { margin-top: 0.5rem; }
      .keep { width: 100%; min-height: 64px; font-size: 1.25rem; font-weight: 650; margin: 0.5rem 0; }
    `,
  ];

  @property({ attribute: false }) recorder!: WalkRecorder;
  @state() private isParcel = false;
  @state() private isSure = false;

  protected override render() {
    const { recorder } = this;
    const { draft } = recorder;
    const result = recorder.result();
    if (!draft || !result) return nothing;
    return html`
      ${result.ok ? this.renderOutline(result.outline) : html`<p class="note error" role="alert">${result.issue.message}</p>`}
      ${result.ok ? result.notes.map((note) => html`<p class="note ${note.severity}">${note.message}</p>`) : nothing}
      <p class="quiet">${countWords(recorder.accepted.length, recorder.counts, recorder.usedCount)}.</p>
      ${limitsFold(recorder, this.app.units, (settings) => recorder.change(settings))}
      <div class="row">
        <button @click=${() => recorder.resume()}>Go on walking</button>
        ${dropButtons(recorder, this.isSure, (isSure) => {
          this.isSure = isSure;
        })}
      </div>
    `;
  }

  private renderOutline(outline: WalkOutline) {
    const { units, options } = this.app;
    const purpose = this.isParcel ? 'parcel' : options.kind;
    return html`
      <p class="figure">${formatAreaPm(outline.areaM2, outline.areaSigmaM2, units)}</p>
      <p class="quiet">${formatLength(outline.perimeterM, units)} round. The ± is two standard deviations: about 95 of 100 such walks come that near.</p>
      ${lineWords(outline, units).map((words) => html`<p class="quiet">${words}</p>`)}
      ${groundChoice(this.app, 'Keep it as', {
        words: PURPOSE_WORDS.parcel,
        isChosen: this.isParcel,
        set: (isParcel) => {
          this.isParcel = isParcel;
        },
      })}
      <button class="primary keep" @click=${() => this.keep(outline, purpose)}>Keep as ${PURPOSE_WORDS[purpose].toLowerCase()}</button>
      ${purpose === 'parcel' ? html`<p class="quiet">Only for checking that every piece of ground is in a zone. Where a boundary runs, a licensed surveyor says.</p>` : nothing}
    `;
  }

  private keep(outline: WalkOutline, purpose: Purpose): void {
    const { app, recorder } = this;
    const mode = recorder.draft?.mode ?? 'round';
    const survey: Survey = {
      method: 'walked',
      vertexSigmaM: outline.vertexSigmaM,
      scaleSigma: 0,
      source: sourceWords(outline, mode, app.today(), recorder.usedCount),
    };
    if (purpose === 'parcel') {
      const parcel = newParcel([[outline.ring]], survey);
      app.dispatch('Walk outline of the property', (yard) => setParcel(yard, parcel));
      void recorder.drop();
      app.setView({ way: null });
      return;
    }
    const zone = { ...zoneFromRing(app, purpose, outline.ring, 'walked'), survey };
    app.dispatch(`Walk ${KIND_WORDS[zone.kind].toLowerCase()}`, (yard) => addZone(yard, zone));
    void recorder.drop();
    app.setView({ way: null, selectedZoneIds: [zone.id] });
    app.fitSoon([zone.id]);
  }
}
