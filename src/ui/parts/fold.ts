import { css } from 'lit';

/** A section that folds away under its heading. */
export const fold = css`
  details.fold { border-top: 1px solid var(--line); }
  details.fold:last-of-type { border-bottom: 1px solid var(--line); }
  details.fold > summary { display: flex; align-items: center; gap: 0.5rem; min-height: var(--touch); cursor: pointer; font-weight: 650; list-style: none; }
  details.fold > summary::-webkit-details-marker { display: none; }
  details.fold > summary::before { content: '+'; width: 1rem; font-weight: 400; font-size: 1.25rem; line-height: 1; }
  details.fold[open] > summary::before { content: '−'; }
  details.fold[open] { padding-bottom: 0.75rem; }
`;
