import { css, html, LitElement } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { SheetModel } from '../../print/types';
import { shared } from '../parts/shared';

/** CSS px to a mm: 96 to the inch. */
const PX_PER_MM = 96 / 25.4;

/** The pages of a sheet on screen: as wide as there is room for, or true to size. Needs print/workSheet to be loaded. */
@customElement('sheet-preview')
export class SheetPreview extends LitElement {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .pages { overflow: auto; background: var(--line-strong); padding: 6px; }
      work-sheet { display: block; background: none; }
    `,
  ];

  @property({ attribute: false }) model: SheetModel | null = null;
  @state() private isTrueSize = false;
  @state() private roomPx = 0;
  @query('.pages') private pages!: HTMLElement;
  @query('work-sheet') private sheet!: HTMLElement | null;

  private readonly observer = new ResizeObserver(([entry]) => {
    if (entry) this.roomPx = entry.contentRect.width;
  });
  private readonly apart = new CSSStyleSheet();

  constructor() {
    super();
    this.apart.replaceSync('.ws-page:not(:last-of-type) { margin-bottom: 4mm; }');
  }

  override disconnectedCallback(): void {
    this.observer.disconnect();
    super.disconnectedCallback();
  }

  protected override updated(): void {
    this.observer.observe(this.pages);
    const { sheet, model } = this;
    if (!sheet || !model) return;
    const root = sheet.shadowRoot;
    if (root && !root.adoptedStyleSheets.includes(this.apart)) {
      root.adoptedStyleSheets = [...root.adoptedStyleSheets, this.apart];
    }
    const widthPx = model.paper.widthMm * PX_PER_MM;
    const zoom = this.isTrueSize || this.roomPx === 0 ? 1 : this.roomPx / widthPx;
    sheet.style.setProperty('width', `${model.paper.widthMm}mm`);
    sheet.style.setProperty('zoom', String(zoom));
  }

  protected override render() {
    return html`
      <label class="check"><input type="checkbox" .checked=${this.isTrueSize} @change=${(event: Event) => {
        this.isTrueSize = (event.target as HTMLInputElement).checked;
      }} />Preview at true size</label>
      <div class="pages" tabindex="0" role="region" aria-label="Preview of the pages"><work-sheet .model=${this.model}></work-sheet></div>
    `;
  }
}
