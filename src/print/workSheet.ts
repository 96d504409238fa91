import { LitElement, type PropertyValues } from 'lit';
import { renderSheet } from './renderSheet';
import { sheetStyles } from './sheetStyles';
import type { SheetModel } from './types';

/** `<work-sheet .model>`: the pages on screen, true to size, for a preview. */
export class WorkSheet extends LitElement {
  static override properties = { model: { attribute: false } };
  declare model: SheetModel | null;
  private readonly own = new CSSStyleSheet();

  constructor() {
    super();
    this.model = null;
  }
  protected override createRenderRoot() {
    const root = super.createRenderRoot() as ShadowRoot;
    root.adoptedStyleSheets = [...root.adoptedStyleSheets, this.own];
    return root;
  }
  protected override willUpdate(changed: PropertyValues) {
    if (changed.has('model') && this.model) this.own.replaceSync(sheetStyles(this.model, ':host', false));
  }
  protected override render() {
    return this.model ? renderSheet(this.model) : null;
  }
}
customElements.define('work-sheet', WorkSheet);
