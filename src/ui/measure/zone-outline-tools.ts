import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { EDGE_TASKS, type EdgeTask } from '../../map/types';
import type { Zone } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { isFree } from '../parts/is-free';
import { shared } from '../parts/shared';

const TASK_WORDS: Readonly<Record<EdgeTask, string>> = {
  arc: 'Bend to an arc',
  smooth: 'Smooth corners',
  straighten: 'Straighten',
  offset: 'Offset a side',
  align: 'Align a side',
};

/** Tools along the outline of one zone: curves, set-off strips, alignment. */
@customElement('zone-outline-tools')
export class ZoneOutlineTools extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: grid; grid-template-columns: 1fr 1fr; gap: 0.35rem; }
      p { grid-column: 1 / -1; margin: 0; }
    `,
  ];

  @property({ attribute: false }) zone!: Zone;

  protected override render() {
    const { tool } = this.app.view;
    return html`
      ${EDGE_TASKS.map((task) => {
        const isOn = tool.type === 'edge' && tool.task === task;
        return html`<button aria-pressed=${isOn ? 'true' : 'false'} @click=${() => this.take(task, isOn)}>${TASK_WORDS[task]}</button>`;
      })}
      <p class="quiet">The ground along a side becomes a strip of its own (a mowing strip, a bed's edge), or the outline moves in or out.</p>
    `;
  }

  private take(task: EdgeTask, isOn: boolean): void {
    const { app, zone } = this;
    if (isOn) app.setView({ tool: { type: 'select' } });
    else if (isFree(app, zone)) app.setView({ tool: { type: 'edge', zoneId: zone.id, task } });
  }
}
