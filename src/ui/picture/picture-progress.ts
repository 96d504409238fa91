import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { shared } from '../parts/shared';
import { PicturePart, pictureStyles } from './picture-part';
import { pictureReadingOf } from './picture-reading';

/** How far the reading of a picture has come, with a way to call it off; then what is to say of it. */
@customElement('picture-progress')
export class PictureProgress extends PicturePart {
  static override styles = [
    shared,
    pictureStyles,
    css`
      progress { width: 100%; height: 0.75rem; accent-color: var(--accent); }
      .reading { grid-template-columns: 1fr auto; align-items: center; }
      .reading p { overflow-wrap: anywhere; }
    `,
  ];

  protected override render() {
    const { state, issues } = pictureReadingOf(this.app);
    return html`
      ${
        state
          ? html`<div class="step reading"><div><p role="status">Reading ${state.name}…</p>
              <progress max="1" .value=${state.share} aria-label="How far the picture is read"></progress></div>
              <button @click=${() => state.cancel()}>Cancel</button></div>`
          : nothing
      }
      ${issues.map((issue) => html`<p class="note ${issue.severity}" role=${issue.severity === 'error' ? 'alert' : 'status'}>${issue.message}</p>`)}
    `;
  }
}
