import { html, type TemplateResult } from 'lit';

const PATHS = {
  corners: 'M4 19L8 5L20 8L17 20Z',
  rectangle: 'M3 6H21V18H3Z',
  circle: 'M12 4A8 8 0 1 0 12 20A8 8 0 1 0 12 4Z',
  freehand: 'M4 14C4 6 11 10 12 6S20 4 20 11S15 21 10 19S4 18 4 14Z',
  line: 'M4 19L11 8L20 5M4 19M2.5 17.5L5.5 20.5M18.5 3.5L21.5 6.5',
  undo: 'M9 5L4 10L9 15M4 10H14A5 5 0 0 1 14 20H10',
  redo: 'M15 5L20 10L15 15M20 10H10A5 5 0 0 0 10 20H14',
  back: 'M20 5L9 5L3 12L9 19L20 19ZM12 9L17 15M17 9L12 15',
  peek: 'M4 19H20',
  half: 'M4 12H20V20H4Z',
  full: 'M4 4H20V20H4Z',
} as const;

export type IconName = keyof typeof PATHS;

/** A small ink drawing for a button; the button carries the words. */
export function icon(name: IconName): TemplateResult {
  return html`<svg viewBox="0 0 24 24" width="22" height="22" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round" stroke-linecap="round"><path d=${PATHS[name]} /></svg>`;
}
