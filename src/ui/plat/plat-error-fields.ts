import { html, type TemplateResult } from 'lit';
import type { UnitSystem } from '../../yard/types';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { PLAT_SOURCES, type PlatDraft, type PlatSource, sigmaOf } from './plat-draft';
import type { PlatReading } from './plat-reading';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';

const SOURCE_WORDS: Readonly<Record<PlatSource, string>> = {
  survey: 'a recorded survey',
  tape: 'your own tape, corners by eye',
};

/** The fold of how well the figures are known: where they come from, and the errors of calls and corners. */
export function platErrorFields(
  draft: PlatDraft,
  reading: PlatReading,
  system: UnitSystem,
  sayLength: (m: number) => string,
  change: (part: Partial<PlatDraft>) => void,
): TemplateResult {
  const us = system === 'us';
  const sigma = sigmaOf(draft, system);
  return html`<details class="fold"><summary>How well the figures are known</summary><div class="fields">
      <div class="whole">${selectField('They come from', draft.source, PLAT_SOURCES, SOURCE_WORDS, (source) => change({ source, sigma: null, vertexSigmaM: null }))}</div>
      <number-field label="Direction, one sigma" suffix="′" .scale=${60} .min=${0} .max=${600} .value=${sigma.angleDeg}
        @number-change=${(event: CustomEvent<NumberChange>) => event.detail.value !== null && change({ sigma: { ...sigma, angleDeg: event.detail.value } })}></number-field>
      <quantity-field label="Length, one sigma" quantity="length" .system=${system} unit=${us ? 'ft' : 'cm'} .min=${0} .max=${10} .value=${sigma.lengthM}
        @quantity-change=${(event: CustomEvent<QuantityChange>) => event.detail.valueSi !== null && change({ sigma: { ...sigma, lengthM: event.detail.valueSi } })}></quantity-field>
      <quantity-field class="whole" label="Each corner, one sigma (empty: reckoned)" quantity="length" optional .system=${system} unit=${us ? 'ft' : 'cm'} .min=${0} .max=${100}
        hint=${reading.laid && draft.vertexSigmaM === null ? `reckoned: ${sayLength(reading.vertexSigmaM)}` : ''} .value=${draft.vertexSigmaM}
        @quantity-change=${(event: CustomEvent<QuantityChange>) => change({ vertexSigmaM: event.detail.valueSi })}></quantity-field>
      <p class="quiet whole">Reckoned from the two above by propagation of errors, or from the gap where that says more: about a fifth of a gap that is spread. The ± of the area is two sigma.</p>
    </div></details>`;
}
