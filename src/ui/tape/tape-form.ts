import { css, html, type LitElement, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import { NOWHERE } from '../../measure/measureYard';
import { boxOf } from '../../measure/planeBox';
import { layTapeShape, surveyOfTape } from '../../survey/tape/layTapeShape';
import { makeTapeShape } from '../../survey/tape/makeTapeShape';
import type { TapeShapeKind } from '../../survey/tape/tapeShapes';
import type { Dimensions, TapeError, TapeField, TapeShape, TapeWay } from '../../survey/tape/types';
import { formatAreaPm, formatLength } from '../../units/format';
import { freeName, KIND_WORDS } from '../../words/zoneWords';
import { newZone } from '../../yard/defaults';
import { addZone } from '../../yard/edits';
import type { Issue, Position } from '../../yard/types';
import { beginMoving } from '../measure/begin-moving';
import { AppPart, fieldValue } from '../parts/app-part';
import { addNear, type FarAsk, farQuestion } from '../parts/far-place';
import { fold } from '../parts/fold';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import { groundChoice } from '../parts/ground-choice';
import type { QuantityChange } from '../parts/quantity-field';
import { readCoordinates } from '../parts/read-coordinates';
import { shared } from '../parts/shared';
import { sketchStyles } from '../parts/sketch-drawing';
import { draftOf, errorOf, keepDraft, type TapeDraft } from './tape-draft';
import { baseWords, modelOf, offsetsPicture, SHAPES, shapePicture } from './tape-models';
import { makeOffsets } from './tape-offsets';
import { sketchOfOffsets, sketchOfShape } from './tape-sketch';

/** What the typed values come to. */
interface Made {
  readonly shape: TapeShape | null;
  readonly issues: readonly Issue[];
}

/** Ground by the tape: a shape from its dimensions, or offsets along a base line. */
@customElement('tape-form')
export class TapeForm extends AppPart {
  static override styles = [
    shared,
    fold,
    sketchStyles,
    css`
      :host { display: block; }
      form { display: grid; gap: 0.75rem; }
      .shapes { display: grid; grid-template-columns: repeat(auto-fill, minmax(4.05rem, 1fr)); gap: 0.35rem; }
      .shapes button { display: grid; justify-items: center; gap: 0.1rem; padding: 0.35rem 0.1rem; font-size: 0.8125rem; line-height: 1.1; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: start; }
      .whole { grid-column: 1 / -1; }
      .figure { margin: 0; }
      .outcome { min-height: 3.5rem; }
      p { margin: 0; }
      .fault { color: var(--danger); }
      .row button { flex: 1 1 9rem; }
      ul { margin: 0; padding-left: 1.1rem; }
      svg.sketch { max-height: 13rem; }
    `,
  ];

  @state() private draft!: TapeDraft;
  /** issues are told once the person asks for a zone, or when every dimension is typed. */
  @state() private hasAsked = false;
  /** ground far from the zones waits for an answer. */
  @state() private farAsk: FarAsk | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.draft = draftOf(this.app.session);
  }

  private get kindOfShape(): TapeShapeKind | null {
    return SHAPES.find((shape) => shape.id === this.draft.shapeId) ?? null;
  }

  private wayOf(shape: TapeShapeKind): TapeWay {
    const chosen = this.draft.wayIds[shape.id];
    return shape.ways.find((way) => way.id === chosen) ?? shape.ways[0];
  }

  private dimensionsOf(way: TapeWay): Dimensions {
    return this.draft.dimensions[way.id] ?? {};
  }

  protected override render() {
    const shape = this.kindOfShape;
    const { app, draft } = this;
    const table = shape ? null : makeOffsets(draft.offsets, errorOf(draft, app.units), app.units);
    const made = table ?? (shape ? this.make(shape) : { shape: null, issues: [] });
    return html`
      <form @submit=${(event: Event) => event.preventDefault()}>
        <div class="shapes" role="group" aria-label="Shape of the ground">
          ${SHAPES.map((each) => this.renderPick(each.id, each.words, shapePicture(each)))}
          ${this.renderPick('offsets', 'Offsets', offsetsPicture())}
        </div>
        ${
          shape
            ? this.renderDimensions(shape)
            : html`<tape-offsets .app=${app} .rev=${this.rev} .offsets=${draft.offsets} .made=${table}
                @offsets-change=${(event: CustomEvent<Partial<TapeDraft['offsets']>>) =>
                  this.change({ offsets: { ...draft.offsets, ...event.detail } })}></tape-offsets>`
        }
        ${this.renderOutcome(made)}
        ${this.renderPlacing(shape)}
        ${farQuestion(this.farAsk, app.units, () => {
          this.farAsk = null;
        })}
        <div class="row">
          <button type="button" class="primary" @click=${() => this.add(made, true)}>Put on the map</button>
          <button type="button" @click=${() => this.add(made, false)}>Keep without a place</button>
        </div>
        ${this.renderNotes(made)}
        ${this.renderSketch(made, shape)}
        <p class="quiet">On the map it can be moved and turned into place. Without a place it has its area, and can be put on the map later.</p>
        <div>${app.yard.settings.isLocal ? nothing : this.renderPlace()}${this.renderError()}</div>
      </form>
    `;
  }

  private renderPick(id: string, words: string, picture: unknown) {
    const isOn = this.draft.shapeId === id;
    return html`<button type="button" aria-pressed=${isOn ? 'true' : 'false'} @click=${() => {
      this.hasAsked = false;
      this.change({ shapeId: id });
    }}>${picture}<span>${words}</span></button>`;
  }

  private renderDimensions(shape: TapeShapeKind) {
    const way = this.wayOf(shape);
    return html`<div class="fields">
      ${
        shape.ways.length > 1
          ? html`<label class="whole">Taped by<select @change=${(event: Event) => {
              this.hasAsked = false;
              this.change({ wayIds: { ...this.draft.wayIds, [shape.id]: fieldValue(event) } });
            }}>${shape.ways.map((each) => html`<option value=${each.id} .selected=${each === way}>${each.words}</option>`)}</select></label>`
          : nothing
      }
      ${way.fields.map((field) => keyed(`${way.id} ${field.key}`, this.renderField(way, field)))}
    </div>`;
  }

  private renderField(way: TapeWay, field: TapeField) {
    const value = this.dimensionsOf(way)[field.key] ?? null;
    const label = `${field.key}: ${field.words}${field.isOptional ? ' (if known)' : ''}`;
    const set = (next: number | null) => {
      const { [field.key]: _, ...others } = this.dimensionsOf(way);
      const typed = next === null ? others : { ...others, [field.key]: next };
      this.change({ dimensions: { ...this.draft.dimensions, [way.id]: typed } });
    };
    return field.quantity === 'angle'
      ? html`<number-field label=${label} suffix="°" optional .min=${0} .max=${360} .value=${value}
          @number-change=${(event: CustomEvent<NumberChange>) => set(event.detail.value)}></number-field>`
      : html`<quantity-field label=${label} quantity="length" optional hint=${field.hint ?? ''} .system=${this.app.units}
          .min=${field.isOptional ? 0 : 0.01} .max=${10_000} .value=${value}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => set(event.detail.valueSi)}></quantity-field>`;
  }

  private make(shape: TapeShapeKind): Made {
    const way = this.wayOf(shape);
    const made = makeTapeShape(
      way,
      this.dimensionsOf(way),
      errorOf(this.draft, this.app.units),
      this.app.units,
    );
    return made.ok ? { shape: made.shape, issues: [] } : { shape: null, issues: made.issues };
  }

  private renderSketch(made: Made, shape: TapeShapeKind | null) {
    const { app, draft } = this;
    if (!shape) return made.shape ? sketchOfOffsets(made.shape, draft.headingDeg, app.units) : nothing;
    const way = this.wayOf(shape);
    if (!made.shape) return sketchOfShape(way.outline(modelOf(way)), null, 90, app.units);
    const headingDeg = baseWords(shape) === null ? 90 : draft.headingDeg;
    return sketchOfShape(made.shape, this.dimensionsOf(way), headingDeg, app.units);
  }

  /** Has its room from the start: what stands below must not move under a finger that leaves the last field. */
  private renderOutcome({ shape, issues }: Made) {
    return html`<div class="outcome">${shape ? this.renderArea(shape) : this.renderFaults(issues)}</div>`;
  }

  private renderArea({ areaM2, areaSigmaM2, perimeterM }: TapeShape) {
    const { units } = this.app;
    return html`<div role="status"><p class="figure">${formatAreaPm(areaM2, areaSigmaM2, units)}</p>
      <p class="quiet">outline ${formatLength(perimeterM, units)}</p></div>`;
  }

  private renderFaults(issues: readonly Issue[]) {
    const told = this.hasAsked ? issues : issues.filter((issue) => issue.code !== 'dimension-missing');
    if (told.length === 0) return html`<p class="quiet">Its area stands here once all of it is typed.</p>`;
    return html`<div role="alert">${told.slice(0, 5).map((issue) => html`<p class="fault">${issue.message}</p>`)}
      ${told.length > 5 ? html`<p class="fault">And ${told.length - 5} more.</p>` : nothing}</div>`;
  }

  private renderNotes({ shape }: Made) {
    if (!shape || shape.notes.length === 0) return nothing;
    return html`<ul class="quiet">${shape.notes.map((note) => html`<li>${note}</li>`)}</ul>`;
  }

  private renderPlacing(shape: TapeShapeKind | null) {
    const base = shape ? baseWords(shape) : 'the base line';
    return html`<div class="fields">
      ${groundChoice(this.app)}
      ${
        base === null
          ? nothing
          : html`<number-field label=${`Direction of ${base}`} suffix="° from north" .min=${-360} .max=${360}
              .value=${this.draft.headingDeg} @number-change=${(event: CustomEvent<NumberChange>) =>
                event.detail.value !== null &&
                this.change({ headingDeg: event.detail.value })}></number-field>`
      }
    </div>`;
  }

  private renderPlace() {
    return html`<details class="fold"><summary>Put it by coordinates</summary>
      <label>Its middle: latitude, longitude (empty: middle of the map)<input autocomplete="off" spellcheck="false" .value=${this.draft.middleText}
        @input=${(event: Event) => this.change({ middleText: fieldValue(event) })} /></label></details>`;
  }

  private renderError() {
    const error = errorOf(this.draft, this.app.units);
    const change = (part: Partial<TapeError>) => this.change({ error: { ...error, ...part } });
    return html`<details class="fold"><summary>How well it is taped</summary><div class="fields">
      <quantity-field label="Error of one reading, one sigma" quantity="length" .system=${this.app.units} unit=${this.app.units === 'us' ? 'in' : 'cm'}
        .min=${0} .max=${10} .value=${error.readingSigmaM}
        @quantity-change=${(event: CustomEvent<QuantityChange>) => event.detail.valueSi !== null && change({ readingSigmaM: event.detail.valueSi })}></quantity-field>
      <number-field label="Error of the tape itself, one sigma" suffix="%" .scale=${100} .min=${0} .max=${10} .value=${error.scaleSigma}
        @number-change=${(event: CustomEvent<NumberChange>) => event.detail.value !== null && change({ scaleSigma: event.detail.value })}></number-field>
      <number-field label="Error of an angle, one sigma" suffix="°" .min=${0} .max=${45} .value=${error.angleSigmaDeg}
        @number-change=${(event: CustomEvent<NumberChange>) => event.detail.value !== null && change({ angleSigmaDeg: event.detail.value })}></number-field>
      <p class="quiet whole">They give the ± of the area (two sigma). A tape that is stretched, worn or sagging makes every length wrong alike: that is the error of the tape itself.</p>
    </div></details>`;
  }

  private change(part: Partial<TapeDraft>): void {
    this.farAsk = null;
    this.draft = { ...this.draft, ...part };
    keepDraft(this.app.session, this.draft);
  }

  private add({ shape, issues }: Made, isPlaced: boolean): void {
    this.hasAsked = true;
    if (this.hasRefused()) return;
    if (!shape) {
      if (issues.length === 0) this.tellEmpty();
      return;
    }
    const { app, draft } = this;
    const { kind, mowing } = app.options;
    const at = isPlaced ? this.middle() : NOWHERE.origin;
    if (at === null) return;
    const kindOfShape = this.kindOfShape;
    const heading = kindOfShape && baseWords(kindOfShape) === null ? 90 : draft.headingDeg;
    const laid = layTapeShape(shape, at, heading);
    const error = errorOf(draft, app.units);
    const zone = newZone(app.newId('zone'), kind, laid.parts, {
      name: freeName(
        KIND_WORDS[kind],
        app.yard.zones.map((each) => each.name),
      ),
      mowing: kind === 'turf' ? mowing : null,
      curves: laid.curves,
      survey: surveyOfTape(shape, laid, error, error.scaleSigma > 0 ? 'Tape' : ''),
      isPlaced,
    });
    const isAimed = draft.middleText.trim() !== '';
    this.farAsk = addNear(
      app.yard,
      isPlaced && isAimed ? laid.parts.flat(2) : [],
      (yard) => addZone(yard, zone),
      (edit) => {
        app.dispatch(`Add ${KIND_WORDS[kind].toLowerCase()}`, edit);
        this.forget();
        app.setView({ way: null, selectedZoneIds: [zone.id] });
        if (isPlaced && isAimed) app.fitSoon([zone.id]);
        else if (isPlaced) beginMoving(app, zone.id, extentOf(shape));
      },
    );
  }

  /** A field shows what it could not take: the zone would not be what is written there. */
  private hasRefused(): boolean {
    const fields = this.renderRoot.querySelectorAll<LitElement>('quantity-field, number-field, tape-offsets');
    const roots = [...fields].flatMap((field) => [
      field,
      ...(field.shadowRoot?.querySelectorAll<LitElement>('quantity-field') ?? []),
    ]);
    const refused = roots.find((field) => field.shadowRoot?.querySelector('input[aria-invalid="true"]'));
    if (!refused) return false;
    refused.focus();
    const message = 'Put right first what is marked: it could not be read.';
    this.app.tell({ code: 'entry-refused', severity: 'error', message, place: {} });
    return true;
  }

  /** Where the zone goes: the typed place, else the middle of the map. Null, and told, when it cannot be read. */
  private middle(): Position | null {
    const { app, draft } = this;
    if (app.yard.settings.isLocal || draft.middleText.trim() === '')
      return app.map?.center() ?? app.session.derived.measured.plane.origin;
    const read = readCoordinates(draft.middleText);
    if (read.ok) return read.position;
    app.tell({ code: 'place-unreadable', severity: 'error', message: read.message, place: {} });
    return null;
  }

  /** Values of the zone just made; how it was taped and how well stay for the next. */
  private forget(): void {
    const { draft } = this;
    const shape = this.kindOfShape;
    const middleText = '';
    if (shape) this.change({ middleText, dimensions: { ...draft.dimensions, [this.wayOf(shape).id]: {} } });
    else this.change({ middleText, offsets: { ...draft.offsets, text: '' } });
  }

  private tellEmpty(): void {
    const message = 'Write the stations and their offsets first, one station a line.';
    this.app.tell({ code: 'offsets-missing', severity: 'error', message, place: {} });
  }
}

/** The larger extent of a shape, m. */
function extentOf(shape: TapeShape): number {
  const box = boxOf([[shape.ring]]);
  return Math.max(box.maxX - box.minX, box.maxY - box.minY);
}

declare global {
  interface HTMLElementTagNameMap {
    'tape-form': TapeForm;
  }
}
