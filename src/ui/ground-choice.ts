import { html, type TemplateResult } from 'lit';
import { KIND_WORDS, KINDS_TO_DRAW, MOWING_WORDS } from '../words/zoneWords';
import { MOWING_CLASSES, type MowingClass, type ZoneKind } from '../yard/types';
import type { AppController } from './app-controller';
import { fieldValue } from './app-part';

/** The kind of the next zone, the same as in the bar of the drawing, as a field of a form. */
export function groundChoice(app: AppController): TemplateResult {
  const { kind, mowing } = app.options;
  const chosen = kind === 'turf' ? `turf/${mowing}` : kind;
  const choices = KINDS_TO_DRAW.flatMap((each): (readonly [string, string])[] =>
    each === 'turf'
      ? MOWING_CLASSES.toReversed().map((m) => [
          `turf/${m}`,
          `${KIND_WORDS.turf}, ${MOWING_WORDS[m].toLowerCase()}`,
        ])
      : [[each, KIND_WORDS[each]]],
  );
  const choose = (event: Event) => {
    const [next, m] = fieldValue(event).split('/') as [ZoneKind, MowingClass | undefined];
    app.setOptions(m ? { kind: next, mowing: m } : { kind: next });
  };
  return html`<label>Kind of ground<select @change=${choose}>${choices.map(
    ([value, words]) => html`<option value=${value} .selected=${value === chosen}>${words}</option>`,
  )}</select></label>`;
}
