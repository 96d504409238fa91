import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { loadPlanner } from '../session/planner';
import { AppPart } from './parts/app-part';
import './draw-bar';
import { watchDrops } from './files/drop-target';
import { MapHost } from './map-host';
import './measure/measure-panel';
import './message-area';
import { shared } from './parts/shared';
import './sheet-drawer';
import type { DrawerHeight } from './sheet-drawer';
import './step-tabs';
import './title-block';
import type { Step } from './app';
import { listenForUndo } from './undo-keys';
import type { YardLibrary } from './yard-library';

const NARROW = 'screen and (max-width: 820px)';

/** Screens that are fetched when first opened; all of them plan, so the planner comes along. */
const LATE: Readonly<Partial<Record<Step, () => Promise<unknown>>>> = {
  need: () => import('./need/need-panel'),
  shelf: () => import('./shelf/shelf-panel'),
  season: () => import('./season/season-panel'),
  visit: () => import('./visit/visit-panel'),
  passes: () => import('./passes/passes-panel'),
  buy: () => import('./buy/buy-panel'),
  sheet: () => import('./sheet/sheet-panel'),
  yards: () => import('./yards/yards-panel'),
};

/** Screens that have more to show than a column holds: on a wide screen the panel takes room from the drawing. */
const BROAD: readonly Step[] = ['need', 'shelf', 'season', 'buy'];

/** The shell: the drawing, the steps, the panel beside it and the title block. */
@customElement('yard-app')
export class YardApp extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; height: 100dvh; overflow: hidden; }
      .sheet { display: grid; height: 100%; grid-template: auto minmax(0, 1fr) auto / minmax(0, 1fr) 26.25rem; padding: 8px; background: var(--paper); }
      @media (min-width: 1200px) { .sheet.broad { grid-template-columns: minmax(0, 1fr) 44rem; } }
      .drawing { grid-area: 1 / 1 / -1 / 2; display: flex; flex-direction: column; min-height: 0; border: 2px solid var(--ink); }
      .map { position: relative; flex: 1; min-height: 0; }
      live-bar[wide] { position: absolute; z-index: 6; inset: 0 0 auto; border-bottom: 2px solid var(--ink); border-top: 0; }
      live-bar[wide] + message-area { top: 9rem; }
      .drawing draw-bar { border-bottom: 1px solid var(--line-strong); }
      message-area { position: absolute; z-index: 7; top: 2rem; left: 2.75rem; right: 0.75rem; }
      .strip { border: solid var(--ink); border-width: 0 2px 0 0; }
      step-tabs { grid-area: 1 / 2; border-top: 2px solid var(--ink); border-bottom: 1px solid var(--line-strong); }
      .panel { grid-area: 2 / 2; position: relative; min-height: 0; overflow: auto; background: var(--sheet); }
      .sheet title-block { grid-area: 3 / 2; border-bottom: 2px solid var(--ink); }
      .inside { padding: 0.75rem; }
      .wait { padding: 2rem; }
      .narrow { display: flex; flex-direction: column; height: 100%; position: relative; }
      .narrow main { flex: 1; display: flex; flex-direction: column; min-height: 0; }
      .narrow sheet-drawer { flex: none; }
      .narrow sheet-drawer[height='half'] { height: 46%; }
      .narrow sheet-drawer[height='full'] { position: absolute; z-index: 8; inset: 0 0 7.1rem; }
      .narrow message-area { left: 0.5rem; right: 0.5rem; top: 0.5rem; }
      .narrow step-tabs { grid-area: auto; border-bottom: 0; border-top: 1px solid var(--line-strong); padding-bottom: env(safe-area-inset-bottom); }
      .narrow draw-bar { border-top: 1px solid var(--line-strong); }
    `,
  ];

  @property({ attribute: false }) library!: YardLibrary;

  @state() private isNarrow = matchMedia(NARROW).matches;
  @state() private height: DrawerHeight = 'half';
  private heightBefore: DrawerHeight = 'half';
  @state() private loaded: ReadonlySet<Step> = new Set<Step>(['measure']);
  @state() private failed: Step | null = null;

  private readonly media = matchMedia(NARROW);
  private stop: (() => void)[] = [];

  override connectedCallback(): void {
    super.connectedCallback();
    const host = new MapHost();
    host.app = this.app;
    host.slot = 'map';
    if (!this.querySelector('map-host')) this.append(host);
    const onMedia = () => {
      this.isNarrow = this.media.matches;
    };
    this.media.addEventListener('change', onMedia);
    const toolBefore = () => this.app.view.tool.type;
    let tool = toolBefore();
    this.stop = [
      () => this.media.removeEventListener('change', onMedia),
      listenForUndo(this.app),
      watchDrops(this.app),
      this.app.subscribe(() => {
        this.rev += 1;
        // the drawing needs the room while a tool is at work; afterwards the panel is as it was
        if (tool === 'select' && toolBefore() !== 'select') {
          void this.loadBar();
          this.heightBefore = this.height === 'full' ? 'half' : this.height;
          this.height = 'peek';
        }
        if (tool !== 'select' && toolBefore() === 'select' && this.height === 'peek') {
          this.height = this.heightBefore;
        }
        tool = toolBefore();
      }),
    ];
  }

  /** The bar of the tools is fetched with the first of them. */
  private async loadBar(): Promise<void> {
    try {
      await import('./live-bar');
    } catch {
      const message = 'The bar of the tools could not be loaded. Check the connection and try again.';
      this.app.tell({ code: 'screen-not-loaded', severity: 'error', message, place: {} });
    }
  }

  override disconnectedCallback(): void {
    for (const end of this.stop) end();
    super.disconnectedCallback();
  }

  protected override willUpdate(_changed: PropertyValues): void {
    const { step } = this.app.view;
    const load = LATE[step];
    if (!load || this.loaded.has(step) || this.failed === step) return;
    Promise.all([load(), loadPlanner()])
      .then(() => {
        this.loaded = new Set([...this.loaded, step]);
        this.app.notify();
      })
      .catch(() => {
        this.failed = step;
        const message = 'This screen could not be loaded. Check the connection and open it again.';
        this.app.tell({ code: 'screen-not-loaded', severity: 'error', message, place: {} });
      });
  }

  protected override render() {
    return this.isNarrow ? this.renderNarrow() : this.renderWide();
  }

  private renderWide() {
    const { app, rev } = this;
    const isOpen = app.isOpen;
    return html`
      <div class="sheet ${app.view.isBroad || BROAD.includes(app.view.step) ? 'broad' : ''}">
        <step-tabs class="strip" .app=${app} .rev=${rev} @step-chosen=${this.onStep}></step-tabs>
        <main class="drawing" aria-label="Drawing">
          ${isOpen ? html`<draw-bar .app=${app} .rev=${rev}></draw-bar>` : nothing}
          ${this.renderMap(isOpen ? html`<live-bar wide .app=${app} .rev=${rev}></live-bar>` : nothing)}
          ${this.renderPlayer()}
        </main>
        <aside class="panel strip" aria-label="Panel" tabindex="-1"><div class="inside">${this.renderPanel()}</div></aside>
        ${isOpen ? html`<title-block class="strip" ?brief=${app.view.step !== 'measure'} .app=${app} .rev=${rev}></title-block>` : nothing}
      </div>
    `;
  }

  private renderNarrow() {
    const { app, rev } = this;
    const isOpen = app.isOpen;
    const isDrawing = app.view.tool.type !== 'select';
    return html`
      <div class="narrow">
        <main aria-label="Drawing">${this.renderMap(nothing)}</main>
        ${
          !isOpen
            ? nothing
            : isDrawing
              ? html`<live-bar .app=${app} .rev=${rev}></live-bar>`
              : html`<section aria-label="Drawing tools"><draw-bar .app=${app} .rev=${rev}></draw-bar></section>${this.renderPlayer()}`
        }
        <sheet-drawer .height=${this.height} @height-change=${this.onHeight} @walk-shown=${this.onShown}>
          ${isOpen ? html`<title-block slot="head" mini .app=${app} .rev=${rev}></title-block>` : nothing}
          <section class="inside" aria-label="Panel">${this.renderPanel()}</section>
          ${isOpen ? html`<title-block bare .app=${app} .rev=${rev}></title-block>` : nothing}
        </sheet-drawer>
        <step-tabs .app=${app} .rev=${rev} @step-chosen=${this.onStep}></step-tabs>
      </div>
    `;
  }

  private renderMap(over: unknown) {
    return html`<div class="map"><slot name="map"></slot>${over}<message-area .app=${this.app} .rev=${this.rev}></message-area></div>`;
  }

  /** The walk of the Passes screen, played over the drawing. */
  private renderPlayer() {
    const { app, rev } = this;
    if (!app.isOpen || app.view.step !== 'passes' || !this.loaded.has('passes')) return nothing;
    const isCovered = this.isNarrow && this.height === 'full';
    return html`<walk-player ?hidden=${isCovered} .app=${app} .rev=${rev} @walk-play=${this.onPlay}></walk-player>`;
  }

  /** On a narrow screen the drawing takes the room of the panel while a walk is played. */
  private onPlay(): void {
    if (this.isNarrow) this.height = 'peek';
  }

  private onShown(): void {
    if (this.height === 'full') this.height = 'half';
  }

  private onHeight(event: CustomEvent<DrawerHeight>): void {
    this.height = event.detail;
    this.app.notify();
  }

  private onStep(): void {
    this.failed = null;
    if (this.height === 'peek') this.height = 'half';
  }

  private renderPanel() {
    const { app, rev, library } = this;
    const { step } = app.view;
    if (!app.isOpen && !app.damaged) return html`<p class="wait">Opening the yard…</p>`;
    if (app.damaged) {
      void import('./recovery-view');
      return html`<recovery-view .app=${app} .rev=${rev} .library=${library}></recovery-view>`;
    }
    if (!this.loaded.has(step))
      return html`<p class="wait">${this.failed === step ? 'Not loaded.' : 'Loading…'}</p>`;
    switch (step) {
      case 'measure':
        return html`<measure-panel .app=${app} .rev=${rev}></measure-panel>`;
      case 'need':
        return html`<need-panel .app=${app} .rev=${rev}></need-panel>`;
      case 'season':
        return html`<season-panel .app=${app} .rev=${rev}></season-panel>`;
      case 'buy':
        return html`<buy-panel .app=${app} .rev=${rev}></buy-panel>`;
      case 'shelf':
        return html`<shelf-panel .app=${app} .rev=${rev}></shelf-panel>`;
      case 'visit':
        return html`<visit-panel .app=${app} .rev=${rev}></visit-panel>`;
      case 'passes':
        return html`<passes-panel .app=${app} .rev=${rev}></passes-panel>`;
      case 'sheet':
        return html`<sheet-panel .app=${app} .rev=${rev}></sheet-panel>`;
      case 'yards':
        return html`<yards-panel .app=${app} .rev=${rev} .library=${library}></yards-panel>`;
    }
  }
}
