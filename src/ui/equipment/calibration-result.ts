import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { meaningFor } from '../../pace/calibrate/meaning';
import type { CalibrationResult } from '../../pace/calibrate/types';
import { FIGURE_WORDS, figureText, meaningWords, spreadWords } from '../../words/equipmentWords';
import type { Equipment, Product } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { issueNotes } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import { useWith } from './equipment-edits';

/** What came out of a calibration so far, with how far the readings lie apart and what it means. */
@customElement('calibration-result')
export class CalibrationResultView extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      dl { margin: 0 0 0.5rem; border-top: 2px solid var(--ink); }
      dl div { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0 0.75rem; padding: 0.4rem 0; border-bottom: 1px solid var(--line); align-items: baseline; }
      dd { margin: 0; text-align: right; font-weight: 650; font-size: 1.125rem; }
      .spread { grid-column: 1 / -1; font-weight: 400; font-size: var(--text-small); color: var(--ink-soft); }
    `,
  ];

  @property({ attribute: false }) result!: CalibrationResult;
  @property({ attribute: false }) equipment!: Equipment;
  @property({ attribute: false }) product: Product | null = null;

  protected override render() {
    const { result, equipment, product } = this;
    const { units } = this.app;
    const { figures } = result;
    const use = product && useWith(product, equipment.applicator);
    const meaning = use && figures.length > 0 ? meaningFor(result, equipment, use) : null;
    return html`
      <div role="status">
      ${
        figures.length === 0
          ? html`<p class="quiet">The result shows here as soon as enough is filled in.</p>`
          : html`<dl>${figures.map((figure) => {
              const spread = spreadWords(figure, units);
              return html`<div><dt>${FIGURE_WORDS[figure.key]}</dt><dd>${figureText(figure.key, figure.value, units)}</dd>
                ${spread === null ? nothing : html`<dd class="spread">${spread}</dd>`}</div>`;
            })}</dl>`
      }
      ${meaning && use ? meaningWords(meaning, use, units).map((words) => html`<p class="note">${words}</p>`) : nothing}
      ${issueNotes(result.issues)}</div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'calibration-result': CalibrationResultView;
  }
}
