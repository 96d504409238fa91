import { offerSlips } from '../../session/derive';
import { findSlipsAside } from '../../session/findSlipsAside';
import type { AppController } from '../app-controller';

/**
 * Lets the list of overlaps and gaps wait, as during a drag, while they are looked for in a worker. Call
 * it in the same turn as the edit. Any further edit ends the waiting, and they are found as always.
 */
export function findSlipsLate(app: AppController): void {
  const { session } = app;
  const { yard } = session;
  app.beforeReshape = yard;
  const work = findSlipsAside(yard);
  const end = (): void => {
    unlisten();
    unlistenApp();
    work.stop();
    // a drag that began in between has made the waiting its own and ends it
    const isDragging = app.view.tool.type === 'reshape' || app.view.tool.type === 'edge';
    if (app.beforeReshape !== yard || isDragging) return;
    app.beforeReshape = null;
    app.notify();
  };
  const check = () => {
    if (app.session !== session || session.yard !== yard) end();
  };
  const unlisten = session.subscribe(check);
  const unlistenApp = app.subscribe(check);
  void work.found.then((slips) => {
    if (app.session !== session || session.yard !== yard) return;
    if (slips) offerSlips(session.derived, slips);
    end();
  });
}
