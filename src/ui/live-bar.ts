import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { DrawLive, EdgeTask, Tool } from '../map/types';
import { formatArea, formatLength, formatNumber } from '../units/format';
import { AppPart, fieldValue, isTicked } from './app-part';
import { icon } from './icons';
import './quantity-field';
import { KIND_WORDS, MARK_WORDS } from '../words/zoneWords';
import type { QuantityChange, QuantityField } from './quantity-field';
import { shared } from './shared';

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
      :host([wide]) .work { display: flex; gap: 0.75rem; align-items: end; }
      :host([wide]) .work .row { flex: 1; flex-wrap: nowrap; justify-content: end; }
      :host([wide]) .work .row > button { flex: 0 1 auto; }
      :host([wide]) label.check { white-space: nowrap; margin-right: 0.25rem; }
      :host([wide]) .typed { flex: 0 1 22rem; }
      :host([wide]) .work .row > button { padding: 0 0.6rem; }
      :host([wide]) .typed quantity-field { min-width: 0; }
      .crossing { margin: 0; }
      .row { gap: 0.35rem; }
      .row > button { white-space: nowrap; flex: 1 1 auto; display: inline-flex; align-items: center; justify-content: center; gap: 0.3rem; }
      .typed { display: grid; grid-template-columns: minmax(8rem, 1.3fr) minmax(5rem, 1fr) auto; gap: 0.35rem; align-items: end; }
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
    const takesPoints = takesPointsOf(tool);
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
          ${takesPoints ? this.renderTyped(tool) : nothing}
          <div class="row">
            ${isOnePlace ? nothing : this.renderSwitches(tool)}
            ${takesPoints ? html`<button @click=${() => this.app.map?.backOnePoint()}>${icon('back')}Back a point</button>` : nothing}
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
        ${isClosed ? figure('Area', live?.areaM2, (value) => formatArea(value, units)) : nothing}
        ${figure(isClosed ? 'Perimeter' : 'Length', live?.perimeterM, length)}
      </dl>
    `;
  }

  private renderTyped(tool: Tool) {
    const isCircle = tool.type === 'draw' && tool.shape === 'circle';
    return html`
      <form class="typed" @submit=${this.addSide}>
        <quantity-field label=${isCircle ? 'Radius' : 'Next side'} quantity="length" .system=${this.app.units} .value=${this.sideM} .min=${0} optional
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            this.sideM = event.detail.valueSi;
          }}
          @keydown=${this.enter}></quantity-field>
        ${
          isCircle
            ? nothing
            : html`<label>Bearing °
          <input placeholder="any" inputmode="decimal" .value=${this.bearing} aria-invalid=${this.fault ? 'true' : 'false'}
            @input=${(event: Event) => {
              this.bearing = fieldValue(event);
            }} />
        </label>`
        }
        <button>${isCircle ? 'Set radius' : 'Add side'}</button>
      </form>
    `;
  }

  private renderSwitches(tool: Tool) {
    const { rightAngle, snapping, sharedCorners } = this.app.options;
    const box = (words: string, on: boolean, key: 'rightAngle' | 'snapping' | 'sharedCorners') =>
      html`<label class="check"><input type="checkbox" .checked=${on}
        @change=${(event: Event) => this.app.setOptions({ [key]: isTicked(event) })} />${words}</label>`;
    const isPath = tool.type === 'split' || (tool.type === 'draw' && tool.shape === 'polygon');
    if (tool.type === 'draw' && tool.shape === 'freehand') return nothing;
    return html`
      ${tool.type === 'reshape' ? box('Move shared corners together', sharedCorners, 'sharedCorners') : nothing}
      ${isPath ? box('Hold right angles', rightAngle, 'rightAngle') : nothing}
      ${box('Snap to neighbours', snapping, 'snapping')}
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

/** Whether a tool lives on points put one after another. */
function takesPointsOf(tool: Tool): boolean {
  if (tool.type === 'draw') return tool.shape !== 'freehand';
  return tool.type === 'split' || tool.type === 'band' || tool.type === 'gauge';
}

const EDGE_WORDS: Readonly<Record<EdgeTask, string>> = {
  arc: 'Pick the corner where the arc begins, the one where it ends, then a place it passes through.',
  smooth: 'Pick the first and the last corner of the stretch to smooth.',
  straighten: 'Pick a curved stretch; it becomes one straight side.',
  offset: 'Pick a side, or the first and last corner of a stretch.',
  align: 'Pick a side of the zone, then the edge it should lie along.',
};

function describeTool(tool: Exclude<Tool, { type: 'select' }>): string {
  switch (tool.type) {
    case 'reshape':
      return 'Drag a corner; the small dots add one. Select a corner to delete it.';
    case 'split':
      return 'Draw a line right across the zone, from outside to outside.';
    case 'edge':
      return EDGE_WORDS[tool.task];
    case 'band':
      return `${KIND_WORDS[tool.kind]} along a line: put the points of its middle line.`;
    case 'gauge':
      return 'Put the points to measure between. Nothing is added to the yard.';
    case 'shift-picture':
      return 'Drag the picture to where it belongs.';
    case 'pick':
      return tool.words;
    case 'mark':
      return `Put the ${MARK_WORDS[tool.kind].toLowerCase()} on the drawing.`;
    case 'draw': {
      const what = {
        zone: KIND_WORDS[tool.kind],
        hole: 'Hole',
        cut: `${KIND_WORDS[tool.kind]} cut out`,
        parcel: 'Outline of the property',
      }[tool.purpose];
      const how = {
        polygon: 'put the first corner, then the next, or type a side',
        rectangle: 'drag across it; or put the first corner, then two more, or type two sides',
        circle: 'drag from its middle; or put the middle, then the rim, or type a radius',
        freehand: 'press, go round it, let go',
      }[tool.shape];
      return `${what}: ${how}.`;
    }
  }
}

/** How far a drawing has come and how it goes on. */
function countPoints(tool: Tool, { points, areaM2 }: DrawLive): string {
  const count = points.length;
  if (tool.type !== 'draw') return `${count} ${count === 1 ? 'point' : 'points'} so far.`;
  if (tool.shape === 'circle') return 'Now the rim, or type the radius.';
  if (tool.shape === 'rectangle' && count === 1 && areaM2 !== null) return 'Let go at the opposite corner.';
  if (tool.shape === 'rectangle')
    return count === 1 ? 'Now the far end of one side, or type its length.' : 'Now the depth, or type it.';
  const done = `${count} ${count === 1 ? 'corner' : 'corners'} so far`;
  return count < 3 ? `${done}. Put the next, or type a side.` : `${done}. Finish, or put the next.`;
}
