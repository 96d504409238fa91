import { html, type TemplateResult } from 'lit';
import { KIND_WORDS, KINDS_TO_DRAW, MOWING_WORDS } from '../../words/zoneWords';
import { MOWING_CLASSES, type MowingClass, type ZoneKind } from '../../yard/types';
import type { AppController } from '../app-controller';
import { fieldValue } from './app-part';

/** Value of the choice that is no kind of ground. */
const OTHER = 'other-choice';

/** One more choice beside the kinds of ground, which are no zone's. `set` is told of each choice. */
export interface OtherChoice {
  readonly words: string;
  readonly isChosen: boolean;
  set(isChosen: boolean): void;
}

/** The kind of the next zone, the same as in the bar of the drawing, as a field of a form. */
export function groundChoice(
  app: AppController,
  label = 'Kind of ground',
  other: OtherChoice | null = null,
): TemplateResult {
  const { kind, mowing } = app.options;
  const ground = kind === 'turf' ? `turf/${mowing}` : kind;
  const chosen = other?.isChosen ? OTHER : ground;
  const choices = KINDS_TO_DRAW.flatMap((each): (readonly [string, string])[] =>
    each === 'turf'
      ? MOWING_CLASSES.toReversed().map((m) => [
          `turf/${m}`,
          `${KIND_WORDS.turf}, ${MOWING_WORDS[m].toLowerCase()}`,
        ])
      : [[each, KIND_WORDS[each]]],
  );
  if (other) choices.push([OTHER, other.words]);
  const choose = (event: Event) => {
    const value = fieldValue(event);
    other?.set(value === OTHER);
    if (value === OTHER) return;
    const [next, m] = value.split('/') as [ZoneKind, MowingClass | undefined];
    app.setOptions(m ? { kind: next, mowing: m } : { kind: next });
  };
  return html`<label>${label}<select @change=${choose}>${choices.map(
    ([value, words]) => html`<option value=${value} .selected=${value === chosen}>${words}</option>`,
  )}</select></label>`;
}
