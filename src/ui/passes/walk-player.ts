import { css, html, nothing, svg } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { momentAt, secondAtWalked, type WalkMoment } from '../../cover/marks/momentAt';
import { formatClock } from '../../units/formatPace';
import { AppPart, fieldValue } from '../parts/app-part';
import { shared } from '../parts/shared';
import { type DoseInHand, doseInHand } from './dose-in-hand';
import { momentWords, nextMarkWords, vesselLevelWords } from './moment-words';
import { oldFigures } from './old-figures';
import { playIcon } from './play-icons';
import { PLAY_CHOICES, type PlayChoice, playWords } from './play-speed';
import { drawVessel, vesselStyles } from './vessel-drawing';
import { clockOf, type WalkClock } from './walk-clock';

/** Longest step of the clock between two frames, s of the screen: a page that was in the background goes on where it was. */
const MOST_FRAME_S = 0.1;
/** How long a change of the panel's height takes to reach the map, ms. */
const SETTLE_MS = 80;

/**
 * Plays the walk of the dose in hand over the map: a bar to move along it, a clock, what is left in the vessel. Only
 * this bar and the map are drawn anew while it runs. Where the person asks for little motion it goes from mark
 * to mark by its buttons. Event `walk-play` when it begins to run.
 */
@customElement('walk-player')
export class WalkPlayer extends AppPart {
  static override styles = [
    shared,
    vesselStyles,
    oldFigures,
    css`
      :host([hidden]) { display: none; }
      :host { display: block; background: var(--sheet); border-top: 2px solid var(--ink); container-type: inline-size; }
      .bar { display: grid; grid-template: 'keys track clock' auto 'now now side' auto / auto minmax(0, 1fr) auto; gap: 0 0.6rem; align-items: center; padding: 0.25rem 0.6rem 0.35rem; }
      .keys { grid-area: keys; display: flex; }
      .keys button { display: grid; place-items: center; padding: 0; }
      .keys button + button { border-left: 0; }
      .track { grid-area: track; position: relative; }
      input[type='range'] { display: block; width: 100%; min-height: var(--touch); margin: 0; padding: 0; border: 0; background: none; accent-color: var(--accent); cursor: pointer; }
      .ticks { position: absolute; inset: 2px 8px auto; width: calc(100% - 16px); height: 9px; pointer-events: none; overflow: visible; }
      .ticks path { stroke: var(--ink-soft); stroke-width: 1.5; vector-effect: non-scaling-stroke; }
      .ticks path.out { stroke: var(--ink); stroke-width: 3; }
      .clock { grid-area: clock; white-space: nowrap; margin: 0; font-size: var(--text-small); min-width: 5.5rem; text-align: right; line-height: 1.15; }
      .clock b { display: block; font-size: 1rem; }
      .now { grid-area: now; display: flex; gap: 0.6rem; align-items: center; min-width: 0; margin: 0; line-height: 1.25; min-height: 48px; }
      .now p { margin: 0; min-width: 0; }
      .now b { font-weight: 650; }
      .now .next { margin-left: auto; padding-left: 1rem; text-align: right; }
      @container (max-width: 30rem) {
        /* room for three lines from the start: a bar that grows would push the ground about */
        .now { font-size: 0.875rem; line-height: 1.2; min-height: 3.25rem; }
        .side button { padding: 0 0.5rem; font-size: 0.875rem; }
      }
      .side { grid-area: side; display: flex; gap: 0.35rem; align-items: center; }
      .side select { width: auto; min-height: 2.75rem; font-size: var(--text-small); }
      .bar .wide-only { display: none; }
      @container (min-width: 46rem) {
        .bar .wide-only { display: flex; align-items: center; color: var(--ink-soft); }
        .side .wide-only { color: inherit; }
        .bar { grid-template: 'keys track clock side' auto 'keys now now now' auto / auto minmax(0, 1fr) auto auto; }
      }
    `,
  ];

  /** s since the start; null: the whole walk is shown. */
  @state() private atS: number | null = null;
  @state() private isPlaying = false;
  @state() private isCalm = false;

  private clock: WalkClock | null = null;
  private frame = 0;
  private lastFrameMs = 0;
  private readonly calm = matchMedia('(prefers-reduced-motion: reduce)');
  private readonly onCalm = (): void => {
    this.isCalm = this.calm.matches;
    if (this.isCalm) this.pause();
  };

  override connectedCallback(): void {
    super.connectedCallback();
    this.calm.addEventListener('change', this.onCalm);
    this.onCalm();
    this.app.walks.goTo = (walkedM) => {
      if (!this.clock) return;
      this.pause();
      this.show(secondAtWalked(this.clock.timeline, walkedM));
      // the panel may make room for the drawing first
      setTimeout(() => this.follow(), SETTLE_MS);
    };
  }

  override disconnectedCallback(): void {
    this.calm.removeEventListener('change', this.onCalm);
    this.app.walks.goTo = null;
    this.reset();
    super.disconnectedCallback();
  }

  protected override willUpdate(): void {
    const hand = doseInHand(this.app);
    const clock = hand && clockOf(hand);
    if (clock === this.clock) return;
    this.clock = clock;
    this.reset();
  }

  protected override render() {
    const hand = doseInHand(this.app);
    const { clock, atS } = this;
    if (!hand?.walk || !clock) return nothing;
    const moment = atS === null ? null : momentAt(clock.timeline, atS);
    const isOld = this.app.coverage.state === 'working';
    return html`<section class="bar ${moment ? '' : 'idle'} ${isOld ? 'old' : ''}" aria-label="The walk, played" aria-busy=${isOld ? 'true' : 'false'}>
      <div class="keys" role="group" aria-label="Play">
        <button aria-label="Back to the mark before" title="Back to the mark before" ?disabled=${(atS ?? 0) <= 0} @click=${() => this.step(-1)}>${playIcon('before')}</button>
        ${
          this.isCalm
            ? nothing
            : html`<button class="primary" aria-label=${this.isPlaying ? 'Pause' : 'Play the walk'} title=${this.isPlaying ? 'Pause' : 'Play the walk'}
              @click=${() => (this.isPlaying ? this.pause() : this.play())}>${playIcon(this.isPlaying ? 'pause' : 'play')}</button>`
        }
        <button aria-label="On to the next mark" title="On to the next mark" ?disabled=${atS !== null && atS >= clock.totalS} @click=${() => this.step(1)}>${playIcon('after')}</button>
      </div>
      <div class="track">
        ${this.renderTicks(clock)}
        <input type="range" aria-label="Moment of the walk" min="0" max=${clock.totalS} step="any"
          .value=${String(atS ?? 0)} aria-valuetext=${this.valueText(hand, clock, moment)} @input=${this.scrub} />
      </div>
      <p class="clock"><b>${atS ? formatClock(atS) : '0\u00a0s'}</b>of ${formatClock(clock.totalS)}</p>
      ${moment ? this.renderNow(hand, clock, moment) : html`<p class="now ${this.isCalm ? '' : 'wide-only'}">The whole walk is shown. ${this.isCalm ? 'This device asks for little motion: step from mark to mark, or move along it by the bar.' : 'Play it, or move along it by the bar.'}</p>`}
      <div class="side">
        ${
          this.isCalm
            ? nothing
            : html`<select class="wide-only" aria-label="How long the play takes" @change=${this.chooseSpeed}>
                ${PLAY_CHOICES.map((choice) => html`<option value=${choice} .selected=${choice === this.app.walks.play}>${playWords(choice)}</option>`)}</select>`
        }
        <button class=${moment ? '' : 'wide-only'} ?disabled=${!moment} @click=${this.reset}>Show all</button>
      </div>
    </section>`;
  }

  /** Where each vessel runs out, and where it stands at a quarter, over the bar. */
  private renderTicks({ timeline, totalS, markSeconds }: WalkClock) {
    const { marks } = timeline.dose;
    return html`<svg class="ticks" viewBox="0 0 1000 9" preserveAspectRatio="none" aria-hidden="true">
      ${marks.map((mark, i) => {
        const x = Math.round(((markSeconds[i] ?? 0) / totalS) * 1000);
        return svg`<path class=${mark.left === 0 ? 'out' : ''} d=${`M${x} ${mark.left === 0 ? 0 : 4}V9`} />`;
      })}
    </svg>`;
  }

  private renderNow(hand: DoseInHand, clock: WalkClock, moment: WalkMoment) {
    const vessel = moment.vessel === null ? null : (hand.walk?.dose.vessels[moment.vessel] ?? null);
    const level = vesselLevelWords(hand, moment, this.app.units);
    const next = nextMarkWords(hand, clock, this.atS ?? 0);
    return html`<div class="now" aria-live=${this.isPlaying ? 'off' : 'polite'}>
      ${vessel && moment.level !== null ? drawVessel(vessel, moment.level) : nothing}
      <p>${level === '' ? nothing : html`<b>${level}</b><br />`}
        ${momentWords(hand, moment)}</p>
      ${next === null ? nothing : html`<p class="next wide-only">Next: ${next}</p>`}
    </div>`;
  }

  private valueText(hand: DoseInHand, clock: WalkClock, moment: WalkMoment | null): string {
    const time = `${formatClock(this.atS ?? 0)} of ${formatClock(clock.totalS)}`;
    return moment ? `${time}, ${momentWords(hand, moment)}` : time;
  }

  private show(atS: number | null): void {
    this.atS = atS;
    const doseId = this.clock?.timeline.dose.doseId;
    if (doseId === undefined) return;
    const moment = atS === null || !this.clock ? null : momentAt(this.clock.timeline, atS);
    this.app.walks.desk?.setWalked(doseId, moment?.walkedM ?? null);
  }

  /** Moves the drawing when the walker is not in view. */
  private follow(): void {
    const moment = this.atS === null || !this.clock ? null : momentAt(this.clock.timeline, this.atS);
    if (moment) this.app.map?.reveal(this.app.session.derived.measured.plane.toLonLat(moment.at));
  }

  private play(): void {
    const { clock } = this;
    if (!clock || this.isCalm) return;
    if (this.atS === null || this.atS >= clock.totalS) this.show(0);
    this.isPlaying = true;
    this.lastFrameMs = performance.now();
    this.frame = requestAnimationFrame(this.tick);
    this.dispatchEvent(new CustomEvent('walk-play', { bubbles: true, composed: true }));
  }

  private readonly tick = (nowMs: number): void => {
    const { clock } = this;
    if (!clock || !this.isPlaying) return;
    const passedS = Math.min(MOST_FRAME_S, Math.max(0, nowMs - this.lastFrameMs) / 1000);
    this.lastFrameMs = nowMs;
    const { play } = this.app.walks;
    const faster = play === 'walk' ? 1 : clock.totalS / Number(play);
    const next = (this.atS ?? 0) + passedS * faster;
    this.show(Math.min(clock.totalS, next));
    this.follow();
    if (next >= clock.totalS) this.pause();
    else this.frame = requestAnimationFrame(this.tick);
  };

  private pause(): void {
    this.isPlaying = false;
    cancelAnimationFrame(this.frame);
  }

  /** From mark to mark. */
  private step(way: 1 | -1): void {
    const { clock } = this;
    if (!clock) return;
    this.pause();
    const now = this.atS ?? 0;
    const next =
      way > 0 ? clock.stops.find((s) => s > now + 0.05) : clock.stops.findLast((s) => s < now - 0.05);
    this.show(next ?? (way > 0 ? clock.totalS : 0));
    this.follow();
  }

  private scrub(event: Event): void {
    this.pause();
    const at = Number(fieldValue(event));
    // the bar's own end may fall short of the walk's by a rounding
    const endS = this.clock?.totalS ?? 0;
    this.show(endS - at < 1e-6 * endS ? endS : at);
    this.follow();
  }

  private chooseSpeed(event: Event): void {
    this.app.walks.setPlay(fieldValue(event) as PlayChoice);
  }

  /** The whole walk, without a walker. */
  private reset(): void {
    this.pause();
    if (this.atS !== null) this.show(null);
  }
}
