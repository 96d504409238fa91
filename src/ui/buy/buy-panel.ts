import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

@customElement('buy-panel')
export class BuyPanel extends AppPart {
  static override styles = [shared];

  protected override render() {
    return html`<h2>Buy</h2>`;
  }
}
