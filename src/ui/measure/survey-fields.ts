import { html, nothing, type TemplateResult } from 'lit';
import { suggestionWords } from '../../words/surveyWords';
import { SURVEY_WORDS } from '../../words/zoneWords';
import { SUGGESTED_SIGMA_M } from '../../yard/defaults';
import { SURVEY_METHODS, type Survey, type SurveyMethod } from '../../yard/types';
import type { AppController } from '../app-controller';
import { fieldValue } from '../parts/app-part';
import { surveyNow } from './drawn-survey';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';

/** Largest error of scale that can be typed, percent. */
const MOST_SCALE_PCT = 50;

/**
 * Fields of how corners were found and how well, with the error suggested for them; for a grid of two
 * columns whose class `whole` spans both.
 * @param set gets each change, under the name of its undo step
 */
export function surveyFields(
  app: AppController,
  survey: Survey,
  set: (label: string, survey: Survey) => void,
): TemplateResult {
  const { method, vertexSigmaM, scaleSigma, source } = survey;
  return html`
    ${selectField<SurveyMethod>('How measured', method, SURVEY_METHODS, SURVEY_WORDS, (next) =>
      set('Change how measured', methodSurvey(app, survey, next)),
    )}
    <label class="whole">Measured by<input autocomplete="off" .value=${source} placeholder="such as: long tape"
      @change=${(event: Event) => set('Change how measured', { ...survey, source: fieldValue(event).trim() })} /></label>
    <quantity-field label="Corner error, one sigma" quantity="length" .system=${app.units} .value=${vertexSigmaM} .min=${0} .max=${100}
      @quantity-change=${({ detail }: CustomEvent<QuantityChange>) => {
        if (detail.valueSi !== null) set('Change corner error', { ...survey, vertexSigmaM: detail.valueSi });
      }}></quantity-field>
    <number-field label="Scale error, one sigma" suffix="%" .scale=${100} .min=${0} .max=${MOST_SCALE_PCT} .value=${scaleSigma}
      @number-change=${({ detail }: CustomEvent<NumberChange>) => {
        if (detail.value !== null) set('Change scale error', { ...survey, scaleSigma: detail.value });
      }}></number-field>
    ${method === 'walked' ? html`<p class="quiet whole">From a walk, the corner error is half the ± that the walk showed for its corners: one standard deviation, where that was two.</p>` : nothing}
    ${suggestion(app, survey, set)}
    <p class="quiet whole">Corner error: how far off a corner may be, as one standard deviation in each direction (half of a ±). Scale error: how far
      off every length may be at once, from a tape or a picture; zones measured by the same thing share it. Both give the ± of the area.</p>
  `;
}

/** What a method begins with. Without a picture nothing tells how well one was traced: then the error stays, and is the usual one at least. */
function methodSurvey(app: AppController, before: Survey, method: SurveyMethod): Survey {
  const { survey } = surveyNow(app, method);
  if (survey.method === method) return survey;
  return { ...before, method, vertexSigmaM: Math.max(before.vertexSigmaM, SUGGESTED_SIGMA_M[method]) };
}

function suggestion(app: AppController, survey: Survey, set: (label: string, survey: Survey) => void) {
  const suggested = surveyNow(app, survey.method);
  if (suggested.survey.method !== survey.method)
    return html`<p class="quiet whole">For a suggestion, choose the picture it was traced over under “Ground under the drawing”.</p>`;
  const next = { ...suggested.survey, source: suggested.survey.source || survey.source };
  const isSame =
    next.vertexSigmaM === survey.vertexSigmaM &&
    next.scaleSigma === survey.scaleSigma &&
    next.source === survey.source;
  return html`<p class="quiet whole">Suggested: ${suggestionWords(suggested, app.units)}.</p>
    ${isSame ? nothing : html`<button class="whole" @click=${() => set('Take suggested error', next)}>Take the suggested error</button>`}`;
}
