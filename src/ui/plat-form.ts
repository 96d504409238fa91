import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { AppPart } from './app-part';

/** Being written. */
@customElement('plat-form')
export class PlatForm extends AppPart {
  protected override render() {
    return html`<p>Not here yet.</p>`;
  }
}
