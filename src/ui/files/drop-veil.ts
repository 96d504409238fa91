import { css, html, LitElement } from 'lit';
import { customElement } from 'lit/decorators.js';

/** Lies over the page while a file is dragged over it. */
@customElement('drop-veil')
export class DropVeil extends LitElement {
  static override styles = css`
    :host { position: fixed; inset: 0; z-index: 50; display: grid; place-items: center; pointer-events: none; background: color-mix(in srgb, var(--paper) 70%, transparent); font: 650 1.25rem / 1.4 var(--font); color: var(--ink); }
    p { margin: 0; padding: 1.5rem 2rem; background: var(--sheet); border: 3px dashed var(--accent); }
  `;

  protected override render() {
    return html`<p>Drop it to see what is in it. Nothing comes in yet.</p>`;
  }
}

/** Shows or takes away the veil. */
export function setVeil(isOn: boolean): void {
  const shown = document.querySelector('drop-veil');
  if (isOn && !shown) document.body.append(new DropVeil());
  if (!isOn) shown?.remove();
}
