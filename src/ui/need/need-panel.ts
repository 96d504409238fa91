import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';
import '../soil/soil-section';
import './climate-section';
import './need-section';

/** Need: what the ground holds, what the grass wants over the year, and the climate it grows in. */
@customElement('need-panel')
export class NeedPanel extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      section { margin-bottom: 1.5rem; }
      section + section { border-top: 2px solid var(--ink); padding-top: 0.75rem; }
    `,
  ];

  protected override render() {
    const { app, rev } = this;
    return html`
      <h2>Need</h2>
      <section><soil-section .app=${app} .rev=${rev}></soil-section></section>
      <section><need-section .app=${app} .rev=${rev}></need-section></section>
      <section><climate-section .app=${app} .rev=${rev}></climate-section></section>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'need-panel': NeedPanel;
  }
}
