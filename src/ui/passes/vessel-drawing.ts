import { css, html, svg, type TemplateResult } from 'lit';
import type { Vessel } from '../../cover/passTypes';

/** Outlines on a field of 32 by 44, open at no side; and where their content begins and ends, from above. */
const SHAPES = {
  bottle: { path: 'M12 2H20V9C20 12 28 12 28 18V42H4V18C4 12 12 12 12 9Z', top: 10, foot: 42 },
  bag: { path: 'M6 3L8 6L4 12V42H28V12L24 6L26 3Z', top: 8, foot: 42 },
  tank: { path: 'M11 2H21V6H27Q30 6 30 9V39Q30 42 27 42H5Q2 42 2 39V9Q2 6 5 6H11Z', top: 7, foot: 42 },
  hopper: { path: 'M1 5H31L24 34H19V42H13V34H8Z', top: 6, foot: 42 },
} as const;

/** Styles of a drawn vessel, for the component that shows it. */
export const vesselStyles = css`
  svg.vessel { display: block; width: 32px; height: 44px; flex: none; }
  .vessel .ground { fill: var(--sheet); stroke: none; }
  .vessel .outline { fill: none; stroke: var(--ink); stroke-width: 2; stroke-linejoin: round; }
  .vessel .stripe { stroke: var(--ink); stroke-width: 1.25; }
  .vessel .content { fill: var(--accent); fill-opacity: 0.22; }
  .vessel .level { stroke: var(--ink); stroke-width: 2; }
  .vessel .quarter { stroke: var(--ink); stroke-width: 1; }
`;

function shapeOf({ kind, full }: Vessel): keyof typeof SHAPES {
  if (kind === 'tank-load') return 'tank';
  if (kind === 'hopper-fill') return full.unit === 'kg' ? 'hopper' : 'bottle';
  return full.unit === 'kg' ? 'bag' : 'bottle';
}

/** A vessel with what is left in it, hatched; the words stand beside it. @param level share of its full content, 0 to 1 */
export function drawVessel(vessel: Vessel, level: number): TemplateResult {
  const { path, top, foot } = SHAPES[shapeOf(vessel)];
  const y = (share: number) => Math.round((foot - share * (foot - top)) * 10) / 10;
  return html`<svg class="vessel" viewBox="0 0 32 44" aria-hidden="true">
    <defs>
      <clipPath id="inside"><path d=${path} /></clipPath>
      <pattern id="content" width="5" height="5" patternUnits="userSpaceOnUse"><path class="stripe" d="M-1 6L6 -1M-1 1L1 -1M4 6L6 4" /></pattern>
    </defs>
    <path class="ground" d=${path} />
    <g clip-path="url(#inside)">
      <rect class="content" x="0" y=${y(level)} width="32" height=${foot - y(level)} />
      <rect x="0" y=${y(level)} width="32" height=${foot - y(level)} fill="url(#content)" />
      <path class="level" d=${`M0 ${y(level)}H32`} />
      ${[0.25, 0.5, 0.75].map((share) => svg`<path class="quarter" d=${`M26 ${y(share)}H32M0 ${y(share)}H6`} />`)}
    </g>
    <path class="outline" d=${path} />
  </svg>`;
}
