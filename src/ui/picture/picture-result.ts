import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { SEEN_PIXELS } from '../../measure/suggestSigma';
import { groundResolutionOf } from '../../survey/picture/affine';
import { cornersOfPicture, type OwnPicture } from '../../survey/picture/ownPicture';
import { isPictureSet, type PictureLaid, pointMisses, refitPicture } from '../../survey/picture/refitPicture';
import { formatLength, formatNumber, formatPercent } from '../../units/format';
import type { UnitSystem } from '../../yard/types';
import { shared } from '../parts/shared';
import { PicturePart, pictureStyles } from './picture-part';

/** A picture that lies this much off its fit was moved by hand since, as a share of its width. */
const MOVED_SHARE = 1e-7;

/** How a picture lies and what that does to what is measured on it. */
@customElement('picture-result')
export class PictureResult extends PicturePart {
  static override styles = [
    shared,
    pictureStyles,
    css`
      dl { display: grid; grid-template-columns: auto 1fr; gap: 0.15rem 0.75rem; margin: 0 0 0.5rem; }
      dt { color: var(--ink-soft); font-size: var(--text-small); align-self: center; }
      dd { margin: 0; font-weight: 650; }
    `,
  ];

  protected override render() {
    const { picture } = this.work;
    if (!picture) return nothing;
    const laid = refitPicture(picture);
    const isMoved = laid.state === 'fitted' && !liesAlike(picture, laid.picture);
    return html`
      ${this.renderState(picture, laid, isMoved)}
      ${isPictureSet(picture) ? this.renderFigures(picture, laid) : nothing}
      <p><button @click=${() => this.app.map?.showPlaces(cornersOfPicture(picture))}>Show it whole</button></p>
    `;
  }

  private renderState(picture: OwnPicture, laid: PictureLaid, isMoved: boolean) {
    if (laid.state === 'refused') return html`<p class="note error" role="alert">${laid.issue.message}</p>`;
    if (isMoved)
      return html`<div class="note warning"><p>Moved by hand since it was set.</p>
        <button @click=${() => this.work.edit('Set picture again', (each) => refitPicture(each).picture)}>Set it by its points and lengths again</button></div>`;
    if (!isPictureSet(picture))
      return html`<p class="note warning" role="status">Not set yet: sizes read from it mean nothing.
        Two points, or one known length, set it.</p>`;
    const meta = this.work.metaOf(picture.pictureId);
    if (picture.fit === null)
      return html`<p class="note">Placed by its own file${meta?.position ? `: ${meta.position.crsName}. ${meta.position.note}` : '.'}</p>`;
    return nothing;
  }

  private renderFigures(picture: OwnPicture, laid: PictureLaid) {
    const { units } = this.app;
    const pixelM = groundResolutionOf(picture.toGround);
    const cornerM = Math.hypot(picture.sigmaM, SEEN_PIXELS * pixelM);
    const used = (picture.fit?.points ?? []).map((point) => !point.isOut);
    const misses = pointMisses(picture).filter((_, i) => used[i]);
    const squares = misses.reduce((sum, miss) => sum + miss * miss, 0);
    const lengths = laid.state === 'fitted' ? laid.fit.residuals.distances : [];
    const north = laid.state === 'fitted' ? laid.fit.northDifferenceDeg : null;
    const worst = Math.max(0, ...lengths.map((each) => Math.abs(each.differenceM)));
    const row = (words: string, figure: string) => html`<dt>${words}</dt><dd>${figure}</dd>`;
    return html`<dl aria-label="How well it lies">
      ${misses.length > 2 ? row('Points off by (rms)', lengthWords(Math.sqrt(squares / misses.length), units)) : nothing}
      ${lengths.length > 1 ? row('Lengths off by, at most', lengthWords(worst, units)) : nothing}
      ${north === null ? nothing : row('North arrow off by', `${formatNumber(Math.abs(north), 2)}°`)}
      ${row('One pixel on the ground', formatLength(pixelM, units))}
      ${row('A corner read from it', `± ${formatLength(2 * cornerM, units)}, plus your pointing`)}
      ${row('An area, by its scale', picture.scaleSigma > 0 ? `± ${formatPercent(4 * picture.scaleSigma)}` : 'as the file says')}
    </dl>
    <p class="quiet">Each ± here is two standard deviations. The corner error in a zone’s details is one, with your pointing in it.</p>`;
  }
}

/** Under half a millimetre nothing is said. */
function lengthWords(lengthM: number, units: UnitSystem): string {
  return lengthM < 0.0005 ? 'nothing' : formatLength(lengthM, units);
}

/** Two affines that take a picture's corners to the same places. */
function liesAlike(a: OwnPicture, b: OwnPicture): boolean {
  const other = cornersOfPicture(b);
  return cornersOfPicture(a).every((corner, i) => {
    const next = other[i] ?? corner;
    const [width] = [Math.abs(corner[0] - (cornersOfPicture(a)[(i + 2) % 4] ?? corner)[0])];
    return Math.hypot(corner[0] - next[0], corner[1] - next[1]) < Math.max(1e-10, MOVED_SHARE * width);
  });
}
