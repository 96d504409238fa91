import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { formatNumber } from '../../units/format';
import { changeSettings } from '../../yard/edits';
import './local-place-form';
import { fold } from '../parts/fold';
import './picture-behind';
import { ownPictures, removePicture } from './picture-edits';
import './picture-hand';
import './picture-lengths';
import './picture-local';
import './picture-look';
import { PicturePart, pictureStyles } from './picture-part';
import './picture-points';
import './picture-progress';
import './picture-read';
import './picture-result';
import './picture-system';
import { shared } from '../parts/shared';
import { pictureReadingOf, sizeWords } from './picture-reading';
import { PICTURE_WAYS, type PictureWay } from './picture-work';

const WAY_WORDS: Readonly<Record<PictureWay, string>> = {
  points: 'Points',
  lengths: 'Lengths',
  hand: 'By hand',
};

/** A picture of the person's own: read, set on the ground, and how well it lies. */
@customElement('picture-form')
export class PictureForm extends PicturePart {
  static override styles = [
    shared,
    fold,
    pictureStyles,
    css`
      .ways { display: grid; grid-template-columns: repeat(3, 1fr); margin-bottom: 0.6rem; }
      .ways button + button { border-left: 0; }
      .list .name { overflow-wrap: anywhere; }
      h3 { margin-top: 0.75rem; }
      .done { margin-top: 0.75rem; }
    `,
  ];

  /** Takes the files that were dropped elsewhere on the page. */
  protected override willUpdate(): void {
    this.work.trail.observe(this.app.yard, this.work.picture);
    const { pictureFiles } = this.app;
    if (!pictureFiles) return;
    this.app.pictureFiles = null;
    const { picture } = this.work;
    const isLost = picture && this.work.metaOf(picture.pictureId) === null;
    void pictureReadingOf(this.app).read(pictureFiles, isLost ? picture : null);
  }

  protected override updated(): void {
    this.work.showTrial();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    // on a narrow screen the form gives way to the map while a place is picked
    if (this.app.view.way !== 'picture') this.app.setTrial(null);
  }

  protected override render() {
    const { app, rev, work } = this;
    const { picture } = work;
    const pictures = ownPictures(app.yard);
    if (!picture)
      return html`<picture-progress .app=${app} .rev=${rev}></picture-progress>
        <picture-read .app=${app} .rev=${rev}></picture-read>
        ${pictures.length > 0 ? html`<h3>Pictures of this yard</h3>${this.renderList()}` : nothing}`;
    const meta = work.metaOf(picture.pictureId);
    return html`
      <picture-progress .app=${app} .rev=${rev}></picture-progress>
      <h3>${picture.name}</h3>
      <p class="quiet">${sizeWords(picture)}${meta ? `, ${formatNumber(meta.bytes / 1e6, 2)} MB in this browser` : ''}</p>
      ${
        meta === null
          ? html`<div class="note warning" role="alert"><p>The file of this picture is not in this browser. How it lies is kept.
              Choose its file again, and it goes back to its place.</p></div>
              <picture-read .app=${app} .rev=${rev} .lost=${picture}></picture-read>`
          : nothing
      }
      <picture-behind .app=${app} .rev=${rev}></picture-behind>
      <picture-result .app=${app} .rev=${rev}></picture-result>
      ${meta?.unplaced && !app.yard.settings.isLocal ? html`<picture-system .app=${app} .rev=${rev}></picture-system>` : nothing}
      <h3 id="set">Set it by</h3>
      <div class="ways" role="group" aria-labelledby="set">
        ${PICTURE_WAYS.map(
          (way) =>
            html`<button aria-pressed=${work.way === way ? 'true' : 'false'} @click=${() => work.setWay(way)}>${WAY_WORDS[way]}</button>`,
        )}
      </div>
      ${work.fault ? html`<p class="fault" role="alert">${work.fault}</p>` : nothing}
      ${work.way === 'points' ? html`<picture-points .app=${app} .rev=${rev}></picture-points>` : nothing}
      ${work.way === 'lengths' ? html`<picture-lengths .app=${app} .rev=${rev}></picture-lengths>` : nothing}
      ${work.way === 'hand' ? html`<picture-hand .app=${app} .rev=${rev}></picture-hand>` : nothing}
      <picture-look .app=${app} .rev=${rev}></picture-look>
      <details class="fold"><summary>Just a drawing, without a place</summary>
        <picture-local .app=${app} .rev=${rev}></picture-local></details>
      <details class="fold"><summary>Pictures of this yard (${pictures.length})</summary>
        ${this.renderList()}
        <picture-read .app=${app} .rev=${rev} brief></picture-read></details>
      <p class="done"><button class="primary" @click=${() => app.setView({ way: null, tool: { type: 'select' } })}>Done: draw on it</button></p>
    `;
  }

  private renderList() {
    const { app, work } = this;
    const shown = app.yard.settings.baseLayer;
    return html`<ol class="list">${ownPictures(app.yard).map((picture) => {
      const isShown = shown.kind === 'own-picture' && shown.id === picture.id;
      return html`<li><span class="name">${picture.name}${isShown ? html` <b>(shown)</b>` : nothing}</span>
        <span class="acts">
          ${
            isShown
              ? nothing
              : html`<button aria-label=${`Show ${picture.name}`} @click=${() => {
                  work.forget();
                  app.dispatch('Change ground', (yard) => changeSettings(yard, { baseLayer: picture }));
                }}>Show</button>`
          }
          <button class="danger" aria-label=${`Remove ${picture.name}`} @click=${() => {
            work.forget();
            app.dispatch('Remove picture', (yard) => removePicture(yard, picture.id));
          }}>Remove</button></span></li>`;
    })}</ol>`;
  }
}
