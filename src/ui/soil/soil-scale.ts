import { css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { interpretSoil } from '../../soil/interpretSoil';
import { labFactor } from '../../soil/labUnits';
import type { Band, NutrientReading, SoilReading } from '../../soil/types';
import { bandsWords, figureWords, LAB_UNIT_WORDS, LEVEL_WORDS } from '../../words/soilWords';
import { ELEMENT_NAMES } from '../../yard/elementNames';
import { SOIL_LEVELS, type SoilTest } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** Width of one of the five cells, and height of the scale, in the drawing's own units. */
const CELL = 40;
const HEIGHT = 20;

/** A test read: a scale of five cells for each nutrient, the same as a table, and what the pH is called. */
@customElement('soil-scale')
export class SoilScale extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; margin-bottom: 0.75rem; }
      .scale { display: grid; grid-template-columns: 2rem 1fr; gap: 0.1rem 0.5rem; align-items: center; }
      .heads { display: grid; grid-template-columns: repeat(5, 1fr); font-size: 0.75rem; line-height: 1.1; color: var(--ink-soft); text-align: center; align-items: end; }
      b { font-weight: 650; }
      svg { display: block; width: 100%; height: auto; }
      .words { grid-column: 2; margin: 0 0 0.35rem; font-size: var(--text-small); line-height: 1.25; }
      .cell { fill: var(--sheet); stroke: var(--line-strong); stroke-width: 1; }
      .cell.gone { fill: var(--sheet-sunk); stroke-dasharray: 2 2; }
      .cell.own { stroke: var(--ink); stroke-width: 2; }
      .hatch { stroke: var(--ink-soft); stroke-width: 1; }
      .mark { fill: var(--ink); stroke: var(--sheet); stroke-width: 1.5; }
      summary { min-height: var(--touch); display: flex; align-items: center; cursor: pointer; text-decoration: underline; font-size: var(--text-small); }
      .wide { overflow-x: auto; }
    `,
  ];

  @property({ attribute: false }) test!: SoilTest;

  protected override render() {
    const reading = interpretSoil(this.test);
    const { nutrients } = reading;
    return html`
      ${
        nutrients.length === 0
          ? html`<p class="quiet">Type the lab’s figures below; what they mean is shown here.</p>`
          : html`<div class="scale">
              <span></span><div class="heads" aria-hidden="true">${SOIL_LEVELS.map((level) => html`<span>${LEVEL_WORDS[level]}</span>`)}</div>
              ${nutrients.map((one) => this.renderScale(one))}
            </div>
            ${this.renderTable(reading)}`
      }
      ${reading.phWords ? html`<p>pH ${this.test.ph}: ${reading.phWords}. Lime and sulfur go by the lab’s advice alone.</p>` : nothing}
    `;
  }

  private renderScale(one: NutrientReading) {
    const told = new Set(one.by === 'lab' ? SOIL_LEVELS : one.bandsMgPerKg.map((band) => band.level));
    const index = one.level === null ? -1 : SOIL_LEVELS.indexOf(one.level);
    const at = index < 0 ? null : CELL * (index + shareOfBand(one));
    const label = `${ELEMENT_NAMES[one.nutrient]}: ${one.words}`;
    return html`
      <b>${one.nutrient}</b>
      <svg viewBox="-1 -1 ${5 * CELL + 2} ${HEIGHT + 2}" role="img" aria-label=${label}>
        <defs><pattern id="own" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line class="hatch" x1="0" y1="0" x2="0" y2="5" /></pattern></defs>
        ${SOIL_LEVELS.map(
          (level, i) =>
            svg`<rect class=${told.has(level) ? 'cell' : 'cell gone'} x=${i * CELL} y="0" width=${CELL} height=${HEIGHT} />`,
        )}
        ${
          at === null
            ? nothing
            : svg`<rect x=${index * CELL} y="0" width=${CELL} height=${HEIGHT} fill="url(#own)" />
              <rect class="cell own" x=${index * CELL} y="0" width=${CELL} height=${HEIGHT} fill-opacity="0" />
              <path class="mark" d="M${at - 7} 1H${at + 7}L${at} 15Z" />`
        }
      </svg>
      <p class="words">${one.words}</p>
    `;
  }

  private renderTable({ nutrients, table }: SoilReading) {
    const { labUnit } = this.test;
    return html`<details><summary>The same as a table, with the bounds of the levels</summary><div class="wide"><table>
      <thead><tr><th scope="col">Nutrient</th><th scope="col" class="num">${LAB_UNIT_WORDS[labUnit]}</th><th scope="col">Level</th><th scope="col">By</th></tr></thead>
      <tbody>${nutrients.map(
        (one) => html`<tr><td>${ELEMENT_NAMES[one.nutrient]}
            ${one.bandsMgPerKg.length > 0 ? html`<br /><span class="quiet">${bandsWords(one.bandsMgPerKg, labUnit)}</span>` : nothing}</td>
          <td class="num">${figureWords(one, labUnit)}</td>
          <td>${one.level === null ? 'not rated' : LEVEL_WORDS[one.level]}</td>
          <td>${one.by === 'lab' ? 'the lab' : one.by === null ? '–' : table?.shortName}</td></tr>`,
      )}</tbody></table></div>
      ${labFactor(labUnit) === 1 ? nothing : html`<p class="quiet">1 ppm is counted as ${labFactor(labUnit)} lb/acre (2,000,000 lb of soil to the acre), as labs do.</p>`}
    </details>`;
  }
}

/** How far into its cell the mark stands, 0.1 to 0.9; the middle where only the lab's word or an open end is known. */
function shareOfBand({ by, mgPerKg, level, bandsMgPerKg }: NutrientReading): number {
  const i = bandsMgPerKg.findIndex((band: Band) => band.level === level);
  const band = bandsMgPerKg[i];
  if (by === 'lab' || mgPerKg === null || !band || band.upTo === null) return 0.5;
  const from = bandsMgPerKg[i - 1]?.upTo ?? 0;
  return Math.min(0.9, Math.max(0.1, (mgPerKg - from) / (band.upTo - from)));
}
