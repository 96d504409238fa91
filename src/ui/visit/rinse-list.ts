import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { RINSE_DEPTH_L_PER_M2, RINSE_PACE_M_PER_S } from '../../cover/rinseWater';
import type { RinseEdge } from '../../cover/types';
import { formatArea, formatLength } from '../../units/format';
import {
  DOWNHILL_KEY_WORDS,
  DRAIN_WORDS,
  downhillWords,
  EDGE_WORK_WORDS,
  edgeKey,
  NO_FLOW_WORDS,
  nearWords,
  rinseRuleWords,
  rinseTotalsWords,
  rinseWaterWords,
  STAIN_WORDS,
} from '../../words/edgeWords';
import { groundName, MATERIAL_WORDS, zoneName } from '../../words/zoneWords';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';
import { groupRinseEdges } from './rinse-groups';

/** Every stretch of hardscape that product can reach, numbered as on the map, in walking order. */
@customElement('rinse-list')
export class RinseList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      h4 { margin: 0.75rem 0 0; font-size: 1rem; display: flex; justify-content: space-between; gap: 0.5rem; }
      ol { list-style: none; margin: 0; padding: 0; }
      li { display: grid; grid-template-columns: auto 1fr auto; gap: 0 0.5rem; padding: 0.35rem 0; border-bottom: 1px solid var(--line); }
      li.stains > span { font-weight: 700; }
      .number { border: 1.5px solid var(--ink); border-radius: var(--radius); min-width: 2.4rem; height: 1.7rem; padding: 0 0.3rem; display: grid; place-items: center; font-weight: 650; font-size: var(--text-small); }
      .stains > .number { background: var(--ink); color: var(--paper); }
      li p { grid-column: 2 / -1; margin: 0; font-size: var(--text-small); }
      .near { color: var(--danger); font-weight: 650; }
      .fall { border-left: 3px solid var(--ink); padding-left: 0.4rem; margin: 0.15rem 0 !important; }
    `,
  ];

  protected override render() {
    const edges = this.app.visit?.rinseEdges ?? [];
    const { units } = this.app;
    if (edges.length === 0) {
      return html`<p>No hardscape lies within reach of these products.</p>`;
    }
    const treatments = [...new Set(edges.map((edge) => edge.treatment))];
    const allStain = edges.every((edge) => edge.stains);
    const isFlowMissing = edges.every((edge) => edge.water === null) && edges.some((edge) => !edge.near);
    return html`
      <p><b>${rinseTotalsWords(edges, units)}</b>. In walking order, numbered as on the map.${edges.some((edge) => edge.downhill) ? ` ${DOWNHILL_KEY_WORDS}` : ''}</p>
      ${edges.some((edge) => edge.stains) ? html`<p class="note warning">${STAIN_WORDS}</p>` : nothing}
      ${treatments.length === 1 && treatments[0] ? html`<p class="note">${EDGE_WORK_WORDS[treatments[0]]}</p>` : nothing}
      ${isFlowMissing ? html`<p class="quiet">${NO_FLOW_WORDS}</p>` : nothing}
      ${groupRinseEdges(edges).map(
        (group) => html`
          <h4><span>${zoneName({ name: group.hardscapeName, kind: 'hardscape' })}${group.material ? `, ${MATERIAL_WORDS[group.material].toLowerCase()}` : ''}</span>
            ${group.edges.length > 1 ? html`<span>${formatLength(group.lengthM, units)}</span>` : nothing}</h4>
          <ol>${group.edges.map((edge) => this.renderEdge(edge, treatments.length > 1, !allStain))}</ol>`,
      )}
      ${edges.some((edge) => edge.water) ? html`<p class="quiet">${rinseRuleWords(RINSE_PACE_M_PER_S, RINSE_DEPTH_L_PER_M2, units)}</p>` : nothing}
      <p class="quiet">${DRAIN_WORDS}</p>
    `;
  }

  private renderEdge(edge: RinseEdge, tellsWhat: boolean, tellsStain: boolean) {
    const { units, yard } = this.app;
    const names = edge.zoneIds.map((id) => groundName(yard.zones.find((zone) => zone.id === id)?.name ?? ''));
    const near = nearWords(edge, units);
    const water = rinseWaterWords(edge, units);
    const downhill = downhillWords(edge, units);
    return html`<li class=${edge.stains ? 'stains' : ''}>
      <span class="number">${edgeKey(edge)}</span>
      <span>beside ${names.join(', ')}</span>
      <span>${formatLength(edge.lengthM, units)}</span>
      <p class="quiet">splash band ${formatArea(edge.bandM2, units)}${water ? `; ${water}` : ''}</p>
      ${edge.stains && tellsStain ? html`<p><b>It stains: at once.</b></p>` : nothing}
      ${tellsWhat && !edge.near ? html`<p>${EDGE_WORK_WORDS[edge.treatment]}</p>` : nothing}
      ${near === null ? nothing : html`<p class="near">${near}</p>`}
      ${downhill === null ? nothing : html`<p class="fall">${downhill}</p>`}
    </li>`;
  }
}
