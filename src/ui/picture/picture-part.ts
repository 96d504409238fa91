import { css } from 'lit';
import { AppPart } from '../parts/app-part';
import { type PictureWork, pictureWorkOf } from './picture-work';

/** What every part of the picture form has: the work under way. */
export class PicturePart extends AppPart {
  protected get work(): PictureWork {
    return pictureWorkOf(this.app);
  }
}

/** Styles the parts of the picture form share. */
export const pictureStyles = css`
  :host { display: block; }
  p { margin: 0 0 0.5rem; }
  .whole { grid-column: 1 / -1; }
  .pair { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: end; }
  .fault { color: var(--danger); }
  .step { border: 1px solid var(--line-strong); padding: 0.6rem 0.75rem; margin: 0 0 0.6rem; display: grid; gap: 0.5rem; }
  .step p { margin: 0; }
  ol.list { list-style: none; margin: 0 0 0.6rem; padding: 0; border-top: 1px solid var(--line); }
  ol.list li { display: grid; grid-template-columns: 1fr auto; gap: 0.25rem 0.5rem; align-items: center; padding: 0.3rem 0; border-bottom: 1px solid var(--line); }
  ol.list .acts { display: flex; gap: 0.35rem; }
  ol.list .acts button { padding: 0 0.5rem; font-size: var(--text-small); }
  ol.list .out { color: var(--ink-soft); text-decoration: line-through; }
  .largest { color: var(--danger); font-weight: 650; }
`;
