import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { AppPart } from './app-part';

/** Being written. */
@customElement('file-form')
export class FileForm extends AppPart {
  protected override render() {
    return html`<p>Not here yet.</p>`;
  }
}
