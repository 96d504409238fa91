import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Slip } from '../../measure/types';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import { shared } from '../parts/shared';
import './slip-list';
import './zone-group';
import './zone-list';

/** Measure: what is drawn, how large it is and how well that is known. */
@customElement('measure-panel')
export class MeasurePanel extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
    :host { display: block; }
    .slips button { color: var(--ink); background: var(--warn-ground); border-color: var(--warn); font-weight: 650; width: 100%; text-align: left; }
  `,
  ];

  /** an empty yard begins with the ways open; they stay so after the first zone. */
  private beganEmpty: boolean | null = null;

  protected override render() {
    const { app, rev } = this;
    const { zones, marks } = app.yard;
    const selected = app.view.selectedZoneIds;
    const slips = app.slips;
    const { issues } = app.session.derived.measured;
    this.beganEmpty ??= zones.length === 0;
    if (app.view.way !== null) {
      void this.loadWay();
      return html`<way-form .app=${app} .rev=${rev}></way-form>`;
    }
    return html`
      <h2>Measure</h2>
      ${slips.length > 0 ? html`<p class="slips"><button @click=${this.goToSlips}>${slipWords(slips)}</button></p>` : nothing}
      ${zones.length === 0 ? this.renderFirst() : nothing}
      ${issues.map((issue) => html`<p class="note ${issue.severity}">${issue.message}</p>`)}
      ${zones.length > 0 ? html`<zone-list .app=${app} .rev=${rev}></zone-list>` : nothing}
      ${selected.length > 1 ? html`<zone-group .app=${app} .rev=${rev}></zone-group>` : nothing}
      ${
        slips.length > 0
          ? html`<details class="fold" id="slips" open><summary>Overlaps and gaps (${slips.length})</summary>
              <slip-list .app=${app} .rev=${rev}></slip-list></details>`
          : nothing
      }
      <details class="fold" ?open=${this.beganEmpty} @toggle=${this.loadMore}><summary>Other ways to measure</summary>
        <way-list .app=${app} .rev=${rev}></way-list></details>
      <details class="fold" @toggle=${this.loadMore}><summary>Drains, wells, hose bibs, gates (${marks.length})</summary>
        <mark-list .app=${app} .rev=${rev}></mark-list></details>
      <details class="fold" @toggle=${this.loadMore}><summary>Ground under the drawing</summary>
        <base-layer-panel .app=${app} .rev=${rev}></base-layer-panel></details>
      <details class="fold" @toggle=${this.loadMore}><summary>Find a place</summary>
        <place-finder .app=${app} .rev=${rev}></place-finder></details>
    `;
  }

  /** Fetches what stands in the folds. */
  private loadMore(event: Event): void {
    if (!(event.target as HTMLDetailsElement).open) return;
    import('./measure-more').catch(() => {
      const message = 'This part could not be loaded. Check the connection, then close and open it again.';
      this.app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
    });
  }

  private async loadWay(): Promise<void> {
    try {
      await import('./way-form');
    } catch {
      const message = 'This part could not be loaded. Check the connection and open it again.';
      this.app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
      this.app.setView({ way: null });
    }
  }

  private goToSlips(): void {
    const section = this.renderRoot.querySelector<HTMLDetailsElement>('#slips');
    if (!section) return;
    section.open = true;
    section.scrollIntoView({ block: 'start' });
    section.querySelector('summary')?.focus({ preventScroll: true });
  }

  private renderFirst() {
    return html`
      <div class="note">
        <p>Nothing is drawn yet. To begin:</p>
        <ol>
          <li>Find the yard: open “Find a place” below, or choose an aerial or a picture of your own under “Ground under the drawing”. Without either, draw on the plain grid from taped lengths.</li>
          <li>Choose <b>Turf</b> in the bar of the drawing, then <b>Corners</b>, and put a point at each corner of the lawn. Draw right across beds and patios: what you draw on top is taken off.</li>
          <li>Then draw the house, drive, walks, beds and water.</li>
        </ol>
      </div>
    `;
  }
}

/** "1 overlap and 2 gaps to mend". */
function slipWords(slips: readonly Slip[]): string {
  const count = (type: Slip['type'], word: string) => {
    const number = slips.filter((slip) => slip.type === type).length;
    return number === 0 ? [] : [`${number} ${word}${number === 1 ? '' : 's'}`];
  };
  return `${[...count('overlap', 'overlap'), ...count('gap', 'gap')].join(' and ')} to mend`;
}
