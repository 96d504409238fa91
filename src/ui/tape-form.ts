import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { AppPart } from './app-part';

/** Being written. */
@customElement('tape-form')
export class TapeForm extends AppPart {
  protected override render() {
    return html`<p>Not here yet.</p>`;
  }
}
