import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Tool } from '../map/types';
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
      .figures { display: flex; flex-wrap: wrap; gap: 0 1rem; margin: 0; }
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
      .what { margin: 0; font-weight: 650; }
      .crossing { color: var(--danger); font-weight: 650; }
    `,
  ];

  @state() private sideM: number | null = null;
  @state() private bearing = '';
  @state() private fault = '';

  protected override render() {
    const { tool } = this.app.view;
    if (tool.type === 'select') return nothing;
    const takesPath = tool.type === 'split' || (tool.type === 'draw' && tool.shape === 'polygon');
    return html`
      <section class="bar" aria-label="Tool at work">
        <div class="told"><p class="what">${describeTool(tool)}</p>${this.renderFigures()}</div>
        <div class="work">
          ${takesPath ? this.renderTyped() : nothing}
          <div class="row">
            ${tool.type === 'mark' ? nothing : this.renderSwitches(tool)}
            ${takesPath ? html`<button @click=${() => this.app.map?.backOnePoint()}>${icon('back')}Back a point</button>` : nothing}
            ${
              tool.type === 'reshape'
                ? html`<button class="primary" @click=${this.end}>Done</button>`
                : html`<button @click=${this.cancel}>Cancel</button>
                    <button class="primary" @click=${() => this.app.map?.finish()}>${tool.type === 'mark' ? 'Put at the middle' : 'Finish'}</button>`
            }
          </div>
        </div>
        ${this.fault ? html`<p class="crossing" role="alert">${this.fault}</p>` : nothing}
      </section>
    `;
  }

  private renderFigures() {
    const { live, units } = this.app;
    if (!live) return nothing;
    return html`
      <dl class="figures" aria-live="off">
        ${live.sideM === null ? nothing : html`<div><dt>Side</dt><dd>${formatLength(live.sideM, units)}</dd></div>`}
        ${live.bearingDeg === null ? nothing : html`<div><dt>Bearing</dt><dd>${formatNumber(live.bearingDeg, 4)}°</dd></div>`}
        ${live.areaM2 === null ? nothing : html`<div><dt>Area</dt><dd>${formatArea(live.areaM2, units)}</dd></div>`}
        ${live.perimeterM === null ? nothing : html`<div><dt>Perimeter</dt><dd>${formatLength(live.perimeterM, units)}</dd></div>`}
        ${live.crossing ? html`<div class="crossing">The outline crosses itself</div>` : nothing}
      </dl>
    `;
  }

  private renderTyped() {
    return html`
      <form class="typed" @submit=${this.addSide}>
        <quantity-field label="Next side" quantity="length" .system=${this.app.units} .value=${this.sideM} .min=${0} optional
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            this.sideM = event.detail.valueSi;
          }}
          @keydown=${this.enter}></quantity-field>
        <label>Bearing °, or none
          <input inputmode="decimal" .value=${this.bearing} aria-invalid=${this.fault ? 'true' : 'false'}
            @input=${(event: Event) => {
              this.bearing = fieldValue(event);
            }} />
        </label>
        <button>Add side</button>
      </form>
    `;
  }

  private renderSwitches(tool: Tool) {
    const { rightAngle, snapping, sharedCorners } = this.app.options;
    const box = (words: string, on: boolean, key: 'rightAngle' | 'snapping' | 'sharedCorners') =>
      html`<label class="check"><input type="checkbox" .checked=${on}
        @change=${(event: Event) => this.app.setOptions({ [key]: isTicked(event) })} />${words}</label>`;
    return html`
      ${tool.type === 'reshape' ? box('Move shared corners together', sharedCorners, 'sharedCorners') : box('Hold right angles', rightAngle, 'rightAngle')}
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

function describeTool(tool: Exclude<Tool, { type: 'select' }>): string {
  switch (tool.type) {
    case 'reshape':
      return 'Drag a corner; the small dots add one. Select a corner to delete it.';
    case 'split':
      return 'Draw a line right across the zone.';
    case 'mark':
      return `Put the ${MARK_WORDS[tool.kind].toLowerCase()} on the drawing.`;
    case 'draw': {
      const what = { zone: KIND_WORDS[tool.kind], hole: 'Hole', cut: `${KIND_WORDS[tool.kind]} cut out` }[
        tool.purpose
      ];
      const how = {
        polygon: 'put a point at each corner',
        rectangle: 'two corners of one side, then the depth',
        circle: 'the middle, then the rim',
        freehand: 'draw round it',
      }[tool.shape];
      return `${what}: ${how}.`;
    }
  }
}
