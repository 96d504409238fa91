import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

@customElement('season-panel')
export class SeasonPanel extends AppPart {
  static override styles = [shared];

  protected override render() {
    return html`<h2>Season</h2>`;
  }
}
