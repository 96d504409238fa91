import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { distanceM } from '../../measure/geodesic';
import {
  degreesFromSlope,
  slopeFromDegrees,
  slopeFromHeights,
  slopeFromRise,
} from '../../measure/slopeEntry';
import { formatLength } from '../../units/format';
import { COMPASS_POINTS, degreesOfPoint, pointOf } from '../../words/compassWords';
import { STEEP_SLOPE, slopeWords, surfaceWords } from '../../words/slopeWords';
import { changeSettings, replaceZone } from '../../yard/edits';
import type { Zone } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';

const WAYS = ['percent', 'degrees', 'rise', 'heights'] as const;
type Way = (typeof WAYS)[number];
const WAY_WORDS: Readonly<Record<Way, string>> = {
  percent: 'Percent',
  degrees: 'Degrees',
  rise: 'Rise and run',
  heights: 'Two heights and a distance',
};
/** Choice of a direction that is no compass point. */
const TYPED = 'typed';
type Size = 'rise' | 'run' | 'low' | 'high' | 'distance';
const MOST_PERCENT = 300;

/** The slope of a zone: typed in any of the usual ways, and what it makes of the area. */
@customElement('zone-slope')
export class ZoneSlope extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; margin: 0.5rem 0; align-items: end; }
      .fields > label:first-child, .whole { grid-column: 1 / -1; margin: 0; }
      .fault { color: var(--danger); }
    `,
  ];

  @property({ attribute: false }) zone!: Zone;
  @state() private way: Way = 'percent';
  @state() private sizes: Readonly<Partial<Record<Size, number | null>>> = {};
  @state() private isAlong = false;
  @state() private fault = '';

  protected override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('zone');
    if (!before || before.id === this.zone.id) return;
    this.sizes = {};
    this.fault = '';
  }

  protected override render() {
    const { zone, app } = this;
    const { slope } = zone;
    return html`
      <div class="fields">
        ${selectField('Slope by', this.way, WAYS, WAY_WORDS, (way) => {
          this.way = way;
          this.fault = '';
        })}
        ${this.renderWay()}
        ${this.fault ? html`<p class="fault whole" role="alert">${this.fault}</p>` : nothing}
      </div>
      ${slope === null ? html`<p>No slope given: the ground counts as level.</p>` : this.renderSlope(slope)}
      <label class="check"><input type="checkbox" .checked=${app.yard.settings.showSurface}
        @change=${(event: Event) => this.showSurface(isTicked(event))} />Show the ground along the slope beside every area</label>
      <p class="quiet">Doses go by ${
        app.yard.settings.doseBySurface ? 'the ground along the slope' : 'the flat area, as on a map'
      }; that is changed in the yard’s settings.</p>
    `;
  }

  private renderSlope(slope: number) {
    const measured = this.app.session.derived.measured.zones.get(this.zone.id);
    return html`
      <p>Slope ${slopeWords(slope)}.
        ${measured ? `${surfaceWords(measured.netM2, measured.netSigmaM2, slope, this.app.units)} than the flat area.` : nothing}</p>
      ${
        slope > STEEP_SLOPE
          ? html`<p class="note warning">Steeper than 3 to 1. Mowers and spreaders tip over on such ground, and what is put on runs off it.
              The label and the local code may forbid it.</p>`
          : nothing
      }
      ${this.renderFall()}
      <div class="row"><button @click=${() => this.set(null)}>Remove the slope</button></div>
    `;
  }

  /** Which way the ground falls: a compass point, or degrees. */
  private renderFall() {
    const { downhillDeg } = this.zone;
    const point = pointOf(downhillDeg);
    return html`<div class="fields">
      <label>Falls toward<select @change=${(event: Event) => this.setFall(degreesOfPoint(fieldValue(event)))}>
        <option value="" ?selected=${downhillDeg === null}>not told</option>
        ${point === null && downhillDeg !== null ? html`<option value=${TYPED} selected>as typed in degrees</option>` : nothing}
        ${COMPASS_POINTS.map(({ id, words }) => html`<option value=${id} ?selected=${id === point}>${words}</option>`)}
      </select></label>
      <number-field class="whole" label="Degrees clockwise from north (0 to 359)" suffix="°" optional .min=${0} .max=${359.99} .value=${downhillDeg}
        @number-change=${({ detail }: CustomEvent<NumberChange>) => this.setFall(detail.value)}></number-field>
      <p class="quiet whole">The visit then marks edges that this ground falls toward, and a drain or water down the fall.</p>
    </div>`;
  }

  private setFall(downhillDeg: number | null | undefined): void {
    if (downhillDeg === undefined) return;
    this.app.dispatch(
      'Set the fall of the ground',
      (yard) => {
        const zone = yard.zones.find((each) => each.id === this.zone.id);
        return zone ? replaceZone(yard, { ...zone, downhillDeg }) : yard;
      },
      `fall ${this.zone.id}`,
    );
  }

  private renderWay() {
    const { slope } = this.zone;
    switch (this.way) {
      case 'percent':
        return html`<number-field label="Slope" suffix="%" optional .scale=${100} .min=${0} .max=${MOST_PERCENT} .value=${slope}
          @number-change=${({ detail }: CustomEvent<NumberChange>) => this.set(detail.value)}></number-field>`;
      case 'degrees':
        return html`<number-field label="Slope" suffix="°" optional .min=${0} .max=${70} .value=${slope === null ? null : degreesFromSlope(slope)}
          @number-change=${({ detail }: CustomEvent<NumberChange>) =>
            this.set(detail.value === null ? null : slopeFromDegrees(detail.value))}></number-field>`;
      case 'rise':
        return html`<span></span>${this.size('rise', 'Rise')}${this.size('run', 'Run, level')}
          <button class="primary whole" @click=${this.takeRise}>Set the slope</button>`;
      case 'heights':
        return html`<span></span>${this.size('low', 'Height of one end')}${this.size('high', 'Height of the other')}
          ${this.size('distance', 'Distance between')}
          <button @click=${this.pickDistance}>Measure on the map</button>
          <label class="check whole"><input type="checkbox" .checked=${this.isAlong}
            @change=${(event: Event) => {
              this.isAlong = isTicked(event);
            }} />The distance was taped along the slope</label>
          <button class="primary whole" @click=${this.takeHeights}>Set the slope</button>`;
    }
  }

  private size(key: Size, label: string) {
    return html`<quantity-field label=${label} quantity="length" optional .system=${this.app.units} .value=${this.sizes[key] ?? null}
      @quantity-change=${({ detail }: CustomEvent<QuantityChange>) => {
        this.sizes = { ...this.sizes, [key]: detail.valueSi };
      }}></quantity-field>`;
  }

  private takeRise(): void {
    const { rise, run } = this.sizes;
    const slope = rise == null || run == null ? null : slopeFromRise(rise, run);
    this.fault =
      rise == null || run == null
        ? 'Type the rise and the run first.'
        : slope === null
          ? 'The run must be more than nothing, and the rise not less.'
          : '';
    if (slope !== null) this.set(slope);
  }

  private takeHeights(): void {
    const { low, high, distance } = this.sizes;
    if (low == null || high == null || distance == null) {
      this.fault = 'Type both heights and the distance first.';
      return;
    }
    const slope = slopeFromHeights(low, high, distance, this.isAlong ? 'along' : 'level');
    this.fault =
      slope !== null
        ? ''
        : this.isAlong
          ? `A tape along the slope must be longer than the rise of ${formatLength(Math.abs(high - low), this.app.units)}.`
          : 'The distance must be more than nothing.';
    if (slope !== null) this.set(slope);
  }

  private async pickDistance(): Promise<void> {
    const from = await this.app.pick('Point at one end of the slope.');
    const to = from && (await this.app.pick('Point at the other end, straight up or down the slope.'));
    this.app.setView({ tool: { type: 'select' } });
    if (!from || !to) return;
    this.isAlong = false;
    this.sizes = { ...this.sizes, distance: distanceM(from, to) };
  }

  private set(slope: number | null): void {
    const key = `slope ${this.zone.id}`;
    this.app.dispatch(
      slope === null ? 'Remove slope' : 'Set slope',
      (yard) => {
        const zone = yard.zones.find((each) => each.id === this.zone.id);
        return zone ? replaceZone(yard, { ...zone, slope }) : yard;
      },
      key,
    );
  }

  private showSurface(showSurface: boolean): void {
    this.app.dispatch('Show ground along slopes', (yard) => changeSettings(yard, { showSurface }));
  }
}
