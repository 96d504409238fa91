import { css } from 'lit';

/** Figures of a walk while another is laid: grey, though not at once, so that a walk that is laid in no time does not flicker. */
export const oldFigures = css`
  .old { opacity: 0.4; pointer-events: none; transition: opacity 0s 0.15s; }
`;
