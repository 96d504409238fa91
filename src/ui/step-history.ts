import type { AppController } from './app-controller';

const SHOWN_MS = 4000;

/** One step back or forward, with a brief word on what it was. */
export function stepHistory(app: AppController, way: 'undo' | 'redo'): void {
  const label = way === 'undo' ? app.session.undoLabel : app.session.redoLabel;
  if (label === null) return;
  app.session[way]();
  app.note('history', `${way === 'undo' ? 'Undone' : 'Redone'}: ${label}`);
  const { message } = app;
  setTimeout(() => {
    if (app.message === message) app.say(null);
  }, SHOWN_MS);
}
