import { css, html, nothing, type TemplateResult } from 'lit';
import type { ReadCall } from '../../survey/plat/types';
import { callWords } from './plat-words';

/** Styles of the list of calls, for the component that shows it. */
export const platListStyles = css`
  .plat-list { max-height: 22rem; overflow: auto; border: 1px solid var(--line); border-radius: var(--radius); padding: 0 0.5rem; }
  .plat-list tbody th { width: 2rem; color: var(--ink-soft); font-weight: 600; }
  .plat-list .tie { color: var(--ink-soft); }
  .plat-list td .told { display: block; margin-top: 0.15rem; font-size: var(--text-small); color: var(--ink-soft); overflow-wrap: anywhere; }
  .plat-list td .told.warning { color: var(--warn); }
  .plat-list td .told.error { color: var(--danger); }
  .plat-list tr.faulty th { border-left: 4px solid var(--danger); padding-left: 0.35rem; color: var(--danger); }
`;

/** What was understood: every call in the standard form, under it what is to be said of it. */
export function platList(entries: readonly ReadCall[], sayLength: (m: number) => string): TemplateResult {
  return html`<div class="plat-list" tabindex="0" role="region" aria-label="What was understood"><table>
    <thead><tr><th scope="col"><abbr title="Number">No.</abbr></th><th scope="col">Direction</th><th scope="col" class="num">Length</th></tr></thead>
    <tbody>${entries.map((entry, i) => {
      const words = entry.call && callWords(entry.call, sayLength);
      const told = entry.issues.map(
        ({ message, severity }) =>
          html`<span class="told ${severity}">${severity === 'error' && words ? 'Fault: ' : ''}${message}</span>`,
      );
      return html`<tr class=${words ? (entry.role === 'tie' ? 'tie' : '') : 'faulty'}>
        <th scope="row">${i + 1}</th>
        ${
          words
            ? html`<td>${words.way}${entry.role === 'tie' ? html`<span class="told">leads to the point of beginning; no part of the outline</span>` : nothing}${told}</td>
              <td class="num">${words.length}</td>`
            : html`<td colspan="2">Not understood: <q>${entry.text}</q>${told}</td>`
        }
      </tr>`;
    })}</tbody>
  </table></div>`;
}
