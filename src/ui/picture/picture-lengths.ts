import { html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { OwnPicture } from '../../survey/picture/ownPicture';
import { measuredLengths } from '../../survey/picture/refitPicture';
import { formatLength, formatNumber } from '../../units/format';
import type { PictureFit, UnitSystem } from '../../yard/types';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { arrowDeg } from './picture-edits';
import { PicturePart, pictureStyles } from './picture-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';

/** Less than this is no miss, m. */
const EXACT_M = 0.0005;

function missWords(missM: number, units: UnitSystem): string {
  return missM < EXACT_M ? 'as typed' : `off by ${formatLength(missM, units)}`;
}

/** Points that count. */
function countPoints({ fit }: OwnPicture): number {
  return (fit?.points ?? []).filter((point) => !point.isOut).length;
}

/** Known lengths between places of the picture, and where north is in it. */
@customElement('picture-lengths')
export class PictureLengths extends PicturePart {
  static override styles = [shared, pictureStyles];

  @state() private lengthM: number | null = null;

  protected override render() {
    const { picture, pendingLength } = this.work;
    if (!picture) return nothing;
    const lengths = picture.fit?.distances ?? [];
    return html`
      ${this.renderPoints(picture)}
      ${lengths.length > 0 ? this.renderList(picture) : html`<p class="quiet">Mark the two ends of something whose length you know: a wall, a lot line, the scale bar of the plat. Longer is better; more than one shows how well they agree.</p>`}
      ${pendingLength ? this.renderPending() : html`<p><button class="primary" @click=${this.pickEnds}>Mark a length in the picture</button></p>`}
      ${this.renderNorth(picture.fit?.northDeg ?? null, countPoints(picture))}
    `;
  }

  /** Points set on their own page hold the picture as well. */
  private renderPoints(picture: OwnPicture) {
    const count = countPoints(picture);
    if (count === 0) return nothing;
    return html`<div class="note"><p>${count === 1 ? '1 point also counts: it holds the picture in its place.' : `${count} points also count: they hold its place, direction and size together with the lengths.`}</p>
      <button @click=${() =>
        this.change('Leave points of picture out', (fit) => ({
          ...fit,
          points: fit.points.map((point) => ({ ...point, isOut: true })),
        }))}>Leave ${count === 1 ? 'the point' : 'the points'} out</button></div>`;
  }

  private renderList(picture: OwnPicture) {
    const { units } = this.app;
    const measured = measuredLengths(picture);
    return html`<ol class="list" aria-label="Lengths">${(picture.fit?.distances ?? []).map(
      ({ lengthM, isOut }, i) => html`<li>
        <quantity-field label=${`Length ${i + 1}`} quantity="length" .system=${units} .value=${lengthM} .min=${0.01} .max=${10_000}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.setLength(i, event.detail.valueSi)}></quantity-field>
        <span class="acts">
          <button aria-label=${isOut ? `Take length ${i + 1} in` : `Leave length ${i + 1} out`} @click=${() => this.turn(i)}>${isOut ? 'Take in' : 'Leave out'}</button>
          <button class="danger" aria-label=${`Delete length ${i + 1}`} @click=${() => this.delete(i)}>Delete</button></span>
        <span class="whole quiet">${isOut ? 'Left out; the' : 'The'} picture gives ${formatLength(measured[i] ?? 0, units)}, ${missWords(Math.abs((measured[i] ?? 0) - lengthM), units)}</span></li>`,
    )}</ol>`;
  }

  private renderPending() {
    return html`<form class="step" @submit=${this.add}>
      <p><b>Both ends are marked.</b> How long is it?</p>
      <quantity-field label="Length" quantity="length" optional .system=${this.app.units} .value=${this.lengthM} .min=${0.01} .max=${10_000}
        @quantity-change=${(event: CustomEvent<QuantityChange>) => {
          this.lengthM = event.detail.valueSi;
        }}
        @keydown=${(event: KeyboardEvent) => {
          // the field's own change comes first
          if (event.key === 'Enter') setTimeout(() => this.add());
        }}></quantity-field>
      <div class="row"><button class="primary">Set this length</button>
        <button type="button" class="plain" @click=${() => {
          this.work.forget();
          this.app.notify();
        }}>Forget it</button></div>
    </form>`;
  }

  private renderNorth(northDeg: number | null, pointCount: number) {
    const isUsed = pointCount < 2;
    const words = pointCount === 2 ? 'two points are' : `${pointCount} points are`;
    return html`<div class="step">
      <p><b>North in the picture</b> <span class="quiet">${northDeg === null ? (isUsed ? 'not told: its top stays where it points now' : 'not told') : `${formatNumber(northDeg, 4)}° from its top, clockwise`}</span></p>
      <div class="pair">
        <button @click=${this.pickNorth}>Mark a north arrow</button>
        <number-field label="Degrees from its top" suffix="°" optional .value=${northDeg === null ? null : Number(northDeg.toFixed(2))} .min=${-360} .max=${360}
          @number-change=${(event: CustomEvent<NumberChange>) => this.setNorth(event.detail.value)}></number-field>
      </div>
      ${isUsed ? nothing : html`<p><b>Not used while ${words} set:</b> the points give the direction. North is only compared with them.</p>`}
      <p class="quiet">Areas do not depend on north.</p>
    </div>`;
  }

  private change(label: string, change: (fit: PictureFit) => PictureFit, mergeKey?: string): void {
    this.work.editFit(label, change, mergeKey);
  }

  private async pickEnds(): Promise<void> {
    const { work, app } = this;
    const ends = await work.pickTwo(
      'Point at one end of the length in the picture.',
      'Now point at its other end.',
    );
    if (!ends) return;
    work.pendingLength = ends;
    app.notify();
  }

  private add(event?: Event): void {
    event?.preventDefault();
    const { work, lengthM } = this;
    const ends = work.pendingLength;
    if (!ends) return;
    if (lengthM === null || lengthM <= 0) {
      work.fail('Type how long it is first.');
      return;
    }
    work.pendingLength = null;
    this.lengthM = null;
    this.change('Add length of picture', (fit) => ({
      ...fit,
      distances: [...fit.distances, { ...ends, lengthM }],
    }));
  }

  private async pickNorth(): Promise<void> {
    const arrow = await this.work.pickTwo(
      'Point at the foot of the north arrow, or at any place.',
      'Now point at its tip: a place due north of the first.',
    );
    if (arrow) this.setNorth(arrowDeg(arrow.from, arrow.to));
  }

  private setNorth(northDeg: number | null): void {
    this.change('Set north of picture', (fit) => ({ ...fit, northDeg }), 'picture-north');
  }

  private setLength(index: number, lengthM: number | null): void {
    if (lengthM === null) return;
    this.change('Change length of picture', (fit) => ({
      ...fit,
      distances: fit.distances.map((each, i) => (i === index ? { ...each, lengthM } : each)),
    }));
  }

  private turn(index: number): void {
    this.change('Change lengths of picture', (fit) => ({
      ...fit,
      distances: fit.distances.map((each, i) => (i === index ? { ...each, isOut: !each.isOut } : each)),
    }));
  }

  private delete(index: number): void {
    this.change('Delete length of picture', (fit) => ({
      ...fit,
      distances: fit.distances.filter((_, i) => i !== index),
    }));
  }
}
