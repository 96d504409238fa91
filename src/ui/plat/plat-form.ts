import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Trial } from '../../map/types';
import { addMatched } from '../../measure/shapes';
import { applyMistake } from '../../survey/plat/applyMistake';
import { BARE_UNITS, type BareUnit, type Foot } from '../../survey/plat/lengths';
import { formatArea, formatAreaPm } from '../../units/format';
import { freeName, KIND_WORDS } from '../../words/zoneWords';
import { newParcel, newZone } from '../../yard/defaults';
import { setParcel } from '../../yard/edits';
import type { Position, Survey } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { addNear, type FarAsk, farQuestion } from '../parts/far-place';
import { fold } from '../parts/fold';
import { groundChoice } from '../parts/ground-choice';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { bareUnitOf, keepPlatDraft, type PlatDraft, platDraftOf } from './plat-draft';
import { platErrorFields } from './plat-error-fields';
import { platList, platListStyles } from './plat-list';
import { type PlatReading, readPlat } from './plat-reading';
import { drawPlatSketch, platSketchStyles } from './plat-sketch';
import { classWords, gapWords, mistakeLines, platLength } from './plat-words';

const UNIT_WORDS: Readonly<Record<BareUnit, string>> = {
  ft: 'feet',
  m: 'metres',
  chain: 'chains of 66 ft',
  rod: 'rods of 16½ ft',
};
const FOOT_WORDS: Readonly<Record<Foot, string>> = {
  international: 'international',
  'us-survey': 'US survey (older plats)',
};

/** Ground from the calls of a plat or deed: bearings, lengths, curves; closure, adjustment, place. */
@customElement('plat-form')
export class PlatForm extends AppPart {
  static override styles = [
    shared,
    fold,
    platListStyles,
    platSketchStyles,
    css`
      :host { display: block; }
      form { display: grid; gap: 0.75rem; }
      p { margin: 0; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: start; }
      .whole { grid-column: 1 / -1; }
      textarea { min-height: 9rem; resize: vertical; line-height: 1.35; }
      fieldset { border: 0; margin: 0; padding: 0; min-width: 0; }
      legend { padding: 0; font-size: var(--text-small); color: var(--ink-soft); }
      .row button { flex: 1 1 9rem; }
      .outcome { display: grid; gap: 0.4rem; }
      .outcome .note { margin: 0; }
      .fault { color: var(--danger); }
      ul { margin: 0; padding-left: 1.1rem; }
      .forms { columns: 2 11rem; }
      code { font-family: inherit; font-weight: 600; }
    `,
  ];

  @state() private draft!: PlatDraft;
  @state() private hasAsked = false;
  /** ground far from the zones waits for an answer. */
  @state() private farAsk: FarAsk | null = null;

  /** where the outline begins while no place is given: the middle of the map when the form was opened. */
  private middle: Position = [0, 0];
  private kept: { readonly draft: PlatDraft; readonly system: string; readonly reading: PlatReading } | null =
    null;
  private shown: PlatReading | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.draft = platDraftOf(this.app.session);
    this.middle = this.app.map?.center() ?? this.app.session.derived.measured.plane.origin;
  }

  /** Worked out once for each change. */
  private get reading(): PlatReading {
    const { draft } = this;
    const system = this.app.units;
    if (this.kept?.draft !== draft || this.kept.system !== system)
      this.kept = { draft, system, reading: readPlat(draft, system, this.middle) };
    return this.kept.reading;
  }

  protected override updated(): void {
    const { reading } = this;
    if (this.shown === reading) return;
    this.shown = reading;
    this.app.setTrial(trialOf(reading));
  }

  protected override render() {
    const { reading, app } = this;
    return html`
      <form @submit=${(event: Event) => event.preventDefault()}>
        ${this.renderText()}
        ${
          reading.read.entries.length > 0
            ? html`${platList(reading.read.entries, this.sayLength)}${this.renderSketch()}${this.renderClosure()}`
            : nothing
        }
        ${this.renderPlace()}
        ${platErrorFields(this.draft, reading, app.units, this.sayLength, (part) => this.change(part))}
        <div class="fields">${groundChoice(this.app)}</div>
        ${this.hasAsked && reading.fault ? html`<p class="fault" role="alert">${reading.fault}</p>` : nothing}
        ${farQuestion(this.farAsk, app.units, () => {
          this.farAsk = null;
        })}
        <div class="row">
          <button type="button" class="primary" @click=${this.addZone}>Add as a zone</button>
          <button type="button" @click=${this.makeParcel}>Make it the property’s outline</button>
        </div>
        <p class="note">Reading a plat is no survey. Where the boundary lies on the ground is found by a licensed surveyor; do not set a fence or settle a border by this outline.</p>
      </form>
    `;
  }

  private get sayLength(): (m: number) => string {
    return platLength(this.draft, this.app.units);
  }

  private renderText() {
    const { draft } = this;
    const set = (event: Event) => this.change({ text: fieldValue(event) });
    return html`
      <label>Calls, one a line, or the words of the deed<textarea rows="7" spellcheck="false" autocomplete="off" .value=${draft.text}
        placeholder="N 45°30'15&quot; E 120.5 ft&#10;S 44-29-45 E 80.25&#10;curve right R=50 delta 90°" @input=${set}></textarea></label>
      <div class="fields">
        ${selectField('Numbers without a unit are', bareUnitOf(draft, this.app.units), BARE_UNITS, UNIT_WORDS, (bareUnit) => this.change({ bareUnit }))}
        ${selectField('The foot is', draft.foot, ['international', 'us-survey'], FOOT_WORDS, (foot) => this.change({ foot }))}
      </div>
      <details class="fold"><summary>How calls may be written</summary>
        <ul class="forms quiet">
          <li><code>N 45°30'15" E 120.5 ft</code></li><li><code>N45-30-15E 120.50'</code></li>
          <li><code>120.5, N 45 30 E</code></li><li><code>due north 100</code></li>
          <li><code>135.5° 40 ft</code> azimuth</li><li><code>40 ft, right</code> by 90°</li>
          <li><code>12 m, left 30</code></li><li><code>3 chains 25 links W</code></li>
          <li><code>curve left R=50 L=26.18</code></li><li><code>R 50 delta 30° right</code></li>
          <li><code>… chord N 30 E 25.88</code></li><li><code>tangent 20</code> straight on</li>
        </ul>
        <p class="quiet">Running text with “thence” is read over its line ends. A curve follows on from the call before unless a chord or radial bearing is given. Elevations, magnetic north and easements are not read.</p>
      </details>`;
  }

  private renderSketch() {
    const { written, read, hasGap, isSound, gap } = this.reading;
    const numbers = read.entries.flatMap(({ role }, i) => (role === 'boundary' ? [i + 1] : []));
    return drawPlatSketch(written, numbers, hasGap, isSound, gap === 'side');
  }

  private renderClosure() {
    const { reading, app } = this;
    const { read, written, closed, isSound, hasGap, gap, isBadGap: isBad } = reading;
    if (!isSound) return nothing;
    // a side left out needs no guess: the last side is offered below
    const isLeftOut = gap === 'side' && reading.mistakes[0]?.kind === 'missing';
    const stated = read.statedAreaM2;
    const area = html`<p class="figure">${formatAreaPm(closed.areaM2, reading.areaSigmaM2, app.units)}</p>`;
    return html`<div class="outcome" role="status">
        ${isBad ? nothing : area}
        <p class=${isBad ? 'note warning' : ''}>${gapWords(reading, this.sayLength)}${hasGap && !isLeftOut ? ` ${classWords(written.closure.ratio)}` : ''}</p>
        ${isLeftOut ? nothing : this.renderMistakes()}
        ${isBad && gap !== null ? area : nothing}
        ${stated === null ? nothing : html`<p>The text states ${formatArea(stated, app.units, 4)}${gap === null ? '' : `; the calls give ${formatAreaPm(closed.areaM2, reading.areaSigmaM2, app.units)}`}.</p>`}
      </div>
      ${hasGap ? this.renderGapChoice() : nothing}`;
  }

  private renderMistakes() {
    const lines = mistakeLines(this.reading, this.sayLength);
    if (lines.length === 0) return nothing;
    const { draft, app } = this;
    const options = { foot: draft.foot, bareUnit: bareUnitOf(draft, app.units) };
    return html`<div class="note warning"><p>What may have been misread. Look at the plat again before you take one:</p>
      <ul>${lines.map(({ mistake, words }) => {
        const mended = applyMistake(draft.text, mistake, options);
        return html`<li>${words} ${mended === null ? nothing : html`<button type="button" aria-label=${`Use it: ${words}`} @click=${() => this.change({ text: mended, gap: null })}>Use it</button>`}</li>`;
      })}</ul></div>`;
  }

  private renderGapChoice() {
    const { gap } = this.reading;
    const choice = (
      value: 'spread' | 'side',
      words: string,
    ) => html`<label class="check"><input type="radio" name="gap" value=${value}
      .checked=${gap === value} @change=${() => this.change({ gap: value })} />${words}</label>`;
    return html`<fieldset><legend>The gap</legend>
      ${choice('spread', 'Spread it over all calls (compass rule)')}
      ${choice('side', `Close it with one more side, ${this.sayLength(this.reading.written.closure.gapM)}`)}
    </fieldset>`;
  }

  private renderPlace() {
    const { draft, reading } = this;
    const { start } = reading;
    const fault = 'message' in start ? start.message : '';
    return html`<div class="fields">
      <label class="whole">Point of beginning: latitude, longitude (empty: middle of the map)<input autocomplete="off" .value=${draft.startText}
        aria-invalid=${fault ? 'true' : 'false'} aria-describedby=${fault ? 'start-fault' : nothing}
        @input=${(event: Event) => this.change({ startText: fieldValue(event), picked: null })} /></label>
      ${fault ? html`<p class="fault whole" id="start-fault">${fault}</p>` : nothing}
      <div class="row whole">
        <button type="button" @click=${this.pickStart}>Pick it on the map</button>
        <button type="button" @click=${this.takeMiddle}>Middle of the map</button>
        <button type="button" ?disabled=${!reading.laid} @click=${this.showOnMap}>Show the outline</button>
      </div>
      <number-field class="whole" label="The plat’s north lies clockwise of true north by" suffix="°" .min=${-180} .max=${180} .value=${draft.northDeg}
        @number-change=${(event: CustomEvent<NumberChange>) => event.detail.value !== null && this.change({ northDeg: event.detail.value })}></number-field>
      <p class="quiet whole">Plats follow true, grid or magnetic north, or a line called north; the plat says which. The area is the same for all.</p>
    </div>`;
  }

  private change(part: Partial<PlatDraft>): void {
    this.farAsk = null;
    this.draft = { ...this.draft, ...part };
    keepPlatDraft(this.app.session, this.draft);
  }

  private async pickStart(): Promise<void> {
    const { session } = this.app;
    const position = await this.app.pick('Point at the point of beginning.');
    if (!position || this.app.session !== session) return;
    keepPlatDraft(session, {
      ...platDraftOf(session),
      picked: position,
      startText: coordinateWords(position),
    });
    this.draft = platDraftOf(session);
  }

  private takeMiddle(): void {
    const position = this.app.map?.center();
    if (position) this.change({ picked: position, startText: coordinateWords(position) });
  }

  private showOnMap(): void {
    const ring = this.reading.laid?.parts[0]?.[0];
    if (ring) this.app.map?.showPlaces(ring);
  }

  private survey(): Survey {
    const { vertexSigmaM } = this.reading;
    const method = this.draft.source === 'survey' ? 'plat' : 'tape';
    return { method, vertexSigmaM, scaleSigma: 0, source: '' };
  }

  private addZone(): void {
    this.hasAsked = true;
    const { laid, fault } = this.reading;
    if (!laid || fault) return;
    const { app } = this;
    const { kind, mowing } = app.options;
    const names = app.yard.zones.map((each) => each.name);
    const zone = newZone(app.newId('zone'), kind, laid.parts, {
      name: freeName(KIND_WORDS[kind], names),
      mowing: kind === 'turf' ? mowing : null,
      curves: laid.curves,
      survey: this.survey(),
    });
    this.farAsk = addNear(
      app.yard,
      laid.corners,
      (yard, plane) => addMatched(yard, zone, plane),
      (edit) => {
        app.dispatch(`Add ${KIND_WORDS[kind].toLowerCase()}`, edit);
        app.setView({ way: null, selectedZoneIds: [zone.id] });
        app.fitSoon([zone.id]);
      },
    );
  }

  private makeParcel(): void {
    this.hasAsked = true;
    const { laid, fault } = this.reading;
    if (!laid || fault) return;
    const { app } = this;
    const parcel = newParcel(laid.parts, this.survey(), laid.curves);
    const words = app.yard.parcel ? 'Replace outline of the property' : 'Set outline of the property';
    this.farAsk = addNear(
      // the outline that gives way does not say where the yard lies
      setParcel(app.yard, null),
      laid.corners,
      (yard) => setParcel(yard, parcel),
      (edit) => {
        app.dispatch(words, edit);
        app.setView({ way: null });
        app.map?.showPlaces(laid.corners);
        app.note('parcel-from-plat', 'The plat is now the outline of the property. Undo takes it back.');
      },
    );
  }
}

/** Latitude, longitude with eight decimals: a millimetre. */
function coordinateWords([lon, lat]: Position): string {
  return `${lat.toFixed(8)}, ${lon.toFixed(8)}`;
}

/** The outline as the map shows it while it is read, its point of beginning named. */
function trialOf({ laid }: PlatReading): Trial | null {
  const ring = laid?.parts[0]?.[0];
  const start = laid?.corners[0];
  if (!ring || !start) return null;
  return {
    lines: [{ points: ring.slice(0, -1), isClosed: true, style: 'main' }],
    points: [{ at: start, label: 'Beginning', style: 'main' }],
    circles: [],
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'plat-form': PlatForm;
  }
}
