import { css } from 'lit';

/** A list whose entries open in place: name at the left, a figure at the right, words below. */
export const entryList = css`
  ul { list-style: none; margin: 0 0 0.75rem; padding: 0; border-top: 1px solid var(--line); }
  li { border-bottom: 1px solid var(--line); }
  li.chosen { box-shadow: inset 4px 0 0 var(--accent); padding: 0 0 0.75rem 0.75rem; }
  .open { display: grid; grid-template-columns: 1fr auto; gap: 0 0.75rem; width: 100%; padding: 0.5rem 0; text-align: left; border: 0; background: none; }
  .open:hover { background: var(--sheet-sunk); }
  .open b, .open .name { font-weight: 650; }
  .open .words { grid-column: 1 / -1; color: var(--ink-soft); font-size: var(--text-small); }
`;
