import { html, type TemplateResult } from 'lit';
import { DAYS_IN_MONTH, MONTH_NAMES } from '../../yard/yearDay';
import { fieldValue } from '../parts/app-part';

const two = (value: number) => String(value).padStart(2, '0');

/** A day of any year as month and day. @param yearDay MM-DD; `set` gets the next, always a day that exists */
export function yearDayField(label: string, yearDay: string, set: (yearDay: string) => void): TemplateResult {
  const [month = 1, day = 1] = yearDay.split('-').map(Number);
  const days = DAYS_IN_MONTH[month - 1] ?? 31;
  const send = (nextMonth: number, nextDay: number) =>
    set(`${two(nextMonth)}-${two(Math.min(nextDay, DAYS_IN_MONTH[nextMonth - 1] ?? 31))}`);
  return html`<div class="year-day" role="group" aria-label=${label}>
    <label>${label}<select @change=${(event: Event) => send(Number(fieldValue(event)), day)}>
      ${MONTH_NAMES.map((name, index) => html`<option value=${index + 1} .selected=${index + 1 === month}>${name}</option>`)}
    </select></label>
    <label>Day<select aria-label=${`${label}: day`} @change=${(event: Event) => send(month, Number(fieldValue(event)))}>
      ${Array.from({ length: days }, (_, index) => html`<option value=${index + 1} .selected=${index + 1 === Math.min(day, days)}>${index + 1}</option>`)}
    </select></label>
  </div>`;
}
