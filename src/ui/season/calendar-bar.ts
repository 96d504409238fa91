import { html, nothing, type TemplateResult } from 'lit';
import { dateOfVisit } from '../../plan/heldWith';
import { dayWords, productsWords, visitName } from '../../words/seasonWords';
import type { Issue, Visit, Yard } from '../../yard/types';
import { issueNotes } from '../parts/issue-notes';
import { shiftWords } from './calendar-model';

/** Steps by which the buttons take a held visit on, days. */
const STEPS = [
  [-7, 'A week earlier'],
  [-1, 'A day earlier'],
  [1, 'A day later'],
  [7, 'A week later'],
] as const;

/** What the keys do with a visit that has the focus. */
export const KEYS_WORDS =
  'Drag it, or: arrow keys move it by a day or a week, with Shift by a week; Enter opens it, Delete removes it.';

/** What the bar's buttons do. */
export interface BarActs {
  step(days: number): void;
  putDown(): void;
  putBack(): void;
}

/**
 * Where a visit is held, and what would be wrong there.
 * @param date null: over no day
 * @param near where else its products go on the same ground, in words
 * @param acts buttons for one held by keys; null while a pointer holds it
 */
export function heldBar(
  visit: Visit,
  from: string,
  date: string | null,
  issues: readonly Issue[],
  near: readonly string[],
  acts: BarActs | null,
): TemplateResult {
  const where = date
    ? html`would stand on <b>${dayWords(date, true)}</b>${shiftWords(from, date)}`
    : 'is over no day: let go to put it back';
  return html`<p><b>${visitName(visit)}</b> ${where}</p>
    ${date === null ? nothing : issues.length === 0 ? html`<p class="fine">Nothing speaks against this day.</p>` : issueNotes(issues)}
    ${date === null ? nothing : near.map((words) => html`<p class="near">${words}</p>`)}
    ${
      acts
        ? html`<div class="steps">${STEPS.map(([days, words]) => html`<button @click=${() => acts.step(days)}>${words}</button>`)}</div>
          <div class="row"><button class="primary" @click=${() => acts.putDown()}>Put it here</button>
          <button @click=${() => acts.putBack()}>Put it back</button></div>`
        : nothing
    }`;
}

/** A visit that has the focus or the mouse: what it is, and what speaks against it. */
export function pointedBar(
  yard: Yard,
  visit: Visit,
  issues: readonly Issue[],
  open: () => void,
): TemplateResult {
  const date = dateOfVisit(visit);
  const when = `${date ? dayWords(date, true) : 'without a day'}, ${visit.doneOn ? 'done' : 'planned'}`;
  return html`<p><b>${visitName(visit)}</b>, ${when}: ${productsWords(yard, visit) || 'nothing to put out yet'}.</p>
    <div class="row"><button @click=${open}>Open</button>${
      visit.doneOn === null ? html`<span class="keys">${KEYS_WORDS}</span>` : nothing
    }</div>
    ${issueNotes(issues)}`;
}

/** Whether a visit is to be removed. The first button has the id `remove`. */
export function askBar(
  visit: Visit,
  { remove, keep }: { readonly remove: () => void; readonly keep: () => void },
): TemplateResult {
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape') keep();
  };
  const lost = visit.doneOn === null ? '' : 'What was put down on it leaves the ledger too.';
  return html`<div role="alertdialog" aria-label="Remove a visit" @keydown=${onKey}>
    <p><b>Remove “${visitName(visit)}”?</b> ${lost} Undo brings it back.</p>
    <div class="row"><button class="danger" id="remove" @click=${remove}>Remove it</button>
    <button @click=${keep}>Keep it</button></div></div>`;
}
