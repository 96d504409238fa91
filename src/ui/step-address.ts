import { STEPS, type Step } from './app';
import type { AppController } from './app-controller';

const FIRST: Step = 'measure';

/** The step that the page's address names; the first where it names none. */
function stepInAddress(): Step {
  return STEPS.find((step) => location.hash === `#${step}`) ?? FIRST;
}

/**
 * Keeps the step in the page's address: it survives a reload, and the browser's Back goes to the step before.
 * To be called once, before a yard is opened.
 */
export function followAddress(app: AppController): void {
  const read = () => {
    if (app.view.step !== stepInAddress()) app.setView({ step: stepInAddress() });
  };
  read();
  addEventListener('popstate', read);
  app.subscribe(() => {
    const { step } = app.view;
    if (step === stepInAddress()) return;
    history.pushState(null, '', step === FIRST ? location.pathname + location.search : `#${step}`);
  });
}
