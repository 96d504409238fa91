import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { guidesFor, type NitrogenGuide } from '../../need/nitrogenGuides';
import { unitChoices } from '../../units/choices';
import { formatNutrientRate } from '../../units/format';
import { guidePlaceWords, guideSourceWords, rangeWords } from '../../words/needWords';
import type { MowingClass, NutrientNeed } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';
import { sendNeedChange } from './need-change';

/** Top of the scale where no range is published, kg/m² (6 lb per 1,000 sq ft). */
const BARE_TOP = 0.03;
/** Most N of a year that a field takes, kg/m² (about 20 lb per 1,000 sq ft): more is a slip of the pen. */
const MOST = 0.1;
/** Steps of the slider over its whole length. */
const STEPS = 120;

/** The year's nitrogen among the published ranges of its grass, each drawn to one scale. Sends `need-change`. */
@customElement('guide-scale')
export class GuideScale extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      fieldset { border: 0; margin: 0; padding: 0; }
      legend { padding: 0; font-size: var(--text-small); color: var(--ink-soft); }
      .ranges { border-top: 1px solid var(--line); max-height: 21rem; overflow-y: auto; }
      .range { display: grid; grid-template-columns: auto minmax(0, 1fr) minmax(0, 1fr); gap: 0 0.5rem; align-items: center; min-height: var(--touch); border-bottom: 1px solid var(--line); color: var(--ink); font-size: var(--text-small); cursor: pointer; }
      .range b { font-weight: 650; }
      .range:has(:checked) { background: var(--sheet-sunk); }
      .bar { display: block; width: 100%; height: 1.75rem; }
      .rail { stroke: var(--line-strong); stroke-width: 1; vector-effect: non-scaling-stroke; }
      .span { stroke: var(--ink); stroke-width: 9; vector-effect: non-scaling-stroke; }
      .mine { stroke: var(--danger); stroke-width: 2.5; vector-effect: non-scaling-stroke; }
      .value { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 13rem); gap: 0.25rem 0.75rem; align-items: end; margin: 0.75rem 0 0.25rem; }
      input.slide[type='range'] { padding: 0; border: 0; background: none; accent-color: var(--accent); width: 100%; }
      @container (max-width: 24rem) { .value { grid-template-columns: 1fr; } }
    `,
  ];

  @property({ attribute: false }) need!: NutrientNeed;
  /** the one class of mowing of its ground; null where there are several or none. */
  @property({ attribute: false }) mowing: MowingClass | null = null;

  protected override render() {
    const { need, app } = this;
    const guides = guidesFor(need.speciesId, this.mowing);
    // the scale hangs on the ranges alone, so that it stands still while the value moves
    const top = Math.max(BARE_TOP, ...guides.map((guide) => guide.maxKgPerM2 * 1.15));
    const chosen = guides.find((guide) => guide.id === need.guideId);
    return html`
      ${
        guides.length === 0
          ? html`<p class="note">${need.speciesId === '' ? 'Choose the grass to see what is published for it, or type the year’s nitrogen.' : 'No range is published here for this grass: type the year’s nitrogen.'}</p>`
          : html`<fieldset><legend>Published ranges, N in a year; the tall line is your value</legend>
              <div class="ranges"><label class="range"><input type="radio" name="guide" .checked=${chosen === undefined} @change=${() => sendNeedChange(this, 'guide', { guideId: '' })} /><b>My own number</b></label>${guides.map((guide) => this.renderGuide(guide, top))}</div></fieldset>`
      }
      ${chosen ? html`<p class="quiet">${guideSourceWords(chosen)}</p>` : nothing}
      <div class="value">
        <label>Moved by hand<input class="slide" type="range" min="0" max=${STEPS} step="1" .value=${String(Math.round((need.nKgPerM2 / top) * STEPS))}
          aria-label="Nitrogen of the year, moved by hand" aria-valuetext=${formatNutrientRate(need.nKgPerM2, app.units)} @input=${(event: Event) => this.slide(Number(fieldValue(event)), top)} /></label>
        <quantity-field label="Nitrogen of the year" quantity="mass-per-area" .system=${app.units} .value=${need.nKgPerM2} .min=${0} .max=${MOST}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            if (event.detail.valueSi !== null) sendNeedChange(this, 'n', { nKgPerM2: event.detail.valueSi });
          }}></quantity-field>
      </div>
    `;
  }

  private renderGuide(guide: NitrogenGuide, top: number) {
    const { need, app } = this;
    const at = (kgPerM2: number) => Math.min(100, (100 * kgPerM2) / top);
    const { minKgPerM2: min, maxKgPerM2: max } = guide;
    // one printed number is a range without length: drawn as a short mark
    const [from, to] = max > min ? [at(min), at(max)] : [at(min) - 0.6, at(max) + 0.6];
    return html`<label class="range" title=${guideSourceWords(guide)}>
      <input type="radio" name="guide" .checked=${guide.id === need.guideId} @change=${() => this.choose(guide)} />
      <span><b>${rangeWords(min, max, app.units)}</b><br />${guidePlaceWords(guide)}</span>
      <svg class="bar" viewBox="0 0 100 28" preserveAspectRatio="none" aria-hidden="true">
        <path class="rail" d="M0 14H100" /><path class="span" d=${`M${from} 14H${to}`} /><path class="mine" d=${`M${at(need.nKgPerM2)} 1V27`} />
      </svg></label>`;
  }

  /** A value within the range stays; another goes to its middle. */
  private choose(guide: NitrogenGuide): void {
    const { minKgPerM2: min, maxKgPerM2: max } = guide;
    const isWithin = this.need.nKgPerM2 >= min && this.need.nKgPerM2 <= max;
    sendNeedChange(this, 'guide', {
      guideId: guide.id,
      ...(isWithin ? {} : { nKgPerM2: (min + max) / 2 }),
    });
  }

  /** The slider moves in round steps of the unit shown. */
  private slide(step: number, top: number): void {
    const unit = unitChoices('mass-per-area', this.app.units)[0];
    if (!unit) return;
    const round = this.app.units === 'us' ? 20 : 4;
    const shown = Math.round(unit.fromSI((step / STEPS) * top) * round) / round;
    sendNeedChange(this, 'n', { nKgPerM2: unit.toSI(shown) });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'guide-scale': GuideScale;
  }
}
