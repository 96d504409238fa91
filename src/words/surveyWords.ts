import { type SuggestedSigma, USUAL_PIXEL_M } from '../measure/suggestSigma';
import { formatLength, formatNumber } from '../units/format';
import type { Survey, UnitSystem } from '../yard/types';
import { SURVEY_WORDS } from './zoneWords';

type Term = SuggestedSigma['terms'][number]['what'];

function termWords(what: Term, units: UnitSystem): string {
  const words: Readonly<Record<Term, string>> = {
    pointing: 'pointing at this zoom',
    resolution: 'half a pixel of the picture',
    'unknown-resolution': `the grain of the picture, which it does not tell (taken as ${formatLength(USUAL_PIXEL_M, units)} a pixel)`,
    fit: 'how the picture lies on the ground',
    usual: 'the usual value for this way',
  };
  return words[what];
}

/** How a suggested corner error comes about: "6 in: 4 in from pointing at this zoom, 4.5 in from …". */
export function suggestionWords({ survey, terms }: SuggestedSigma, units: UnitSystem): string {
  const whole = formatLength(survey.vertexSigmaM, units);
  const [only] = terms;
  if (only && terms.length === 1) return `${whole}, ${termWords(only.what, units)}`;
  return `${whole}: ${terms.map((term) => `${formatLength(term.sigmaM, units)} from ${termWords(term.what, units)}`).join(', ')}`;
}

/** "Taped on the ground, corners good to 2 in, scale to 0.5 %". */
export function surveyWords({ method, vertexSigmaM, scaleSigma, source }: Survey, units: UnitSystem): string {
  const scale = scaleSigma > 0 ? `, scale to ${formatNumber(scaleSigma * 100, 2)} %` : '';
  const by = source === '' ? '' : ` (${source})`;
  return `${SURVEY_WORDS[method]}${by}, corners good to ${formatLength(vertexSigmaM, units)}${scale}`;
}
