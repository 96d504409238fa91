import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { NoApplyStrip } from '../../cover/types';
import { formatArea, formatLength } from '../../units/format';
import { SOURCE_WORDS } from '../../words/edgeWords';
import { groundName } from '../../words/zoneWords';
import { AppPart } from '../parts/app-part';

/** No-apply strips of the visit, with width and area. */
@customElement('strip-list')
export class StripList extends AppPart {
  protected override render() {
    const treated = [...(this.app.visit?.treated.values() ?? [])];
    const strips = treated.flatMap((zone) => zone.strips);
    if (strips.length === 0) return html`<p>No drain, well or water is near enough to ask for a strip.</p>`;
    const { units } = this.app;
    return html`
      <table>
        <thead><tr><th scope="col">In</th><th scope="col">Beside</th><th scope="col" class="num">Width</th><th scope="col" class="num">Area</th></tr></thead>
        <tbody>${strips.map(
          (strip) => html`<tr><td>${this.nameOf(strip.zoneId)}</td><td>${this.sourceOf(strip)}</td>
            <td class="num">${formatLength(strip.widthM, units)}</td><td class="num">${formatArea(strip.areaM2, units, 4)}</td></tr>`,
        )}</tbody>
      </table>
      ${
        treated.some((zone) => zone.strips.length > 1)
          ? html`<p class="quiet">Where strips overlap, the ground is taken off once.</p>`
          : nothing
      }
      <p class="quiet">The widths are set under Yards, Settings, or by a rule under Season, Rules; the wider holds. The label and the local code decide; where they ask for more, set more.</p>
    `;
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
