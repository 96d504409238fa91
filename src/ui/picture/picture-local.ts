import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { applyAffine } from '../../survey/picture/affine';
import { shiftFit } from '../../survey/picture/handMoves';
import { cornersOfPicture } from '../../survey/picture/ownPicture';
import { isPictureSet } from '../../survey/picture/refitPicture';
import { changePicture, changeSettings } from '../../yard/edits';
import type { Yard } from '../../yard/types';
import './local-place-form';
import { shared } from '../parts/shared';
import { NO_FIT } from './picture-edits';
import { PicturePart, pictureStyles } from './picture-part';

/** Makes the yard a drawing without a place on the Earth, laid out by the lengths of a picture. */
@customElement('picture-local')
export class PictureLocal extends PicturePart {
  static override styles = [shared, pictureStyles];

  protected override render() {
    const { app, rev, work } = this;
    const { picture } = work;
    if (!picture) return nothing;
    if (app.yard.settings.isLocal)
      return html`${
        isPictureSet(picture)
          ? html`<p>This yard is a local drawing: it measures by the lengths of its picture, but has no place on the Earth.</p>`
          : html`<p class="note warning">This yard is a local drawing without a place on the Earth, and its scale is missing: mark
              one known length under “Lengths”. Until then sizes mean nothing. Zones traced over the picture before that
              take their right size once the length is set; locked ones do not.</p>`
      }
        <local-place-form .app=${app} .rev=${rev}></local-place-form>`;
    const isFree = !hasPlacedGround(app.yard);
    return html`
      <p>A sketch or plat without any coordinates can be measured all the same: its lengths set the scale, and the
        yard is kept without a place on the Earth. A place can be given later.</p>
      ${isFree ? nothing : html`<p class="note">This yard already has ground drawn at its place. Make a new yard for a drawing without a place.</p>`}
      <p><button ?disabled=${!isFree} @click=${this.makeLocal}>Make this yard a local drawing</button></p>
    `;
  }

  private makeLocal(): void {
    const { picture } = this.work;
    if (!picture) return;
    this.work.forget();
    this.work.setWay('lengths');
    const lay = (yard: Yard) =>
      changePicture(yard, picture.id, (each) => {
        const [eastM, northM] = applyAffine(each.toGround, [each.widthPx / 2, each.heightPx / 2]);
        return {
          ...each,
          origin: [0, 0],
          toGround: shiftFit(each.toGround, -eastM, -northM),
          // points with coordinates have no meaning here; its own position keeps its scale
          fit: each.fit && { ...NO_FIT, distances: each.fit.distances, northDeg: each.fit.northDeg },
        };
      });
    this.app.dispatch('Make a local drawing', (yard) => changeSettings(lay(yard), { isLocal: true }));
    const laid = this.work.picture;
    if (laid) this.app.map?.showPlaces([laid.origin, ...this.cornersOf()]);
  }

  private cornersOf() {
    const { picture } = this.work;
    return picture ? cornersOfPicture(picture) : [];
  }
}

function hasPlacedGround(yard: Yard): boolean {
  return yard.zones.some((zone) => zone.isPlaced) || yard.marks.length > 0 || yard.parcel !== null;
}
