import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { type IconName, icon } from './parts/icons';
import { shared } from './parts/shared';

export const DRAWER_HEIGHTS = ['peek', 'half', 'full'] as const;
export type DrawerHeight = (typeof DRAWER_HEIGHTS)[number];

const WORDS: Readonly<Record<DrawerHeight, string>> = {
  peek: 'Show the drawing',
  half: 'Show drawing and panel',
  full: 'Show the panel',
};
const DRAG_PX = 40;

/**
 * The panel of a narrow screen, over the lower part of the drawing, in three heights: by buttons, or
 * by dragging its head. Event `height-change` with the height wanted.
 */
@customElement('sheet-drawer')
export class SheetDrawer extends LitElement {
  static override styles = [
    shared,
    css`
      :host { display: flex; flex-direction: column; min-height: 0; background: var(--sheet); border-top: 2px solid var(--ink); }
      header { display: flex; align-items: center; gap: 0.5rem; padding-left: 0.75rem; min-height: 3rem; touch-action: none; }
      .head { flex: 1; min-width: 0; }
      .heights { display: flex; }
      .heights button { padding: 0; border-width: 0 0 0 1px; border-color: var(--line); border-radius: 0; min-height: 3rem; }
      .body { position: relative; flex: 1; min-height: 0; overflow: auto; overscroll-behavior: contain; border-top: 1px solid var(--line); }
      :host([height='peek']) .body { display: none; }
    `,
  ];

  @property({ reflect: true }) height: DrawerHeight = 'half';

  private dragFrom: number | null = null;

  protected override render() {
    return html`
      <header @pointerdown=${this.startDrag} @pointerup=${this.endDrag} @pointercancel=${() => {
        this.dragFrom = null;
      }}>
        <div class="head"><slot name="head"></slot></div>
        <div class="heights" role="group" aria-label="Height of the panel">
          ${DRAWER_HEIGHTS.map(
            (height) => html`<button aria-label=${WORDS[height]} title=${WORDS[height]}
              aria-pressed=${this.height === height ? 'true' : 'false'} @click=${() => this.want(height)}>${icon(height as IconName)}</button>`,
          )}
        </div>
      </header>
      <div class="body"><slot></slot></div>
    `;
  }

  private want(height: DrawerHeight): void {
    this.dispatchEvent(new CustomEvent<DrawerHeight>('height-change', { detail: height }));
  }

  private startDrag(event: PointerEvent): void {
    if ((event.target as Element).closest('button')) return;
    this.dragFrom = event.clientY;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
  }

  /** A drag far enough is one height up or down. */
  private endDrag(event: PointerEvent): void {
    if (this.dragFrom === null) return;
    const up = this.dragFrom - event.clientY;
    this.dragFrom = null;
    if (Math.abs(up) < DRAG_PX) return;
    const next = DRAWER_HEIGHTS[DRAWER_HEIGHTS.indexOf(this.height) + (up > 0 ? 1 : -1)];
    if (next) this.want(next);
  }
}
