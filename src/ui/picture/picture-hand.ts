import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { groundResolutionOf } from '../../survey/picture/affine';
import { isPictureSet, trustByEye } from '../../survey/picture/refitPicture';
import { M_PER_FT, M_PER_IN } from '../../units/factors';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { handMoves } from './picture-edits';
import { PicturePart, pictureStyles } from './picture-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';

const STEPS = ['fine', 'middle', 'coarse'] as const;
type Step = (typeof STEPS)[number];

const US_SHIFT = { fine: 2 * M_PER_IN, middle: M_PER_FT, coarse: 10 * M_PER_FT } as const;
const METRIC_SHIFT = { fine: 0.05, middle: 0.5, coarse: 5 } as const;
const TURN_DEG = { fine: 0.1, middle: 1, coarse: 10 } as const;
const SCALE_PCT = { fine: 0.1, middle: 1, coarse: 10 } as const;
const US_WORDS = {
  fine: 'Fine: 2 in, 0.1°, 0.1 %',
  middle: 'Middle: 1 ft, 1°, 1 %',
  coarse: 'Coarse: 10 ft, 10°, 10 %',
} as const;
const METRIC_WORDS = {
  fine: 'Fine: 5 cm, 0.1°, 0.1 %',
  middle: 'Middle: 0.5 m, 1°, 1 %',
  coarse: 'Coarse: 5 m, 10°, 10 %',
} as const;

/** A picture laid by eye is taken to be good to this many of its pixels, at least; common practice, no source. */
const EYE_PIXELS = 3;
const EYE_LEAST_M = 0.3;

/** Moves the picture by hand: drag, arrows, turn, scale; and how well it fits by eye. */
@customElement('picture-hand')
export class PictureHand extends PicturePart {
  static override styles = [
    shared,
    pictureStyles,
    css`
      .moves { display: grid; grid-template-columns: repeat(3, minmax(44px, 1fr)); gap: 0.35rem; }
      .moves button { padding: 0 0.25rem; }
      .turns { display: grid; grid-template-columns: 1fr 1fr; gap: 0.35rem; }
    `,
  ];

  @state() private step: Step = 'middle';

  protected override render() {
    const { picture } = this.work;
    if (!picture) return nothing;
    const isUs = this.app.units === 'us';
    const shiftM = (isUs ? US_SHIFT : METRIC_SHIFT)[this.step];
    const [deg, share] = [TURN_DEG[this.step], 1 + SCALE_PCT[this.step] / 100];
    const arrow = (words: string, sign: string, east: number, north: number) =>
      html`<button aria-label=${words} title=${words} @click=${() => this.shift(east * shiftM, north * shiftM)}>${sign}</button>`;
    return html`
      <p class="quiet">Lay the picture over what is on the map. Turning and scaling keep the middle of the map where it is.</p>
      <p><button class="primary" @click=${() => this.app.setView({ tool: { type: 'shift-picture' } })}>Drag the picture on the map</button></p>
      <div class="step">
        ${selectField('Step', this.step, STEPS, isUs ? US_WORDS : METRIC_WORDS, (step) => {
          this.step = step;
        })}
        <div class="moves" role="group" aria-label="Shift the picture">
          ${arrow('Shift west', '← W', -1, 0)}${arrow('Shift north', '↑ N', 0, 1)}${arrow('Shift east', 'E →', 1, 0)}
          <span></span>${arrow('Shift south', '↓ S', 0, -1)}<span></span>
        </div>
        <div class="turns" role="group" aria-label="Turn and scale the picture">
          <button @click=${() => this.turn(-deg)}>⟲ Turn left</button><button @click=${() => this.turn(deg)}>Turn right ⟳</button>
          <button @click=${() => this.scale(1 / share)}>− Smaller</button><button @click=${() => this.scale(share)}>+ Larger</button>
        </div>
        <div class="pair">
          <number-field label="Turn by" suffix="°" optional .value=${null} .min=${-360} .max=${360}
            @number-change=${(event: CustomEvent<NumberChange>) => {
              this.turnTyped = event.detail.value;
            }}></number-field>
          <button @click=${() => this.turn(this.turnTyped ?? 0)}>Turn by that</button>
          <number-field label="Scale to" suffix="%" optional .value=${null} .min=${1} .max=${10_000}
            @number-change=${(event: CustomEvent<NumberChange>) => {
              this.scaleTyped = event.detail.value;
            }}></number-field>
          <button @click=${() => this.scale((this.scaleTyped ?? 100) / 100)}>Scale to that</button>
        </div>
      </div>
      <quantity-field label="By eye it lies right to about" quantity="length" optional .system=${this.app.units} .min=${0.001} .max=${1000}
        .value=${isPictureSet(picture) && picture.sigmaM > 0 ? picture.sigmaM : null}
        hint="One standard deviation of a place. It sets the ± of what is measured on the picture."
        @quantity-change=${(event: CustomEvent<QuantityChange>) => this.trust(event.detail.valueSi)}></quantity-field>
    `;
  }

  private turnTyped: number | null = null;
  private scaleTyped: number | null = null;

  private get about() {
    return this.app.map?.center() ?? this.work.picture?.origin ?? ([0, 0] as const);
  }

  private shift(eastM: number, northM: number): void {
    this.work.edit('Shift picture', (each) => handMoves.shift(each, eastM, northM), 'picture-shift');
  }

  private turn(deg: number): void {
    const { about } = this;
    if (deg !== 0) this.work.edit('Turn picture', (each) => handMoves.turn(each, about, deg), 'picture-turn');
  }

  /** A scale by hand is a scale by eye. */
  private scale(factor: number): void {
    const { about } = this;
    if (factor === 1 || !(factor > 0)) return;
    this.work.edit(
      'Scale picture',
      (each) => {
        const scaled = handMoves.scale(each, about, factor);
        return trustByEye(scaled, Math.max(EYE_LEAST_M, EYE_PIXELS * groundResolutionOf(scaled.toGround)));
      },
      'picture-scale',
    );
  }

  private trust(sigmaM: number | null): void {
    if (sigmaM !== null) this.work.edit('Trust picture by eye', (each) => trustByEye(each, sigmaM));
  }
}
