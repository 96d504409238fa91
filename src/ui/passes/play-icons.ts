import { html, type TemplateResult } from 'lit';

const PATHS = {
  play: 'M7 4L19 12L7 20Z',
  pause: 'M7 4H10V20H7ZM14 4H17V20H14Z',
  before: 'M5 5V19M18 5L9 12L18 19Z',
  after: 'M19 5V19M6 5L15 12L6 19Z',
} as const;

/** Symbol of a key of the player; the button carries the words. */
export function playIcon(name: keyof typeof PATHS): TemplateResult {
  return html`<svg viewBox="0 0 24 24" width="22" height="22" aria-hidden="true" fill="currentColor" stroke="currentColor" stroke-width="1.5" stroke-linejoin="round"><path d=${PATHS[name]} /></svg>`;
}
