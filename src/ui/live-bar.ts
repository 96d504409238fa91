import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { BandJoint, DrawLive, Tool } from '../map/types';
import { formatArea, formatLength, formatNumber } from '../units/format';
import { AppPart, fieldValue, isTicked } from './parts/app-part';
import { icon } from './parts/icons';
import './parts/quantity-field';
import { KIND_WORDS, KINDS_TO_DRAW } from '../words/zoneWords';
import './measure/edge-form';
import './measure/gauge-list';
import type { QuantityChange, QuantityField } from './parts/quantity-field';
import { selectField } from './parts/select-field';
import { shared } from './parts/shared';
import { countPoints, describeTool } from './tool-words';

const JOINTS: readonly BandJoint[] = ['mitred', 'round'];
const JOINT_WORDS: Readonly<Record<BandJoint, string>> = { mitred: 'Pointed', round: 'Rounded' };

/** While a tool is at work: what to do, the live figures, typed sides, switches, back, finish, cancel. */
@customElement('live-bar')
export class LiveBar extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; background: var(--sheet); border-top: 2px solid var(--ink); }
      .bar { display: grid; gap: 0.35rem; padding: 0.4rem 0.5rem; }
      /* rooms for every figure from the start: a bar that grows would push the ground about */
      .figures { display: grid; grid-template-columns: 1fr 1fr; gap: 0 1rem; margin: 0; }
      :host([wide]) .figures { display: flex; flex-wrap: wrap; }
      .figures div { display: flex; gap: 0.35rem; align-items: baseline; }
      dt { color: var(--ink-soft); font-size: var(--text-small); }
      dd { margin: 0; font-weight: 650; white-space: nowrap; }
      .told, .work { display: grid; gap: 0.35rem; }
      :host([wide]) .told { display: flex; gap: 0 2rem; flex-wrap: wrap; }
      :host([wide]) .work { display: flex; flex-wrap: wrap; gap: 0.35rem 0.75rem; align-items: end; }
      :host([wide]) :is(.band, gauge-list) { flex: 0 1 36rem; }
      :host([wide]) :is(.band, gauge-list) + .typed { flex-basis: 24rem; }
      :host([wide]) edge-form { flex: 0 1 40rem; }
      :host([wide]) .work .row { flex: 1 0 auto; flex-wrap: nowrap; justify-content: end; }
      :host([wide]) .work .row > button { flex: 0 1 auto; }
      :host([wide]) label.check { white-space: nowrap; margin-right: 0.25rem; }
      :host([wide]) .typed { flex: 0 1 22rem; }
      :host([wide]) .work .row > button { padding: 0 0.6rem; }
      :host([wide]) .typed quantity-field { min-width: 0; }
      .crossing { margin: 0; }
      .row { gap: 0.35rem; }
      .row > button { white-space: nowrap; flex: 1 1 auto; display: inline-flex; align-items: center; justify-content: center; gap: 0.3rem; }
      .typed { display: grid; grid-template-columns: minmax(8rem, 1.3fr) minmax(5rem, 1fr) auto; gap: 0.35rem; align-items: end; }
      .band { display: grid; grid-template-columns: 1.3fr 1fr 1fr; gap: 0.35rem; align-items: end; }
      .band quantity-field { min-width: 0; }
      label.check { font-size: var(--text-small); gap: 0.3rem; margin-right: 0.75rem; }
      .what { margin: 0; font-weight: 650; min-height: 2.6em; line-height: 1.3; }
      :host([wide]) .what { min-height: 0; }
      .crossing { color: var(--danger); font-weight: 650; }
    `,
  ];

  @state() private sideM: number | null = null;
  @state() private bearing = '';
  @state() private fault = '';

  protected override render() {
    const { tool } = this.app.view;
    if (tool.type === 'select') return nothing;
    const isOnePlace = tool.type === 'mark' || tool.type === 'pick';
    const endsByDone =
      tool.type === 'reshape' ||
      tool.type === 'edge' ||
      tool.type === 'gauge' ||
      tool.type === 'shift-picture';
    return html`
      <section class="bar" aria-label="Tool at work">
        <div class="told">${this.renderWords(tool)}${this.renderFigures(tool)}</div>
        <div class="work">
          ${tool.type === 'band' ? this.renderBand(tool) : nothing}
          ${tool.type === 'edge' && (tool.task === 'offset' || tool.task === 'align') ? html`<edge-form .app=${this.app} .rev=${this.rev}></edge-form>` : nothing}
          ${tool.type === 'gauge' ? html`<gauge-list .app=${this.app} .rev=${this.rev}></gauge-list>` : nothing}
          ${takesSides(tool, this.app.live) ? this.renderTyped(tool) : nothing}
          <div class="row">
            ${isOnePlace ? nothing : this.renderSwitches(tool)}
            ${takesPoints(tool) ? html`<button @click=${() => this.app.map?.backOnePoint()}>${icon('back')}Back a point</button>` : nothing}
            ${
              endsByDone
                ? html`<button class="primary" @click=${this.end}>Done</button>`
                : html`<button @click=${this.cancel}>Cancel</button>
                    <button class="primary" @click=${() => this.app.map?.finish()}>${tool.type === 'mark' ? 'Put at the middle' : tool.type === 'pick' ? 'Take the middle' : 'Finish'}</button>`
            }
          </div>
        </div>
        ${this.fault ? html`<p class="crossing" role="alert">${this.fault}</p>` : nothing}
      </section>
    `;
  }

  private renderWords(tool: Exclude<Tool, { type: 'select' }>) {
    const { live } = this.app;
    if (live?.crossing)
      return html`<p class="what crossing">This side would cross one drawn. ${countPoints(tool, live)}</p>`;
    const count = live?.points.length ?? 0;
    const isFreehand = tool.type === 'draw' && tool.shape === 'freehand';
    if (tool.type === 'gauge' && count > 1) return nothing;
    return html`<p class="what">${live && count > 0 && !isFreehand ? countPoints(tool, live) : describeTool(tool)}</p>`;
  }

  private renderFigures(tool: Tool) {
    if (tool.type === 'mark' || tool.type === 'pick' || tool.type === 'reshape' || tool.type === 'edge')
      return nothing;
    const { live, units } = this.app;
    const isClosed = tool.type === 'draw';
    const figure = (words: string, value: number | null | undefined, format: (value: number) => string) =>
      html`<div><dt>${words}</dt><dd>${value === null || value === undefined ? '–' : format(value)}</dd></div>`;
    const length = (value: number) => formatLength(value, units);
    return html`
      <dl class="figures" aria-live="off">
        ${isClosed && tool.shape === 'freehand' ? nothing : figure(isClosed && tool.shape === 'circle' ? 'Radius' : 'Side', live?.sideM, length)}
        ${isClosed && tool.shape !== 'polygon' ? nothing : figure('Bearing', live?.bearingDeg, (value) => `${formatNumber(value, 4)}°`)}
        ${tool.type === 'gauge' ? figure('Angle', live?.angleDeg, (value) => `${value.toFixed(1)}°`) : nothing}
        ${isClosed ? figure('Area', live?.areaM2, (value) => formatArea(value, units)) : nothing}
        ${figure(isClosed ? 'Perimeter' : 'Length', live?.perimeterM, length)}
      </dl>
    `;
  }

  private renderTyped(tool: Tool) {
    const isCircle = tool.type === 'draw' && tool.shape === 'circle';
    const isArc = tool.type === 'edge';
    const [words, button] = isCircle
      ? ['Radius', 'Set radius']
      : isArc
        ? ['Height of the arc', 'Set height']
        : ['Next side', 'Add side'];
    return html`
      <form class="typed" @submit=${this.addSide}>
        <quantity-field label=${words} quantity="length" .system=${this.app.units} .value=${this.sideM} .min=${0} optional
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            this.sideM = event.detail.valueSi;
          }}
          @keydown=${this.enter}></quantity-field>
        ${
          isCircle || isArc
            ? nothing
            : html`<label>Bearing °
          <input placeholder="any" inputmode="decimal" .value=${this.bearing} aria-invalid=${this.fault ? 'true' : 'false'}
            @input=${(event: Event) => {
              this.bearing = fieldValue(event);
            }} />
        </label>`
        }
        <button>${button}</button>
      </form>
    `;
  }

  /** Width, joints and kind of a band; what is drawn of it stays. */
  private renderBand(tool: Extract<Tool, { type: 'band' }>) {
    const change = (part: Partial<typeof tool>) => this.app.setView({ tool: { ...tool, ...part } });
    return html`
      <div class="band">
        <quantity-field label="Width" quantity="length" .system=${this.app.units} .value=${tool.widthM} .min=${0.01}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            if (event.detail.valueSi) change({ widthM: event.detail.valueSi });
          }}></quantity-field>
        ${selectField('Kind', tool.kind, KINDS_TO_DRAW, KIND_WORDS, (kind) => change({ kind }))}
        ${selectField('Bends', tool.joint, JOINTS, JOINT_WORDS, (joint) => change({ joint }))}
      </div>
    `;
  }

  private renderSwitches(tool: Tool) {
    const { rightAngle, snapping } = this.app.options;
    const box = (words: string, on: boolean, key: 'rightAngle' | 'snapping') =>
      html`<label class="check"><input type="checkbox" .checked=${on}
        @change=${(event: Event) => this.app.setOptions({ [key]: isTicked(event) })} />${words}</label>`;
    const isPath =
      tool.type === 'split' ||
      tool.type === 'band' ||
      tool.type === 'gauge' ||
      (tool.type === 'draw' && tool.shape === 'polygon');
    if (
      (tool.type === 'draw' && tool.shape === 'freehand') ||
      tool.type === 'edge' ||
      tool.type === 'shift-picture'
    )
      return nothing;
    return html`
      ${tool.type === 'reshape' ? this.renderReshape(tool) : nothing}
      ${isPath ? box('Hold right angles', rightAngle, 'rightAngle') : nothing}
      ${box('Snap to neighbours', snapping, 'snapping')}
    `;
  }

  private renderReshape(tool: Extract<Tool, { type: 'reshape' }>) {
    const change = (part: Partial<typeof tool>) => this.app.setView({ tool: { ...tool, ...part } });
    return html`
      <label class="check"><input type="checkbox" .checked=${tool.isAlone !== true}
        @change=${(event: Event) => {
          this.app.setOptions({ sharedCorners: isTicked(event) });
          change({ isAlone: !isTicked(event) });
        }} />Move shared borders together</label>
      <label class="check"><input type="checkbox" .checked=${tool.sides === true}
        @change=${(event: Event) => change({ sides: isTicked(event) })} />Move whole sides</label>
    `;
  }

  /** Enter in the length field: its value is committed by the field's own change first. */
  private enter(event: KeyboardEvent): void {
    if (event.key !== 'Enter') return;
    setTimeout(() => this.addSide());
  }

  private addSide(event?: Event): void {
    event?.preventDefault();
    const text = this.bearing.trim().replace(/°$/, '');
    const bearing = text === '' ? null : Number(text);
    this.fault = '';
    if (this.sideM === null || this.sideM <= 0) this.fault = 'Type the length of the side first.';
    else if (bearing !== null && !Number.isFinite(bearing))
      this.fault = 'A bearing is degrees from north, clockwise, such as 90 for east.';
    if (this.fault || this.sideM === null) return;
    this.app.map?.addSide(this.sideM, bearing);
    this.sideM = null;
    this.bearing = '';
    this.renderRoot.querySelector<QuantityField>('quantity-field')?.focus();
  }

  private cancel(): void {
    this.app.map?.cancel();
    this.end();
  }

  private end(): void {
    this.app.setView({ tool: { type: 'select' } });
  }
}

/** Whether a tool lives on points put one after another, with sides that can be typed. */
function takesSides(tool: Tool, live: DrawLive | null): boolean {
  if (tool.type === 'draw') return tool.shape !== 'freehand';
  if (tool.type === 'edge') return tool.task === 'arc' && live?.edgePick != null;
  return tool.type === 'split' || tool.type === 'band' || tool.type === 'gauge';
}

/** Whether the last point can be taken back. */
function takesPoints(tool: Tool): boolean {
  return tool.type === 'edge' || takesSides(tool, null);
}
