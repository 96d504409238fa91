import { LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { AppController } from './app-controller';

/**
 * The place of the drawing. Leaflet's style sheet is of the page, so this element has no shadow:
 * it stands in the page itself and is put into the shell by a slot.
 */
@customElement('map-host')
export class MapHost extends LitElement {
  @property({ attribute: false }) app!: AppController;

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  protected override firstUpdated(): void {
    const box = document.createElement('div');
    box.className = 'map-box';
    this.append(box);
    void this.app.attachMap(box);
  }
}
