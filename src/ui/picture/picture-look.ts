import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { READY_LAYERS } from '../../map/sources';
import { formatPercent } from '../../units/format';
import { fieldValue } from '../parts/app-part';
import { shared } from '../parts/shared';
import { PicturePart, pictureStyles } from './picture-part';

/** How strong the picture is drawn, what shows beneath it, what it is called. */
@customElement('picture-look')
export class PictureLook extends PicturePart {
  static override styles = [
    shared,
    pictureStyles,
    css`
      :host { display: grid; gap: 0.5rem; margin: 0.75rem 0; }
      input[type='range'] { padding: 0; border: 0; background: none; accent-color: var(--accent); }
      label span { display: flex; justify-content: space-between; }
    `,
  ];

  protected override render() {
    const { picture } = this.work;
    if (!picture) return nothing;
    const { settings } = this.app.yard;
    const others = (settings.isLocal ? [] : [...READY_LAYERS, ...settings.ownLayers]).filter(
      (layer) => 'url' in layer,
    );
    return html`
      <label><span>How strong it is drawn <b>${formatPercent(picture.opacity)}</b></span>
        <input type="range" min="0.1" max="1" step="0.05" .value=${String(picture.opacity)}
          @input=${(event: Event) => {
            const opacity = Number(fieldValue(event));
            this.work.edit('Change strength of picture', (each) => ({ ...each, opacity }), 'picture-opacity');
          }} /></label>
      ${
        settings.isLocal
          ? nothing
          : html`<label>Beneath it<select @change=${(event: Event) => this.setUnder(fieldValue(event))}>
              <option value="" .selected=${picture.underId === undefined}>Drafting paper with a grid</option>
              ${others.map((layer) => html`<option value=${layer.id} .selected=${layer.id === picture.underId}>${layer.name}</option>`)}
            </select></label>`
      }
      <label>Name<input autocomplete="off" .value=${picture.name} @change=${(event: Event) => {
        const name = fieldValue(event).trim();
        if (name !== '') this.work.edit('Rename picture', (each) => ({ ...each, name }));
      }} /></label>
    `;
  }

  private setUnder(id: string): void {
    this.work.edit('Change ground beneath picture', ({ underId: _before, ...each }) =>
      id === '' ? each : { ...each, underId: id },
    );
  }
}
