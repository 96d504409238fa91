import { css, html, svg, type TemplateResult } from 'lit';
import type { DoseCoverage } from '../../cover/passTypes';
import { VESSEL_HATCHES, VESSEL_INKS, vesselHatchOf } from '../../draft/vesselHatches';
import { sampleOfLine, WALK_INKS, WALK_LINES, walkLineOf } from '../../draft/walkLines';
import { WALK_KEY_WORDS } from '../../words/passWords';
import type { Theme } from '../theme';

/** Styles of the key, for the components that show it. */
export const walkKeyStyles = css`
  svg.swatch { display: block; width: 1.75rem; height: 1.25rem; flex: none; }
  svg.line { display: block; width: 3rem; height: 0.75rem; flex: none; }
  ul.key { list-style: none; margin: 0.25rem 0 0.5rem; padding: 0; display: grid; grid-template-columns: repeat(auto-fill, minmax(10.5rem, 1fr)); gap: 0.35rem 0.5rem; }
  ul.key li { display: flex; gap: 0.5rem; align-items: center; font-size: var(--text-small); line-height: 1.2; }
`;

/** A small piece of the ground that a vessel does, as it is drawn on the map. @param index from 0 */
export function vesselSwatch(index: number, theme: Theme): TemplateResult {
  const id = vesselHatchOf(index);
  const hatch = VESSEL_HATCHES[id];
  const { ink, tint } = VESSEL_INKS[id][theme];
  return html`<svg class="swatch" viewBox="0 0 28 20" aria-hidden="true">
    <defs>
      <pattern id=${`vessel-${index}`} width=${hatch.width} height=${hatch.height} patternUnits="userSpaceOnUse">
        ${hatch.lines.map((d) => svg`<path d=${d} fill="none" stroke=${ink} stroke-width=${hatch.strokeWidth} />`)}
        ${hatch.dots.map(([x, y, r]) => svg`<circle cx=${x} cy=${y} r=${r} fill=${ink} />`)}
      </pattern>
    </defs>
    <rect x="1" y="1" width="26" height="18" fill=${tint} fill-opacity="0.3" />
    <rect x="1" y="1" width="26" height="18" fill=${`url(#vessel-${index})`} stroke=${ink} stroke-width="1.5" />
  </svg>`;
}

/** What each line of a walk on the map means; only those it has. */
export function walkKey(dose: DoseCoverage, theme: Theme): TemplateResult {
  const present = new Set(dose.legs.map(walkLineOf));
  if (dose.hose !== null) present.add('hose');
  const { ink, hose } = WALK_INKS[theme];
  const lines = Object.values(WALK_LINES).filter(({ id }) => present.has(id));
  return html`<ul class="key" aria-label="Lines on the drawing">${lines.map(
    ({ id, width, dash }) => html`<li>
      <svg class="line" viewBox="0 0 48 12" aria-hidden="true"><path d=${sampleOfLine(id, 1, 6, 46)} fill="none" stroke=${id === 'hose' ? hose : ink}
        stroke-width=${width} stroke-dasharray=${dash.join(' ')} stroke-linecap=${id === 'carry' ? 'round' : 'butt'} /></svg>${WALK_KEY_WORDS[id]}</li>`,
  )}</ul>`;
}
