import { css } from 'lit';

/** Styles every component of the screen shares: type, buttons, fields, tables, notes. */
export const shared = css`
  :host { color: var(--ink); font: 400 var(--text) / 1.4 var(--font); font-variant-numeric: tabular-nums lining-nums; }
  *, *::before, *::after { box-sizing: border-box; }
  h2, h3 { margin: 0 0 0.5rem; line-height: 1.2; font-weight: 650; }
  h2 { font-size: 1.25rem; }
  h3 { font-size: 1rem; letter-spacing: 0.02em; }
  p { margin: 0 0 0.5rem; }
  .quiet { color: var(--ink-soft); font-size: var(--text-small); }
  .figure { font-size: var(--text-big); font-weight: 650; line-height: 1.1; }
  button, .button {
    min-height: var(--touch); min-width: var(--touch); padding: 0 0.75rem;
    font: inherit; color: var(--ink); background: var(--sheet);
    border: 1px solid var(--line-strong); border-radius: var(--radius); cursor: pointer;
  }
  button:hover { background: var(--sheet-sunk); }
  button[aria-pressed='true'], button.primary { background: var(--accent); color: var(--accent-ink); border-color: var(--accent); }
  button.danger { color: var(--danger); border-color: var(--danger); }
  button:disabled, button.primary:disabled, button.danger:disabled { color: var(--ink-soft); background: none; border: 1px dashed var(--line-strong); cursor: default; }
  button.plain { border-color: transparent; background: transparent; text-decoration: underline; }
  :focus-visible { outline: 3px solid var(--focus); outline-offset: 1px; }
  label { display: grid; gap: 0.15rem; font-size: var(--text-small); color: var(--ink-soft); }
  label.check { display: flex; align-items: center; gap: 0.5rem; min-height: var(--touch); color: var(--ink); font-size: var(--text); }
  label.check > input { flex: none; }
  input[type='checkbox'], input[type='radio'] { width: 1.35rem; height: 1.35rem; accent-color: var(--accent); }
  input:not([type='checkbox'], [type='radio']), select, textarea {
    min-height: var(--touch); width: 100%; padding: 0 0.5rem; font: inherit; font-size: 1rem;
    color: var(--ink); background: var(--sheet); border: 1px solid var(--line-strong); border-radius: var(--radius);
  }
  textarea { padding: 0.5rem; min-height: 4.5rem; }
  [aria-invalid='true'] { border-color: var(--danger); border-width: 2px; }
  table { width: 100%; border-collapse: collapse; }
  th, td { padding: 0.3rem 0.5rem 0.3rem 0; text-align: left; border-bottom: 1px solid var(--line); vertical-align: top; }
  th { font-size: var(--text-small); font-weight: 600; color: var(--ink-soft); }
  td.num, th.num { text-align: right; white-space: nowrap; }
  .row { display: flex; flex-wrap: wrap; gap: var(--gap); align-items: end; }
  .note { border-left: 4px solid var(--line-strong); background: var(--sheet-sunk); padding: 0.5rem 0.75rem; margin: 0 0 0.5rem; }
  .note.warning { border-color: var(--warn); background: var(--warn-ground); }
  .note.error { border-color: var(--danger); background: var(--danger-ground); }
  .visually-hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
`;
