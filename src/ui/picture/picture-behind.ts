import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { shared } from '../parts/shared';
import { PicturePart, pictureStyles } from './picture-part';

const zonesWords = (count: number) => (count === 1 ? '1 zone was' : `${count} zones were`);

/** Offers to bring zones along that were traced over the picture before it was laid otherwise. */
@customElement('picture-behind')
export class PictureBehind extends PicturePart {
  static override styles = [shared, pictureStyles];

  protected override render() {
    const { app, work } = this;
    const { picture } = work;
    if (!picture) return nothing;
    const { free, locked } = work.trail.behind(app.yard, picture);
    if (free.length + locked.length === 0) return nothing;
    const isOne = locked.length === 1;
    return html`<div class="note warning" role="status">
      ${free.length > 0 ? html`<p>${zonesWords(free.length)} traced over this picture where it lay before.</p>` : nothing}
      ${
        locked.length > 0
          ? html`<p>${zonesWords(locked.length)} traced over it and ${isOne ? 'is' : 'are'} locked, so
              ${isOne ? 'it stays where it is' : 'they stay where they are'}. Unlock ${isOne ? 'it in its' : 'them in their'} details first.</p>`
          : nothing
      }
      <div class="row">
        ${free.length > 0 ? html`<button class="primary" @click=${this.bring}>Bring ${free.length === 1 ? 'it' : 'them'} along</button>` : nothing}
        <button @click=${this.leave}>${free.length > 0 ? 'Leave where drawn' : 'Hide this'}</button>
      </div>
    </div>`;
  }

  private bring(): void {
    const { app, work } = this;
    const { picture } = work;
    if (picture) app.dispatch('Bring zones along', (yard) => work.trail.bringAlong(yard, picture));
  }

  private leave(): void {
    const { app, work } = this;
    if (work.picture) work.trail.leave(app.yard, work.picture);
    app.notify();
  }
}
