import type { AppController } from './app-controller';
import { stepHistory } from './step-history';

/**
 * Ctrl/Cmd+Z, Shift+Ctrl/Cmd+Z and Ctrl+Y for the whole page. Fields keep their own undo; while a
 * shape is being drawn, undo takes back its last point.
 * @returns a function that ends it.
 */
export function listenForUndo(app: AppController): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || !app.isOpen) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    const from = event.composedPath()[0];
    const isText =
      from instanceof Element &&
      from.matches('textarea, input:not([type=checkbox], [type=radio]), [contenteditable]');
    if (isText) return;
    event.preventDefault();
    const { tool } = app.view;
    const hasPoints = (tool.type === 'draw' || tool.type === 'split') && (app.live?.points.length ?? 0) > 0;
    const isRedo = key === 'y' || event.shiftKey;
    if (isRedo) stepHistory(app, 'redo');
    else if (hasPoints) app.map?.backOnePoint();
    else stepHistory(app, 'undo');
  };
  document.addEventListener('keydown', onKey);
  return () => document.removeEventListener('keydown', onKey);
}
