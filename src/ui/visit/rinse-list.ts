import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { RinseEdge } from '../../cover/types';
import { formatLength } from '../../units/format';
import { EDGE_WORK_WORDS, edgeKey, nearWords, STAIN_WORDS } from '../../words/edgeWords';
import { groundName, MATERIAL_WORDS, zoneName } from '../../words/zoneWords';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';
import { groupRinseEdges, sumLengths } from './rinse-groups';

/** Every stretch of hardscape that product can reach, numbered as on the map. */
@customElement('rinse-list')
export class RinseList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      h4 { margin: 0.75rem 0 0; font-size: 1rem; display: flex; justify-content: space-between; gap: 0.5rem; }
      ol { list-style: none; margin: 0; padding: 0; }
      li { display: grid; grid-template-columns: auto 1fr auto; gap: 0 0.5rem; padding: 0.35rem 0; border-bottom: 1px solid var(--line); }
      .number { border: 1.5px solid var(--ink); border-radius: var(--radius); min-width: 2.4rem; height: 1.7rem; padding: 0 0.3rem; display: grid; place-items: center; font-weight: 650; font-size: var(--text-small); }
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
      ${stains ? html`<p class="note warning">${STAIN_WORDS}</p>` : nothing}
      ${treatments.length === 1 && treatments[0] ? html`<p class="note">${EDGE_WORK_WORDS[treatments[0]]}</p>` : nothing}
      ${groupRinseEdges(edges).map(
        (group) => html`
          <h4><span>${zoneName({ name: group.hardscapeName, kind: 'hardscape' })}${group.material ? `, ${MATERIAL_WORDS[group.material].toLowerCase()}` : ''}</span>
            <span>${formatLength(group.lengthM, units)}</span></h4>
          <ol>${group.edges.map((edge) => this.renderEdge(edge, treatments.length > 1))}</ol>`,
      )}
    `;
  }

  private renderEdge(edge: RinseEdge, tellsWhat: boolean) {
    const { units, yard } = this.app;
    const names = edge.zoneIds.map((id) => groundName(yard.zones.find((zone) => zone.id === id)?.name ?? ''));
    const near = nearWords(edge, units);
    return html`<li>
      <span class="number">${edgeKey(edge)}</span>
      <span>beside ${names.join(', ')}${tellsWhat && !edge.near ? html`<br /><span class="quiet">${EDGE_WORK_WORDS[edge.treatment]}</span>` : nothing}</span>
      <span>${formatLength(edge.lengthM, units)}</span>
      ${near === null ? nothing : html`<p class="near">${near}</p>`}
    </li>`;
  }
}
