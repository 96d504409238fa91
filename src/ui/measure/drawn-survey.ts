import { pictureBasis, type SuggestedSigma, suggestSigma } from '../../measure/suggestSigma';
import type { SurveyMethod } from '../../yard/types';
import type { AppController } from '../app-controller';

/** The survey suggested for corners made now: by the base layer, the map's zoom and the pointer in use. */
export function surveyNow(app: AppController, method: SurveyMethod): SuggestedSigma {
  const at = app.map?.center() ?? app.session.derived.measured.plane.origin;
  return suggestSigma({
    method,
    screenPixelM: app.map?.metresPerPixel() ?? null,
    isTouch: globalThis.matchMedia?.('(pointer: coarse)').matches ?? false,
    picture: pictureBasis(app.yard.settings.baseLayer, at[1]),
  });
}
