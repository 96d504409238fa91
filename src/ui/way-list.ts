import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { WAYS } from './app';
import { AppPart } from './app-part';
import { shared } from './shared';
import { WAY_WORDS } from './way-words';

/** The ways of getting at an area beside drawing; each opens its form in this panel. */
@customElement('way-list')
export class WayList extends AppPart {
  static override styles = [
    shared,
    css`
      ul { list-style: none; margin: 0; padding: 0; display: grid; gap: 0.35rem; }
      button { width: 100%; display: grid; padding: 0.35rem 0.75rem; text-align: left; line-height: 1.25; }
      b { font-weight: 650; }
    `,
  ];

  protected override render() {
    return html`<ul>${WAYS.map(
      (way) => html`<li><button @click=${() => this.app.setView({ way })}>
        <b>${WAY_WORDS[way].name}</b><span class="quiet">${WAY_WORDS[way].when}</span></button></li>`,
    )}</ul>`;
  }
}
