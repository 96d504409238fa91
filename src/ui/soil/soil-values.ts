import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { labFactor } from '../../soil/labUnits';
import { LAB_UNIT_WORDS, LEVEL_WORDS } from '../../words/soilWords';
import { ELEMENT_NAMES } from '../../yard/elementNames';
import {
  SOIL_LEVELS,
  SOIL_NUTRIENTS,
  type SoilLevel,
  type SoilNutrient,
  type SoilTest,
} from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { sendSoilChange } from './soil-change';

const MAIN: readonly SoilNutrient[] = ['P', 'K', 'Ca', 'Mg', 'S'];
const SMALL = SOIL_NUTRIENTS.filter((nutrient) => !MAIN.includes(nutrient));
const RATINGS = ['', ...SOIL_LEVELS] as const;
const RATING_WORDS = { '': 'not rated', ...LEVEL_WORDS };

/** Most of any nutrient that is no slip: calcium of chalk soils is some thousands; common practice, no source. */
const MOST_MG_PER_KG = 50_000;

/** The lab's figures in the lab's unit, and its own ratings. Sends `soil-change`. */
@customElement('soil-values')
export class SoilValues extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .grid { display: grid; grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr)); gap: 0.5rem; align-items: start; margin-bottom: 0.5rem; }
    `,
  ];

  @property({ attribute: false }) test!: SoilTest;

  protected override render() {
    const { test } = this;
    const isMeasured = (nutrient: SoilNutrient) => test.mgPerKg[nutrient] !== undefined;
    return html`
      <div class="grid">${MAIN.map((nutrient) => this.renderFigure(nutrient))}</div>
      <details class="fold" ?open=${SMALL.some(isMeasured)}><summary>Micronutrients and sodium</summary>
        <div class="grid">${SMALL.map((nutrient) => this.renderFigure(nutrient))}</div></details>
      <details class="fold" ?open=${Object.keys(test.labLevels).length > 0}><summary>The lab’s own ratings</summary>
        <p class="quiet">Where the report rates a nutrient itself, its word goes before any table; only where it rates phosphorus “high”, enough, a table that calls for none still refuses it. Take the nearest of these words; a lab’s “optimum” is “high” here, “excessive” is “very high”.</p>
        <div class="grid">${SOIL_NUTRIENTS.map((nutrient) => (MAIN.includes(nutrient) || isMeasured(nutrient) ? this.renderRating(nutrient) : nothing))}</div></details>
    `;
  }

  private renderFigure(nutrient: SoilNutrient) {
    const { test } = this;
    return html`<number-field label=${`${ELEMENT_NAMES[nutrient]} (${nutrient})`} suffix=${LAB_UNIT_WORDS[test.labUnit]} optional
      .value=${test.mgPerKg[nutrient] ?? null} .scale=${labFactor(test.labUnit)} .min=${0} .max=${MOST_MG_PER_KG}
      @number-change=${(event: CustomEvent<NumberChange>) => this.setFigure(nutrient, event.detail.value)}></number-field>`;
  }

  private renderRating(nutrient: SoilNutrient) {
    return selectField<SoilLevel | ''>(
      ELEMENT_NAMES[nutrient],
      this.test.labLevels[nutrient] ?? '',
      RATINGS,
      RATING_WORDS,
      (level) => this.setRating(nutrient, level),
    );
  }

  private setFigure(nutrient: SoilNutrient, value: number | null): void {
    const { [nutrient]: _old, ...others } = this.test.mgPerKg;
    const mgPerKg = value === null ? others : { ...others, [nutrient]: value };
    sendSoilChange(this, `figure ${nutrient}`, { mgPerKg });
  }

  private setRating(nutrient: SoilNutrient, level: SoilLevel | ''): void {
    const { [nutrient]: _old, ...others } = this.test.labLevels;
    const labLevels = level === '' ? others : { ...others, [nutrient]: level };
    sendSoilChange(this, `rating ${nutrient}`, { labLevels });
  }
}
