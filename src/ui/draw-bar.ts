import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { DrawShape, Tool } from '../map/types';
import { KIND_WORDS, KINDS_TO_DRAW, MOWING_WORDS } from '../words/zoneWords';
import { MOWING_CLASSES, type MowingClass, type ZoneKind } from '../yard/types';
import { AppPart, fieldValue } from './parts/app-part';
import { type IconName, icon } from './parts/icons';
import { shared } from './parts/shared';
import { stepHistory } from './step-history';

const SHAPES: readonly { readonly shape: DrawShape; readonly icon: IconName; readonly words: string }[] = [
  { shape: 'polygon', icon: 'corners', words: 'Corners' },
  { shape: 'rectangle', icon: 'rectangle', words: 'Rectangle' },
  { shape: 'circle', icon: 'circle', words: 'Circle' },
  { shape: 'freehand', icon: 'freehand', words: 'Freehand' },
];

/** Width of a band to begin with: four feet, 1.2 m. */
const FIRST_BAND_M = { us: 1.2192, metric: 1.2 } as const;

/** What kind of ground first, then by which shape; undo and redo at the end. */
@customElement('draw-bar')
export class DrawBar extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; background: var(--sheet); }
      .bar { display: flex; align-items: center; gap: 0.35rem; padding: 0.35rem 0.5rem; }
      .group { display: flex; }
      .group button + button { border-left: 0; }
      button { display: inline-flex; align-items: center; justify-content: center; gap: 0.35rem; white-space: nowrap; }
      select { width: auto; max-width: 10rem; }
      .push { flex: 1; }
      :host { position: relative; z-index: 9; }
      .more { position: relative; display: flex; }
      .menu { position: absolute; z-index: 1; top: calc(100% + 4px); left: 0; display: grid; background: var(--sheet); border: 2px solid var(--ink); }
      .menu button { justify-content: start; border: 0; border-bottom: 1px solid var(--line); padding: 0 1rem; }
      @media (max-width: 820px) {
        .bar { padding: 0.25rem; gap: 0.2rem; justify-content: space-between; }
        button { padding: 0.15rem 0; flex-direction: column; gap: 0; min-height: 3rem; font-size: 0.6875rem; line-height: 1.1; letter-spacing: -0.02em; }
        select { flex: 1; min-width: 0; max-width: none; min-height: 3rem; padding: 0; letter-spacing: -0.03em; }
        .push { display: none; }
        .more { flex: none; position: static; }
        .menu { top: auto; bottom: calc(100% + 4px); left: auto; right: 0.25rem; }
        .menu button { flex-direction: row; font-size: 1rem; letter-spacing: 0; padding: 0 1rem; }
      }
    `,
  ];

  @state() private isOpen = false;

  private readonly closeFromOutside = (event: Event): void => {
    const isOurs = event.composedPath().includes(this.renderRoot.querySelector('.more') as EventTarget);
    if (!isOurs) this.setOpen(false);
  };

  override disconnectedCallback(): void {
    this.setOpen(false);
    super.disconnectedCallback();
  }

  private setOpen(isOpen: boolean): void {
    this.isOpen = isOpen;
    const change = isOpen ? 'addEventListener' : 'removeEventListener';
    document[change]('pointerdown', this.closeFromOutside, true);
  }

  protected override render() {
    const { session, view } = this.app;
    const drawn = view.tool.type === 'draw' && view.tool.purpose === 'zone' ? view.tool.shape : null;
    return html`
      <div class="bar" role="toolbar" aria-label="Drawing and history">
        ${view.step === 'measure' ? this.renderKind() : nothing}
        ${
          view.step === 'measure'
            ? html`<div class="group" role="group" aria-label="Shape to draw">
                ${SHAPES.map(
                  (
                    each,
                  ) => html`<button aria-pressed=${drawn === each.shape ? 'true' : 'false'} title=${each.words}
                    @click=${() => this.draw(each.shape)}>${icon(each.icon)}<span>${each.words}</span></button>`,
                )}
              </div>`
            : nothing
        }
        ${view.step === 'measure' ? this.renderMore() : nothing}
        <div class="push"></div>
        <div class="group" role="group" aria-label="History">
          <button ?disabled=${session.undoLabel === null} title=${this.words('Undo', session.undoLabel)}
            aria-label=${this.words('Undo', session.undoLabel)} @click=${() => stepHistory(this.app, 'undo')}>${icon('undo')}<span>Undo</span></button>
          <button ?disabled=${session.redoLabel === null} title=${this.words('Redo', session.redoLabel)}
            aria-label=${this.words('Redo', session.redoLabel)} @click=${() => stepHistory(this.app, 'redo')}>${icon('redo')}<span>Redo</span></button>
        </div>
      </div>
    `;
  }

  /** Lines that make ground of their own, or only measure. */
  private renderMore() {
    const { kind } = this.app.options;
    const band: Tool = { type: 'band', kind, widthM: FIRST_BAND_M[this.app.units], joint: 'mitred' };
    const { type } = this.app.view.tool;
    const isOn = type === 'band' || type === 'gauge';
    return html`<div class="more" @keydown=${this.onMenuKey}>
      <button class="opener" title="More" aria-pressed=${isOn ? 'true' : 'false'} aria-expanded=${this.isOpen ? 'true' : 'false'} aria-controls="more-lines"
        @click=${() => this.setOpen(!this.isOpen)}>${icon('line')}<span>More</span></button>
      ${
        this.isOpen
          ? html`<div class="menu" id="more-lines">
              <button @click=${() => this.take(band)}>Band along a line</button>
              <button @click=${() => this.take({ type: 'gauge' })}>Measure lengths and angles</button>
            </div>`
          : nothing
      }
    </div>`;
  }

  private onMenuKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || !this.isOpen) return;
    event.preventDefault();
    event.stopPropagation();
    this.setOpen(false);
    this.renderRoot.querySelector<HTMLElement>('.opener')?.focus();
  }

  private take(tool: Tool): void {
    this.setOpen(false);
    this.app.setView({ tool });
  }

  private words(what: string, label: string | null): string {
    return label === null ? `${what}: nothing` : `${what}: ${label}`;
  }

  private renderKind() {
    const { kind, mowing } = this.app.options;
    const chosen = kind === 'turf' ? `turf/${mowing}` : kind;
    return html`<select aria-label="Kind of ground to draw" @change=${this.choose}>
      ${KINDS_TO_DRAW.flatMap((each) =>
        each === 'turf'
          ? MOWING_CLASSES.toReversed().map((m) =>
              this.option(`turf/${m}`, `${KIND_WORDS.turf}, ${MOWING_WORDS[m].toLowerCase()}`, chosen),
            )
          : [this.option(each, KIND_WORDS[each], chosen)],
      )}
    </select>`;
  }

  private option(value: string, words: string, chosen: string) {
    return html`<option value=${value} .selected=${value === chosen}>${words}</option>`;
  }

  private choose(event: Event): void {
    const [kind, mowing] = fieldValue(event).split('/') as [ZoneKind, MowingClass | undefined];
    this.app.setOptions(mowing ? { kind, mowing } : { kind });
    const { tool } = this.app.view;
    if (tool.type === 'draw' && tool.purpose === 'zone') this.app.setView({ tool: { ...tool, kind } });
  }

  private draw(shape: DrawShape): void {
    const { tool } = this.app.view;
    const isOn = tool.type === 'draw' && tool.purpose === 'zone' && tool.shape === shape;
    this.app.setView({
      tool: isOn
        ? { type: 'select' }
        : { type: 'draw', shape, purpose: 'zone', kind: this.app.options.kind, zoneId: null },
    });
  }
}
