import { html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { createPlane } from '../../measure/plane';
import type { OwnPicture } from '../../survey/picture/ownPicture';
import { pointMisses } from '../../survey/picture/refitPicture';
import type { FitKind, Pixel } from '../../survey/picture/types';
import { M_PER_FT, M_PER_IN } from '../../units/factors';
import { formatAtPlace, formatLength } from '../../units/format';
import type { Position, UnitSystem } from '../../yard/types';
import { fieldValue } from '../parts/app-part';
import { readCoordinates } from '../parts/read-coordinates';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { PicturePart, pictureStyles } from './picture-part';
import { largestMiss, tellingPoints } from './picture-work';

const KIND_WORDS: Readonly<Record<FitKind, string>> = {
  similarity: 'One scale, turned and shifted',
  affine: 'Two scales and a slant (stretched scan)',
};

/** Less than this is no miss, m. */
const EXACT_M = 0.0005;

/** Misses of a column in the one unit that suits the largest, to the same decimals. */
function missWords(missesM: readonly number[], system: UnitSystem): readonly string[] {
  const isLarge = Math.max(...missesM) >= (system === 'us' ? M_PER_FT : 1);
  const us = isLarge ? { si: M_PER_FT, label: 'ft', place: 1 } : { si: M_PER_IN, label: 'in', place: 1 };
  const metric = isLarge ? { si: 1, label: 'm', place: 2 } : { si: 0.01, label: 'cm', place: 1 };
  const { si, label, place } = system === 'us' ? us : metric;
  return missesM.map((miss) =>
    miss < EXACT_M ? 'nothing' : `${formatAtPlace(miss / si, place)}\u00a0${label}`,
  );
}

/** Where in the picture a point is: pointed at, or one of its four corners. */
const SPOTS = ['pick', 'upper-left', 'upper-right', 'lower-right', 'lower-left'] as const;
type Spot = (typeof SPOTS)[number];
const SPOT_WORDS: Readonly<Record<Spot, string>> = {
  pick: 'I point at it',
  'upper-left': 'Upper left corner of the picture',
  'upper-right': 'Upper right corner',
  'lower-right': 'Lower right corner',
  'lower-left': 'Lower left corner',
};

/** Points known both in the picture and on the ground. */
@customElement('picture-points')
export class PicturePoints extends PicturePart {
  static override styles = [shared, pictureStyles];

  @state() private spot: Spot = 'pick';
  @state() private text = '';

  protected override render() {
    const { picture, pendingPoint } = this.work;
    if (!picture) return nothing;
    const points = picture.fit?.points ?? [];
    const used = points.filter((point) => !point.isOut).length;
    return html`
      ${this.renderLengths(picture)}
      ${points.length > 0 ? this.renderList(picture) : html`<p class="quiet">Mark places you can tell in the picture and know on the ground: corners of the house, of a walk, survey pins. Two set it; more show how well it fits. Take them far apart.</p>`}
      ${pendingPoint ? this.renderGround(points.length + 1) : this.renderAdd(points.length + 1)}
      ${
        used >= 3
          ? selectField(
              'Fit',
              picture.fit?.kind ?? 'similarity',
              ['similarity', 'affine'] as const,
              KIND_WORDS,
              (kind) => this.work.editFit('Change fit', (fit) => ({ ...fit, kind })),
            )
          : nothing
      }
    `;
  }

  /** Lengths set on their own page count as well. */
  private renderLengths(picture: OwnPicture) {
    const count = (picture.fit?.distances ?? []).filter((distance) => !distance.isOut).length;
    if (count === 0) return nothing;
    return html`<p class="note">${count === 1 ? '1 length also counts' : `${count} lengths also count`}; see “Lengths”.</p>`;
  }

  private renderList(picture: OwnPicture) {
    const { units } = this.app;
    const misses = pointMisses(picture);
    const largest = largestMiss(picture);
    const points = picture.fit?.points ?? [];
    const used = points.filter((point) => !point.isOut).length;
    // two points always fit; only what is left out or moved can be off
    const isTold = used >= 3 || Math.max(...misses) > EXACT_M;
    const words = missWords(misses, units);
    const telling = tellingPoints(picture);
    const isVague =
      used >= 3 && used < telling && misses.some((miss, i) => !points[i]?.isOut && miss > EXACT_M);
    return html`<ol class="list" aria-label="Points">${points.map(({ ground, isOut }, i) => {
      return html`<li><span><b class=${isOut ? 'out' : ''}>${i + 1}</b> <span class="quiet">${this.placeWords(ground)}</span><br />
          ${isTold ? html`<span class=${i === largest ? 'largest' : ''}>off by ${words[i]}${i === largest ? ', the largest' : ''}</span>` : nothing}
          ${isOut ? html`<span class="quiet"> left out</span>` : nothing}</span>
        <span class="acts">
          <button aria-label=${isOut ? `Take point ${i + 1} in` : `Leave point ${i + 1} out`} @click=${() => this.turn(i)}>${isOut ? 'Take in' : 'Leave out'}</button>
          <button class="danger" aria-label=${`Delete point ${i + 1}`} @click=${() => this.delete(i)}>Delete</button></span></li>`;
    })}</ol>
    ${isVague ? html`<p class="quiet">${used === 3 ? 'Three' : 'Four'} points cannot tell which of them is wrong, only that they do not agree. ${used + 1 === telling ? 'One more point tells.' : `${telling - used} more points tell.`}</p>` : nothing}`;
  }

  private placeWords(ground: Position): string {
    const { units, yard } = this.app;
    if (!yard.settings.isLocal) return `${ground[1].toFixed(6)}, ${ground[0].toFixed(6)}`;
    const [x, y] = createPlane([0, 0]).toPlane(ground);
    return `${formatLength(x, units)} right, ${formatLength(y, units)} up`;
  }

  private renderAdd(number: number) {
    return html`<div class="step">
      ${selectField(`Where in the picture is point ${number}?`, this.spot, SPOTS, SPOT_WORDS, (spot) => {
        this.spot = spot;
      })}
      <button class="primary" @click=${() => this.begin(number)}>${this.spot === 'pick' ? `Point at point ${number} in the picture` : 'Take this corner'}</button>
    </div>`;
  }

  private renderGround(number: number) {
    const { isLocal } = this.app.yard.settings;
    return html`<form class="step" @submit=${this.setTyped}>
      <p><b>Point ${number} is marked in the picture.</b> Where is it on the ground?</p>
      <button type="button" class="primary" @click=${() => this.pickGround(number)}>Pick it on the map</button>
      ${
        isLocal
          ? nothing
          : html`<label>or its latitude, longitude<input autocomplete="off" placeholder="40.446, -79.982" .value=${this.text}
              @input=${(event: Event) => {
                this.text = fieldValue(event);
              }} /></label><button>Set these coordinates</button>`
      }
      <button type="button" class="plain" @click=${() => {
        this.work.forget();
        this.app.notify();
      }}>Forget this point</button>
    </form>`;
  }

  private async begin(number: number): Promise<void> {
    const { work, app, spot } = this;
    const { picture } = work;
    if (!picture) return;
    const [right, low] = [picture.widthPx, picture.heightPx];
    const corners: Readonly<Record<Exclude<Spot, 'pick'>, Pixel>> = {
      'upper-left': [0, 0],
      'upper-right': [right, 0],
      'lower-right': [right, low],
      'lower-left': [0, low],
    };
    const pixel =
      spot === 'pick' ? await work.pickPixel(`Point ${number}: point at it in the picture.`) : corners[spot];
    if (!pixel) return;
    work.pendingPoint = pixel;
    this.spot = 'pick';
    app.notify();
  }

  private async pickGround(number: number): Promise<void> {
    const ground = await this.work.pickGround(`Point ${number}: where is it on the ground?`);
    if (ground) this.add(ground);
  }

  private setTyped(event: Event): void {
    event.preventDefault();
    const read = readCoordinates(this.text);
    if (read.ok) this.add(read.position);
    else this.work.fail(read.message);
  }

  private add(ground: Position): void {
    const { work } = this;
    const pixel = work.pendingPoint;
    if (!pixel) return;
    work.pendingPoint = null;
    this.text = '';
    work.editFit('Add point of picture', (fit) => ({ ...fit, points: [...fit.points, { pixel, ground }] }));
  }

  private turn(index: number): void {
    this.work.editFit('Change points of picture', (fit) => ({
      ...fit,
      points: fit.points.map((point, i) => (i === index ? { ...point, isOut: !point.isOut } : point)),
    }));
  }

  private delete(index: number): void {
    this.work.editFit('Delete point of picture', (fit) => ({
      ...fit,
      points: fit.points.filter((_, i) => i !== index),
    }));
  }
}
