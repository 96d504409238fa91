import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { STEPS, type Step } from './app';
import { AppPart } from './parts/app-part';
import { shared } from './parts/shared';

export const STEP_WORDS: Readonly<Record<Step, string>> = {
  measure: 'Measure',
  need: 'Need',
  shelf: 'Shelf',
  season: 'Season',
  visit: 'Visit',
  buy: 'Buy',
  sheet: 'Sheet',
  yards: 'Yards',
};

/** The steps of the job as tabs along the edge of the sheet; on a phone, the bar under the thumb. */
@customElement('step-tabs')
export class StepTabs extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      ol { display: grid; grid-auto-flow: column; grid-auto-columns: 1fr; margin: 0; padding: 0; list-style: none; }
      button { width: 100%; min-height: 3rem; padding: 0.25rem 0; border: 0; border-right: 1px solid var(--line); background: var(--sheet-sunk); display: grid; line-height: 1.15; place-content: center; justify-items: center; }
      li:last-child button { border-right: 0; }
      .place { font-size: 0.75rem; color: var(--ink-soft); }
      button[aria-current='page'] { background: var(--sheet); font-weight: 650; box-shadow: inset 0 4px 0 var(--accent); }
      @media (max-width: 820px) {
        button { min-height: 3.5rem; }
      }
    `,
  ];

  protected override render() {
    return html`
      <nav aria-label="Steps of the job">
        <ol>
          ${STEPS.map(
            (step, index) => html`<li>
              <button aria-current=${this.app.view.step === step ? 'page' : 'false'}
                @click=${() => this.choose(step)}>
                <span class="place" aria-hidden="true">${index + 1}</span><span>${STEP_WORDS[step]}</span>
              </button>
            </li>`,
          )}
        </ol>
      </nav>
    `;
  }

  private choose(step: Step): void {
    this.app.setView({ step });
    this.dispatchEvent(new CustomEvent('step-chosen', { bubbles: true, composed: true }));
  }
}
