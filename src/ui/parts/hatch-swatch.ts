import { css, html, LitElement, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { HATCHES, hatchIdOfZone, ZONE_INKS } from '../../draft/hatches';
import type { Zone } from '../../yard/types';

/** A small square of a zone's hatch, the key to the drawing. */
@customElement('hatch-swatch')
export class HatchSwatch extends LitElement {
  static override styles = css`
    :host { display: inline-block; width: 1.75rem; height: 1.75rem; flex: none; }
    svg { display: block; width: 100%; height: 100%; }
  `;

  @property({ attribute: false }) zone: Pick<Zone, 'kind' | 'mowing' | 'material'> = {
    kind: 'turf',
    mowing: null,
    material: null,
  };
  @property({ type: Boolean }) dark = false;

  protected override render() {
    const hatch = HATCHES[hatchIdOfZone(this.zone)];
    const { ink, tint } = ZONE_INKS[this.zone.kind][this.dark ? 'dark' : 'light'];
    return html`
      <svg viewBox="0 0 28 28" aria-hidden="true">
        <defs>
          <pattern id="hatch" width=${hatch.width} height=${hatch.height} patternUnits="userSpaceOnUse">
            ${hatch.lines.map((d) => svg`<path d=${d} fill="none" stroke=${ink} stroke-width=${hatch.strokeWidth} />`)}
            ${hatch.blots.map((d) => svg`<path d=${d} fill=${ink} />`)}
            ${hatch.dots.map(([x, y, r]) => svg`<circle cx=${x} cy=${y} r=${r} fill=${ink} />`)}
          </pattern>
        </defs>
        <rect x="1" y="1" width="26" height="26" fill=${tint} fill-opacity="0.22" />
        <rect x="1" y="1" width="26" height="26" fill="url(#hatch)" stroke=${ink} stroke-width="1.5" />
      </svg>
    `;
  }
}
