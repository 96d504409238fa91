import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** Passes: how each dose of the visit is walked. */
@customElement('passes-panel')
export class PassesPanel extends AppPart {
  static override styles = [shared];

  protected override render() {
    return html`<h2>Passes</h2>`;
  }
}
