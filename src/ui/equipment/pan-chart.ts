import { css, html, nothing, svg, type TemplateResult } from 'lit';
import { panReadings, type Readings } from '../../pace/calibrate/readings';
import { swathOfPans } from '../../pace/calibrate/swathOfPans';
import { formatLength } from '../../units/format';
import type { UnitSystem } from '../../yard/types';

const WIDTH = 330;
const BASE = 96;
const TALL = 78;
const SIDE = 16;

/** Styles of the chart, for the component that shows it. */
export const panChartStyles = css`
  svg.pans { display: block; width: 100%; height: auto; max-height: 10rem; margin-bottom: 0.5rem; background: var(--sheet); border: 1px solid var(--line); }
  .pans .pan { fill: var(--sheet-sunk); stroke: var(--ink); stroke-width: 1.5; }
  .pans .half { fill: none; stroke: var(--accent); stroke-width: 1.5; stroke-dasharray: 5 3; }
  .pans .tick { fill: none; stroke: var(--ink); stroke-width: 1.5; }
  .pans text { fill: var(--ink); font-size: 12px; font-weight: 600; text-anchor: middle; }
`;

/** The row of pans as it was filled, with half of the middle and the swath; nothing until every pan is read. */
export function panChart(readings: Readings, units: UnitSystem): TemplateResult | typeof nothing {
  const held = panReadings(readings);
  const { apartM } = readings;
  const most = Math.max(...held);
  if (apartM === undefined || held.length < 3 || held.length !== readings.pans || !(most > 0)) return nothing;
  const middle = (held.length - 1) / 2;
  const { leftM, rightM, swathM } = swathOfPans(held, apartM);
  const pitch = (WIDTH - 2 * SIDE) / held.length;
  const centre = (at: number) => SIDE + (at + 0.5) * pitch;
  const place = (fromMiddleM: number) => centre(middle + fromMiddleM / apartM).toFixed(1);
  const halfY = BASE - ((held[middle] ?? 0) / 2 / most) * TALL;
  const words = swathM === null ? '' : `, ${formatLength(swathM, units)} apart`;
  const label = `What the pans hold, from left to right, with half of the middle one and where it is reached${words}.`;
  return html`<svg class="pans" viewBox="0 0 ${WIDTH} 128" role="img" aria-label=${label}>
    ${held.map((value, i) => {
      const height = (value / most) * TALL;
      const x = centre(i) - pitch * 0.36;
      return svg`<rect class="pan" x=${x.toFixed(1)} y=${(BASE - height).toFixed(1)} width=${(pitch * 0.72).toFixed(1)} height=${height.toFixed(1)} />`;
    })}
    <path class="tick" d="M${SIDE} ${BASE}H${WIDTH - SIDE}" />
    <path class="half" d="M${SIDE} ${halfY.toFixed(1)}H${WIDTH - SIDE}" />
    ${[leftM === null ? null : -leftM, rightM].map((at) => (at === null ? nothing : svg`<path class="tick" d=${`M${place(at)} ${(halfY - 6).toFixed(1)}V${BASE + 10}`} />`))}
    ${
      swathM === null || leftM === null || rightM === null
        ? nothing
        : svg`<path class="tick" d=${`M${place(-leftM)} ${BASE + 6}H${place(rightM)}`} /><text x=${place((rightM - leftM) / 2)} y=${BASE + 22}>${formatLength(swathM, units)}</text>`
    }
  </svg>`;
}
