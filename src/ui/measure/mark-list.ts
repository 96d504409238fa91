import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { MARK_WORDS } from '../../words/zoneWords';
import { removeMark, replaceMark } from '../../yard/edits';
import { MARK_KINDS, type Mark } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { shared } from '../parts/shared';

/** Points that matter to the work: drains and wells keep a strip free, the others are for the helper. */
@customElement('mark-list')
export class MarkList extends AppPart {
  static override styles = [
    shared,
    css`
      ul { list-style: none; margin: 0; padding: 0; }
      li { display: grid; grid-template-columns: 1fr auto auto; gap: 0.35rem; align-items: end; padding: 0.35rem 0; border-bottom: 1px solid var(--line); }
      .row { margin-top: 0.5rem; }
    `,
  ];

  protected override render() {
    const { marks } = this.app.yard;
    const { tool } = this.app.view;
    return html`
      ${marks.length === 0 ? html`<p class="quiet">Mark every storm drain and well first: the plan keeps product away from them.</p>` : nothing}
      <ul>${marks.map((mark) => this.renderMark(mark))}</ul>
      <div class="row" role="group" aria-label="Put a mark">
        ${MARK_KINDS.map(
          (kind) => html`<button aria-pressed=${tool.type === 'mark' && tool.kind === kind ? 'true' : 'false'}
            @click=${() => this.app.setView({ tool: { type: 'mark', kind } })}>Add ${MARK_WORDS[kind].toLowerCase()}</button>`,
        )}
      </div>
    `;
  }

  private renderMark(mark: Mark) {
    const name = mark.name || MARK_WORDS[mark.kind];
    return html`<li>
      <label>${MARK_WORDS[mark.kind]}
        <input .value=${mark.name} autocomplete="off" @change=${(event: Event) => this.rename(mark, fieldValue(event))} /></label>
      <button aria-label=${`Show ${name}`} @click=${() => this.app.map?.goTo(mark.position, 21)}>Show</button>
      <button class="danger" aria-label=${`Delete ${name}`}
        @click=${() => this.app.dispatch('Delete mark', (yard) => removeMark(yard, mark.id))}>Delete</button>
    </li>`;
  }

  private rename(mark: Mark, name: string): void {
    this.app.dispatch('Name mark', (yard) => replaceMark(yard, { ...mark, name: name.trim() }));
  }
}
