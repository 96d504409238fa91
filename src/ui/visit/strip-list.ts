import { css, html, nothing, svg } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { NoApplyStrip } from '../../cover/types';
import { HATCHES, NO_APPLY_INKS } from '../../draft/hatches';
import { stripSavings } from '../../plan/stripSavings';
import { formatArea, formatLength } from '../../units/format';
import { SOURCE_WORDS } from '../../words/edgeWords';
import { stripSavingWords, stripWidthWords } from '../../words/stripWords';
import { groundName } from '../../words/zoneWords';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** No-apply strips of the visit: width and what set it, area, and the product not put down there. */
@customElement('strip-list')
export class StripList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .key { display: flex; align-items: center; gap: 0.5rem; }
      .key svg { width: 1.75rem; height: 1.75rem; flex: none; }
      td small { display: block; font-size: var(--text-small); color: var(--ink-soft); }
      ul { margin: 0.5rem 0; padding-left: 1.1rem; }
    `,
  ];

  protected override render() {
    const treated = [...(this.app.visit?.treated.values() ?? [])];
    const strips = treated.flatMap((zone) => zone.strips);
    if (strips.length === 0) return html`<p>No drain, well or water is near enough to ask for a strip.</p>`;
    const { units, yard } = this.app;
    return html`
      <p class="key">${this.renderHatch()}<span>So hatched on map and sheet: nothing is put down there.</span></p>
      <table>
        <thead><tr><th scope="col">In</th><th scope="col">Beside</th><th scope="col" class="num">Width</th><th scope="col" class="num">Area</th></tr></thead>
        <tbody>${strips.map(
          (strip) => html`<tr><td>${this.nameOf(strip.zoneId)}</td><td>${this.sourceOf(strip)}</td>
            <td class="num">${formatLength(strip.widthM, units)}<small>${stripWidthWords(yard, strip)}</small></td><td class="num">${formatArea(strip.areaM2, units, 4)}</td></tr>`,
        )}</tbody>
      </table>
      ${
        treated.some((zone) => zone.strips.length > 1)
          ? html`<p class="quiet">Where strips overlap, the ground is taken off once.</p>`
          : nothing
      }
      <ul>${stripSavings(this.app.visit?.figures.doses ?? []).map(
        (saving) => html`<li><b>${this.nameOf(saving.zoneId)}</b>: ${stripSavingWords(saving, units)}.</li>`,
      )}</ul>
      <p class="quiet">Widths are set under Yards, Settings, or by a rule under Season, Rules; the wider holds. The label and the local code decide; where they ask for more, set more.</p>
    `;
  }

  private renderHatch() {
    const hatch = HATCHES['no-apply'];
    const { ink, tint } = NO_APPLY_INKS[this.app.theme === 'dark' ? 'dark' : 'light'];
    return html`<svg viewBox="0 0 28 28" aria-hidden="true">
      <defs><pattern id="strip" width=${hatch.width} height=${hatch.height} patternUnits="userSpaceOnUse">
        ${hatch.lines.map((d) => svg`<path d=${d} fill="none" stroke=${ink} stroke-width=${hatch.strokeWidth} />`)}
      </pattern></defs>
      <rect x="1" y="1" width="26" height="26" fill=${tint} />
      <rect x="1" y="1" width="26" height="26" fill="url(#strip)" stroke=${ink} stroke-width="1.5" />
    </svg>`;
  }

  private nameOf(zoneId: string): string {
    return groundName(this.app.yard.zones.find((zone) => zone.id === zoneId)?.name ?? '');
  }

  private sourceOf(strip: NoApplyStrip): string {
    const { zones, marks } = this.app.yard;
    const name = [...marks, ...zones].find((one) => one.id === strip.sourceId)?.name;
    const word = SOURCE_WORDS[strip.sourceKind];
    return name || word;
  }
}
