import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { RinseEdge } from '../cover/types';
import { formatLength } from '../units/format';
import { AppPart } from './app-part';
import { groupRinseEdges, sumLengths } from './rinse-groups';
import { shared } from './shared';
import { EDGE_WORK_WORDS, SOURCE_WORDS } from './treat-words';
import { MATERIAL_WORDS } from './words';

/** Every stretch of hardscape that product can reach, numbered as on the map. */
@customElement('rinse-list')
export class RinseList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      h4 { margin: 0.75rem 0 0; font-size: 1rem; display: flex; justify-content: space-between; gap: 0.5rem; }
      ol { list-style: none; margin: 0; padding: 0; }
      li { display: grid; grid-template-columns: 2rem 1fr auto; gap: 0 0.5rem; padding: 0.35rem 0; border-bottom: 1px solid var(--line); }
      .number { border: 1.5px solid var(--ink); border-radius: 1rem; width: 1.7rem; height: 1.7rem; display: grid; place-items: center; font-weight: 650; font-size: var(--text-small); }
      .near { grid-column: 2 / -1; color: var(--danger); font-weight: 650; font-size: var(--text-small); margin: 0; }
    `,
  ];

  protected override render() {
    const edges = this.app.visit?.rinseEdges ?? [];
    const { units } = this.app;
    if (edges.length === 0) {
      return html`<p>No hardscape lies within reach of these products.</p>`;
    }
    const treatments = [...new Set(edges.map((edge) => edge.treatment))];
    const stains = edges.some((edge) => edge.stains);
    return html`
      <p><b>${formatLength(sumLengths(edges), units)}</b> in ${edges.length === 1 ? 'one stretch' : `${edges.length} stretches`}, numbered as on the map. Never toward a drain.</p>
      ${stains ? html`<p class="note warning"><b>Stains: </b>a product of this visit stains hardscape. Rinse at once, before it dries.</p>` : nothing}
      ${treatments.length === 1 && treatments[0] ? html`<p class="note">${EDGE_WORK_WORDS[treatments[0]]}</p>` : nothing}
      ${groupRinseEdges(edges).map(
        (group) => html`
          <h4><span>${group.hardscapeName || 'Without a name'}${group.material ? `, ${MATERIAL_WORDS[group.material].toLowerCase()}` : ''}</span>
            <span>${formatLength(group.lengthM, units)}</span></h4>
          <ol>${group.edges.map((edge) => this.renderEdge(edge, treatments.length > 1))}</ol>`,
      )}
    `;
  }

  private renderEdge(edge: RinseEdge, tellsWhat: boolean) {
    const { units, yard } = this.app;
    const names = edge.zoneIds.map(
      (id) => yard.zones.find((zone) => zone.id === id)?.name || 'ground without a name',
    );
    return html`<li>
      <span class="number">${edge.number}</span>
      <span>beside ${names.join(', ')}${tellsWhat ? html`<br /><span class="quiet">${EDGE_WORK_WORDS[edge.treatment]}</span>` : nothing}</span>
      <span>${formatLength(edge.lengthM, units)}</span>
      ${
        edge.near
          ? html`<p class="near">${SOURCE_WORDS[edge.near.sourceKind]} ${formatLength(edge.near.distanceM, units)} away: no rinse water toward it; wipe or sweep up instead.</p>`
          : nothing
      }
    </li>`;
  }
}
