import { render } from 'lit';
import { renderSheet } from './renderSheet';
import { sheetStyles } from './sheetStyles';
import type { SheetModel } from './types';

const ROOT_CLASS = 'ws-print-root';

/**
 * Sets the sheet up for printing: a root at the end of `host`, and styles that hide the rest on paper.
 * @param host a light-DOM element, as a rule `document.body`; the root must be a child of `body` to show
 * @returns a function that takes both away again
 */
export function mountSheet(model: SheetModel, host: HTMLElement): () => void {
  const root = document.createElement('div');
  root.className = ROOT_CLASS;
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(sheetStyles(model, `.${ROOT_CLASS}`, true));
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  host.append(root);
  render(renderSheet(model), root);
  return () => {
    root.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
  };
}
