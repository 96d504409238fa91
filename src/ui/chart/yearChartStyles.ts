import { css } from 'lit';

/** Ink of the chart of a year: hatches and frames tell apart, never colour alone. */
export const yearChartStyles = css`
  figure { margin: 0; }
  svg { display: block; max-width: 100%; }
  svg text { fill: var(--ink); font: 400 12px var(--font); font-variant-numeric: tabular-nums; }
  .rule { stroke: var(--line); stroke-width: 1; }
  .frame { fill: none; stroke: var(--line-strong); stroke-width: 1; }
  svg .tick { text-anchor: end; dominant-baseline: middle; fill: var(--ink-soft); }
  svg .tick.growth { text-anchor: start; fill: var(--accent); }
  svg .scale-name { fill: var(--ink-soft); }
  svg .scale-name.end { text-anchor: end; fill: var(--accent); }
  svg .month { text-anchor: middle; fill: var(--ink-soft); }
  .hatch-line { fill: none; stroke: var(--ink); stroke-width: 1.2; }
  .hatch-dot { fill: var(--ink); }
  .piece .ground { fill: var(--sheet); }
  .piece.planned .hatch { opacity: 0.45; }
  .edge { fill: none; stroke: var(--ink); stroke-width: 1.25; }
  .piece.done .edge { stroke-width: 2; }
  .piece.planned .edge { stroke-width: 1.25; stroke-dasharray: 3 2; }
  svg .letter { text-anchor: middle; dominant-baseline: central; font-weight: 700; font-size: 11px; paint-order: stroke; stroke: var(--sheet); stroke-width: 4px; stroke-linejoin: round; }
  .need-under { fill: none; stroke: var(--sheet); stroke-width: 5; stroke-linejoin: round; }
  .need-line { fill: none; stroke: var(--danger); stroke-width: 2.25; stroke-linejoin: round; }
  .growth-line { fill: none; stroke: var(--accent); stroke-width: 1.75; stroke-dasharray: 6 4; }
  .sums { margin: 0.4rem 0 0.25rem; font-size: var(--text-small); }
  .key { list-style: none; margin: 0 0 0.5rem; padding: 0; display: flex; flex-wrap: wrap; gap: 0.25rem 1rem; font-size: var(--text-small); }
  .key li { display: flex; align-items: center; gap: 0.4rem; }
  .swatch { flex: none; }
  .table-box { overflow-x: auto; }
  /* on a phone the letter stands for the product; the key has its name */
  @container (max-width: 30rem) {
    .table-box .name { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
  }
  .table-box tr.product th { font-weight: 400; padding-left: 0.9rem; color: var(--ink-soft); }
  .table-box tr.product td { color: var(--ink-soft); }
  .table-box tbody tr.month th { color: var(--ink); }
  .table-box tfoot th, .table-box tfoot td { border-top: 2px solid var(--ink); font-weight: 650; color: var(--ink); }
  @media print {
    .need-line { stroke: #000; }
    .growth-line { stroke: #000; }
  }
`;
