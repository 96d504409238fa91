import { css } from 'lit';

/** The sheet of weeks: ruled paper, the months told apart by ground and by a heavy step of ink. */
export const calendarStyles = css`
  :host { display: block; position: relative; }
  .ground-of-weeks { container: weeks / inline-size; }
  .weeks { table-layout: fixed; border: 2px solid var(--ink); }
  .weeks thead th { position: sticky; top: 0; z-index: 1; background: var(--sheet); border-bottom: 2px solid var(--ink); padding: 0.2rem 0.3rem; }
  .weeks thead th:first-child, .weeks tbody th { width: 2.6rem; }
  .weeks tbody th { padding: 0.25rem; color: var(--ink); font-size: var(--text); font-weight: 650; border-right: 2px solid var(--ink); border-bottom: 0; vertical-align: top; }
  .weeks td { height: 2.1rem; padding: 0.1rem; border: 1px solid var(--line); }
  .weeks td.even { background: color-mix(in srgb, var(--sheet-sunk) 55%, var(--sheet)); }
  .weeks td.top { border-top: 2px solid var(--ink); }
  .weeks tbody tr:not(:has(.first)) td.top { border-top: 1px solid var(--line); }
  .weeks tr:has(.first) td:not(.top) { border-bottom: 2px solid var(--ink); }
  .weeks td.first { border-left: 2px solid var(--ink); }
  .weeks td.outside .day { opacity: 0.75; }
  .weeks td.over { outline: 3px solid var(--focus); outline-offset: -3px; }
  .weeks td.today .day { font-weight: 700; color: var(--ink); text-decoration: underline; text-decoration-thickness: 2px; }
  .day { display: flex; justify-content: space-between; align-items: center; gap: 0.25rem; padding: 0 0.15rem; font-size: 0.75rem; color: var(--ink-soft); min-height: 1.1rem; }
  .barred { width: 0; height: 0.4rem; flex: 1; margin-right: -0.25rem; }
  td .chip + .chip { margin-top: 0.15rem; }
  .undated { display: grid; grid-template-columns: repeat(auto-fill, minmax(9rem, 1fr)); gap: 0.25rem; margin-bottom: 0.5rem; }
  .chip.ghost { position: fixed; z-index: 20; top: 0; left: 0; width: 8rem; pointer-events: none; opacity: 0.95; }
  .bar { position: sticky; bottom: 0; z-index: 2; margin: 0.5rem -0.25rem 0; padding: 0.5rem 0.5rem 0.25rem; background: var(--sheet); border-top: 2px solid var(--ink); max-height: 45vh; overflow: auto; }
  .bar p { margin: 0 0 0.35rem; }
  .bar .note { margin-bottom: 0.35rem; font-size: var(--text-small); }
  @media (max-width: 720px) { .bar.pointed { max-height: 20vh; } }
  .bar .row { margin-bottom: 0.35rem; }
  .bar .near { font-size: var(--text-small); }
  .bar .keys { flex: 1; font-size: var(--text-small); color: var(--ink-soft); align-self: center; }
  @media (pointer: coarse) { .bar .keys { display: none; } }
  .bar .fine { color: var(--ok); font-weight: 650; }
  .steps { display: grid; grid-template-columns: repeat(4, 1fr); gap: 0.35rem; margin-bottom: 0.35rem; }
  .steps button { padding: 0 0.25rem; line-height: 1.15; font-size: var(--text-small); }
  .key { display: flex; flex-wrap: wrap; gap: 0.4rem 1rem; align-items: center; margin: 0 0 0.5rem; font-size: var(--text-small); color: var(--ink-soft); }
  .key > span { display: inline-flex; align-items: center; gap: 0.35rem; }
  .key .swatch { width: 1.25rem; height: 1.25rem; border: 1px solid var(--line-strong); display: inline-block; }
  .chip-key { border: 1.5px dashed var(--ink-soft); padding: 0 0.35rem; }
  .chip-key.done { border-style: solid; border-color: var(--ink); background: var(--sheet-sunk); color: var(--ink); }
  .month { margin: 0.75rem 0 0; padding-bottom: 0.2rem; border-bottom: 2px solid var(--ink); }
  ol { list-style: none; margin: 0; padding: 0; }
  li { display: grid; grid-template-columns: 3rem minmax(0, 1fr); gap: 0.5rem; padding: 0.4rem 0; border-bottom: 1px solid var(--line); }
  .when { font-size: var(--text-small); color: var(--ink-soft); }
  .when b { display: block; font-size: 1.25rem; line-height: 1.1; color: var(--ink); }
  .rows { display: grid; gap: 0.4rem; }
  .row-line { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0.4rem; }
  .rows .note { margin: 0; font-size: var(--text-small); }
  .move { padding: 0 0.6rem; font-size: var(--text-small); }
  @container weeks (max-width: 520px) { .weeks thead th:first-child, .weeks tbody th { width: 2.1rem; font-size: var(--text-small); padding-inline: 0.1rem; } .weeks thead th { padding-inline: 0.1rem; } }
`;
