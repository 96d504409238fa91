import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { WAYS } from '../app';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';
import { WAY_WORDS } from './way-words';

/** The ways of getting at an area beside drawing; each opens its form in this panel. */
@customElement('way-list')
export class WayList extends AppPart {
  static override styles = [
    shared,
    css`
      ul { list-style: none; margin: 0; padding: 0; display: grid; gap: 0.35rem; }
      button { width: 100%; display: grid; padding: 0.35rem 0.75rem; text-align: left; line-height: 1.25; }
      b { font-weight: 650; }
    `,
  ];

  /** corners or positions of a walk of this yard that is not finished, in words. */
  @state() private waiting = '';

  private lookedFor = '';

  protected override willUpdate(): void {
    const { yard, view } = this.app;
    const place = `${yard.id} ${view.way ?? ''}`;
    if (place === this.lookedFor) return;
    this.lookedFor = place;
    if (view.way === null) void this.findWalk(yard.id);
  }

  /** What keeps the walks is fetched only now, and without it the list is as good. */
  private async findWalk(yardId: string): Promise<void> {
    try {
      const { waitingWords } = await import('../walk/walk-words');
      const { createWalkStore } = await import('../../session/walkDraft');
      const draft = await createWalkStore().load(yardId);
      if (yardId !== this.app.yard.id) return;
      this.waiting = draft ? waitingWords(draft) : '';
    } catch {
      this.waiting = '';
    }
  }

  protected override render() {
    return html`<ul>${WAYS.map(
      (way) => html`<li><button @click=${() => this.app.setView({ way })}>
        <b>${WAY_WORDS[way].name}</b><span class="quiet">${WAY_WORDS[way].when}</span>
        ${way === 'walk' && this.waiting ? html`<b>${this.waiting}</b>` : nothing}</button></li>`,
    )}</ul>`;
  }
}
