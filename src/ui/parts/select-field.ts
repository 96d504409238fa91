import { html, type TemplateResult } from 'lit';
import { fieldValue } from './app-part';

/** A labelled choice among fixed values. `now` is the value chosen; `set` gets the next. */
export function selectField<T extends string>(
  label: string,
  now: T,
  values: readonly T[],
  words: Readonly<Record<T, string>>,
  set: (value: T) => void,
): TemplateResult {
  return html`<label>${label}<select @change=${(event: Event) => set(fieldValue(event) as T)}>
    ${values.map((value) => html`<option value=${value} .selected=${value === now}>${words[value]}</option>`)}
  </select></label>`;
}
