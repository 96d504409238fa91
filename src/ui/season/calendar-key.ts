import { html, nothing, type TemplateResult } from 'lit';
import { CLASS_WORDS } from '../../words/productWords';
import { zoneClass } from '../../yard/choose';
import { type Yard, ZONE_CLASSES } from '../../yard/types';
import type { DayCause } from './calendar-model';
import { groundStrip } from './visit-chip';

/** What the marks of the calendar mean. @param hasDays days are shown, and with them those held back or barred */
export function calendarKey(yard: Yard, isDark: boolean, hasDays: boolean): TemplateResult {
  const present = ZONE_CLASSES.filter((one) => yard.zones.some((zone) => zoneClass(zone) === one));
  const isBarred = yard.rules.some((rule) => rule.isOn && rule.terms.kind === 'blackout');
  const isHeld = yard.needs.some((need) => need.hold !== null);
  return html`<p class="key"><span class="chip-key">planned</span><span class="chip-key done">✓ done</span>${present.map(
    (one) => html`<span><span class="swatch">${groundStrip([one], isDark)}</span>${CLASS_WORDS[one]}</span>`,
  )}${hasDays && isBarred ? swatch('barred', 'barred by a rule') : nothing}${hasDays && isHeld ? swatch('held', 'nitrogen held back') : nothing}</p>`;
}

function swatch(kind: 'barred' | 'held', words: string): TemplateResult {
  return html`<span><span class="swatch"><svg class="ground" aria-hidden="true"><rect width="100%" height="100%" fill=${`url(#ground-${kind})`} /></svg></span>${words}</span>`;
}

/** The marks of a day that is barred or held back, and why for those who hear it. */
export function causeMarks(causes: readonly DayCause[]): TemplateResult | typeof nothing {
  if (causes.length === 0) return nothing;
  const kinds = [...new Set(causes.map((cause) => cause.kind))];
  return html`${kinds.map(
    (kind) =>
      html`<svg class="barred" aria-hidden="true"><rect width="100%" height="100%" fill=${`url(#ground-${kind})`} /></svg>`,
  )}<span class="visually-hidden"> ${causes.map((cause) => cause.words).join('; ')}</span>`;
}
