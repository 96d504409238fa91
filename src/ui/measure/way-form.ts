import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Way } from '../app';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';
import { WAY_WORDS } from './way-words';

/** Where the form of each way comes from; fetched when first opened. */
const LOAD: Readonly<Record<Way, () => Promise<unknown>>> = {
  picture: () => import('../picture/picture-form'),
  tape: () => import('../tape/tape-form'),
  plat: () => import('../plat/plat-form'),
  walk: () => import('../walk/walk-form'),
  corners: () => import('./typed-zone-form'),
  file: () => import('../files/file-form'),
  parcel: () => import('./parcel-form'),
};

/** The form of the way that is open, under a way back to the zones. */
@customElement('way-form')
export class WayForm extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      header { display: flex; align-items: center; gap: 0.5rem; margin-bottom: 0.75rem; }
      header h2 { margin: 0; }
    `,
  ];

  @state() private loaded: ReadonlySet<Way> = new Set();
  @state() private failed: Way | null = null;

  protected override willUpdate(): void {
    const { way } = this.app.view;
    if (way === null || this.loaded.has(way) || this.failed === way) return;
    LOAD[way]().then(
      () => {
        this.loaded = new Set([...this.loaded, way]);
      },
      () => {
        this.failed = way;
      },
    );
  }

  protected override render() {
    const { way } = this.app.view;
    if (way === null) return nothing;
    return html`
      <header><button @click=${this.close}>‹ Zones</button><h2>${WAY_WORDS[way].name}</h2></header>
      ${this.failed === way ? this.renderFailed() : this.loaded.has(way) ? this.renderForm(way) : html`<p>Loading…</p>`}
    `;
  }

  private renderForm(way: Way) {
    const { app, rev } = this;
    switch (way) {
      case 'picture':
        return html`<picture-form .app=${app} .rev=${rev}></picture-form>`;
      case 'tape':
        return html`<tape-form .app=${app} .rev=${rev}></tape-form>`;
      case 'plat':
        return html`<plat-form .app=${app} .rev=${rev}></plat-form>`;
      case 'walk':
        return html`<walk-form .app=${app} .rev=${rev}></walk-form>`;
      case 'corners':
        return html`<typed-zone-form .app=${app} .rev=${rev}></typed-zone-form>`;
      case 'file':
        return html`<file-form .app=${app} .rev=${rev}></file-form>`;
      case 'parcel':
        return html`<parcel-form .app=${app} .rev=${rev}></parcel-form>`;
    }
  }

  private renderFailed() {
    return html`<p class="note error" role="alert">This part could not be loaded. Check the connection and try again.
      <button @click=${() => {
        this.failed = null;
      }}>Try again</button></p>`;
  }

  private close(): void {
    this.app.setView({ way: null, tool: { type: 'select' } });
  }
}
