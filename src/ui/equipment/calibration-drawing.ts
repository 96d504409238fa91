import { css, html, svg, type TemplateResult } from 'lit';
import type { CalibrationKind } from '../../yard/types';

/** Styles of a calibration's drawing, for the component that shows it. */
export const drawingStyles = css`
  svg.rig { display: block; width: 100%; height: auto; max-height: 9.5rem; background: var(--sheet); border: 1px solid var(--line); }
  .rig .ink { fill: none; stroke: var(--ink); stroke-width: 2; stroke-linejoin: round; stroke-linecap: round; }
  .rig .thin { fill: none; stroke: var(--ink-soft); stroke-width: 1.25; stroke-linecap: round; }
  .rig .dash { fill: none; stroke: var(--accent); stroke-width: 1.5; stroke-dasharray: 5 3; }
  .rig .full { fill: var(--sheet-sunk); stroke: var(--ink); stroke-width: 1.5; }
  .rig .solid { fill: var(--ink); stroke: none; }
  .rig text { fill: var(--ink); font-size: 12px; font-weight: 600; text-anchor: middle; }
`;

/** What each drawing shows, for those who do not see it. */
const LABELS: Readonly<Record<CalibrationKind, string>> = {
  bucket: 'A nozzle sprays into a bucket up to a mark, a watch beside it.',
  course: 'A marked piece of ground walked in passes, its length and width measured.',
  'small-plot': 'A course one swath wide, with a jug in which the same time is caught.',
  catch: 'A spreader run over a measured length, with a pan under it and a scale.',
  pans: 'A row of pans across the path of a spreader, the middle one fullest; half of it marks the swath.',
  walk: 'A straight run between two flags with footprints, timed.',
};

const flag = (x: number, y: number) =>
  svg`<path class="ink" d="M${x} ${y}V${y - 30}" /><path class="solid" d="M${x} ${y - 30}l14 5l-14 5z" />`;
const watch = (x: number, y: number) =>
  svg`<circle class="ink" cx=${x} cy=${y} r="15" /><path class="ink" d="M${x} ${y}V${y - 9}M${x} ${y}l7 4M${x - 3} ${y - 19}h6M${x} ${y - 19}v4" />`;
/** A line of measure with ticks at both ends. */
const across = (x1: number, x2: number, y: number, words: string) =>
  svg`<path class="thin" d="M${x1} ${y}H${x2}M${x1} ${y - 5}V${y + 5}M${x2} ${y - 5}V${y + 5}" /><text x=${(x1 + x2) / 2} y=${y + 15}>${words}</text>`;
const upright = (y1: number, y2: number, x: number, words: string) =>
  svg`<path class="thin" d="M${x} ${y1}V${y2}M${x - 5} ${y1}H${x + 5}M${x - 5} ${y2}H${x + 5}" /><text x=${x + 26} y=${(y1 + y2) / 2 + 4}>${words}</text>`;

const DRAWINGS: Readonly<Record<CalibrationKind, () => unknown>> = {
  bucket: () => svg`
    <path class="full" d="M104 58h84l-10 74h-64z" /><path class="dash" d="M106 76h80" /><text x="214" y="80">mark</text>
    <path class="ink" d="M34 24h44l16 8" /><path class="ink" d="M94 28l9 5l-5 9l-9 -5z" />
    <path class="thin" d="M102 40l42 84M101 42l30 84M103 39l52 82" />${watch(278, 52)}`,
  course: () => svg`
    <path class="full" d="M40 26h190v78h-190z" /><path class="dash" d="M50 42h170M220 42v22M220 64h-170M50 64v22M50 86h170" />
    ${flag(40, 26 + 78)}${flag(230, 104)}${across(40, 230, 120, 'length')}${upright(26, 104, 262, 'width')}`,
  'small-plot': () => svg`
    <path class="full" d="M30 52h200v38h-200z" /><path class="dash" d="M36 71h180M208 65l8 6l-8 6" />
    ${flag(30, 90)}${flag(230, 90)}${across(30, 230, 110, '1/128 acre')}
    <path class="ink" d="M268 74h34l-4 46h-26z" /><path class="dash" d="M270 90h30" /><path class="thin" d="M302 84q12 0 10 14q-2 10 -12 10" />`,
  catch: () => svg`
    <path class="ink" d="M118 44h56l-18 30h-20z" /><circle class="ink" cx="146" cy="92" r="10" /><path class="ink" d="M174 44l34 -18" />
    <path class="full" d="M112 106h68v8h-68z" /><path class="thin" d="M136 78l-8 26M146 78v26M156 78l8 26" />
    ${flag(34, 114)}${flag(236, 114)}${across(34, 236, 128, 'length')}
    <path class="ink" d="M266 108h46M289 108v-10M272 84h34l-6 14h-22z" />`,
  pans: () => {
    const held = [8, 18, 30, 40, 44, 40, 30, 18, 8];
    return svg`${held.map((h, i) => svg`<path class="full" d=${`M${26 + i * 30} ${90 - h}h22v${h}h-22z`} /><path class="ink" d=${`M${23 + i * 30} 90h28`} />`)}
      <path class="dash" d="M20 68H304" />${across(76, 254, 106, 'swath')}<path class="ink" d="M157 36V14M151 22l6 -8l6 8" />`;
  },
  walk: () => svg`
    ${flag(30, 84)}${flag(260, 84)}
    ${[58, 98, 138, 178, 218].map((x, i) => svg`<path class="solid" d=${`M${x} ${i % 2 ? 78 : 62}q9 -6 18 0q-9 6 -18 0z`} />`)}
    ${across(30, 260, 104, 'distance')}${watch(294, 42)}`,
};

/** Draws what is done, in ink. */
export function calibrationDrawing(kind: CalibrationKind): TemplateResult {
  return html`<svg class="rig" viewBox="0 0 330 146" role="img" aria-label=${LABELS[kind]}>${DRAWINGS[kind]()}</svg>`;
}
