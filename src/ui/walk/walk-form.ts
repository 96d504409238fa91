import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { WalkDraft } from '../../session/walkDraft';
import type { WalkMode } from '../../survey/walk/types';
import { DEFAULT_LIMITS } from '../../survey/walk/walkDefaults';
import type { AppController } from '../app-controller';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import '../parts/quantity-field';
import { shared } from '../parts/shared';
import './walk-keep';
import './walk-limits';
import type { WalkSettings } from './walk-limits';
import './walk-live';
import { WalkRecorder } from './walk-recorder';
import { trialOfWalk, viewOfWalk } from './walk-trial';
import { MODE_WORDS } from './walk-words';

/** The map is not moved after the walker more often than this. */
const FOLLOW_MS = 2000;
const WALK_ZOOM = 20;

/** One recorder for each controller: a walk outlives the form that shows it. */
const recorders = new WeakMap<AppController, WalkRecorder>();

/** Walk round the ground with the phone: how, then the walk itself, then what becomes of it. */
@customElement('walk-form')
export class WalkForm extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      fieldset { border: 0; margin: 0 0 0.5rem; padding: 0; display: grid; gap: 0.5rem; }
      legend { padding: 0; margin-bottom: 0.25rem; font-weight: 650; }
      .mode { display: grid; grid-template-columns: auto 1fr; gap: 0.6rem; align-items: center; min-height: 56px; padding: 0.4rem 0.6rem; border: 1px solid var(--line-strong); border-radius: var(--radius); color: var(--ink); font-size: 1rem; cursor: pointer; }
      .mode span { display: block; font-weight: 400; color: var(--ink-soft); font-size: var(--text-small); }
      .start { width: 100%; min-height: 64px; font-size: 1.25rem; font-weight: 650; margin-bottom: 0.5rem; }
    `,
  ];

  @state() private mode: WalkMode = 'corners';
  @state() private settings: WalkSettings = { limits: DEFAULT_LIMITS, toleranceM: null, standS: 15 };
  @state() private isOpening = true;
  private movedMs = 0;
  private hasFound = false;

  get recorder(): WalkRecorder {
    const kept = recorders.get(this.app);
    if (kept) return kept;
    const made = new WalkRecorder();
    recorders.set(this.app, made);
    return made;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated) void this.openWalk();
  }

  protected override firstUpdated(): void {
    void this.openWalk();
  }

  override disconnectedCallback(): void {
    // no place is told while nobody sees it
    this.recorder.pause();
    this.recorder.listener = null;
    this.app.setTrial(null);
    super.disconnectedCallback();
  }

  private async openWalk(): Promise<void> {
    this.recorder.listener = () => this.onChange();
    await this.recorder.open(this.app.yard.id);
    this.isOpening = false;
    this.onChange();
    this.showWhole();
  }

  protected override willUpdate(): void {
    const { draft } = this.recorder;
    if (draft && draft.yardId !== this.app.yard.id && !this.isOpening) {
      this.isOpening = true;
      void this.openWalk();
    }
  }

  private showWhole(): void {
    const view = viewOfWalk(this.recorder);
    if (view) this.app.map?.goTo(view.middle, view.zoom);
  }

  private onChange(): void {
    if (!this.isConnected) return;
    const { recorder } = this;
    const { last, state } = recorder;
    if (state === 'ended' && this.hasFound) this.showWhole();
    if (state !== 'walking') this.hasFound = false;
    else if (last && !last.fault && Date.now() - this.movedMs > FOLLOW_MS) {
      this.movedMs = Date.now();
      this.app.map?.goTo(last.fix.position, this.hasFound ? undefined : WALK_ZOOM);
      this.hasFound = true;
    }
    this.app.setTrial(trialOfWalk(recorder));
    this.requestUpdate();
  }

  protected override render() {
    const { app, rev, recorder } = this;
    if (this.isOpening) return html`<p>Looking for a walk not finished…</p>`;
    const tick = rev + recorder.ticks;
    switch (recorder.state) {
      case 'none':
        return this.renderStart();
      case 'ended':
        return html`<walk-keep .app=${app} .rev=${tick} .recorder=${recorder}></walk-keep>`;
      default:
        return html`<walk-live .app=${app} .rev=${tick} .recorder=${recorder}></walk-live>`;
    }
  }

  private renderStart() {
    const { recorder } = this;
    return html`
      ${recorder.trouble ? html`<p class="note ${recorder.trouble.severity}" role="alert">${recorder.trouble.message}</p>` : nothing}
      <fieldset><legend>How you walk</legend>${(Object.keys(MODE_WORDS) as WalkMode[]).map(
        (mode) =>
          html`<label class="mode"><input type="radio" name="mode" value=${mode} .checked=${mode === this.mode} @change=${() => {
            this.mode = mode;
          }} /><b>${MODE_WORDS[mode].name}<span>${MODE_WORDS[mode].when}</span></b></label>`,
      )}</fieldset>
      <button class="primary start" @click=${this.start}>${this.mode === 'round' ? 'Turn on location' : 'Start walking'}</button>
      ${this.mode === 'round' ? html`<p class="quiet">Positions are used from when you say that you are on the edge.</p>` : nothing}
      ${recorder.aside?.yardId === this.app.yard.id ? html`<p><button @click=${() => recorder.takeUp()}>Bring the last walk back</button></p>` : nothing}
      <p class="quiet">A phone under open sky is right to about 16 ft (4.9 m), by GPS.gov, and worse by walls and under trees. The ± shows what that does to the area: a big lawn comes out well, a small one is better taped. Boundaries are for a licensed surveyor.</p>
      <p class="quiet">Keep this page in front while you walk. The positions stay in this browser.</p>
      <details class="fold"><summary>What counts as a good position</summary>
        <walk-limits .system=${this.app.units} .settings=${this.settings} .mode=${this.mode} @walk-settings=${(
          event: CustomEvent<WalkSettings>,
        ) => {
          this.settings = event.detail;
        }}></walk-limits></details>
    `;
  }

  private start(): void {
    const draft: WalkDraft = {
      ...this.settings,
      yardId: this.app.yard.id,
      startedMs: Date.now(),
      mode: this.mode,
      fixes: [],
      stands: [],
      openFromMs: null,
    };
    this.recorder.begin(draft);
  }
}
