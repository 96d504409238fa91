import { html, nothing, type TemplateResult } from 'lit';
import { CLASS_WORDS } from '../../words/productWords';
import { zoneClass } from '../../yard/choose';
import { type Yard, ZONE_CLASSES } from '../../yard/types';
import { groundStrip } from './visit-chip';

/** What the marks of the calendar mean. @param hasDays days are shown, and with them those held back or barred */
export function calendarKey(yard: Yard, isDark: boolean, hasDays: boolean): TemplateResult {
  const present = ZONE_CLASSES.filter((one) => yard.zones.some((zone) => zoneClass(zone) === one));
  const isBarred = yard.rules.some((rule) => rule.isOn && rule.terms.kind === 'blackout');
  const isHeld = yard.needs.some((need) => need.hold !== null);
  return html`<p class="key"><span class="chip-key">planned</span><span class="chip-key done">✓ done</span>${present.map(
    (one) => html`<span><span class="swatch">${groundStrip([one], isDark)}</span>${CLASS_WORDS[one]}</span>`,
  )}${
    hasDays && (isBarred || isHeld)
      ? html`<span><span class="swatch"><svg class="ground" aria-hidden="true"><rect width="100%" height="100%" fill="url(#ground-barred)" /></svg></span>held back or barred</span>`
      : nothing
  }</p>`;
}
