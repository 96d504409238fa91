import { dateOfVisit } from '../plan/heldWith';
import { visitsByDay } from '../plan/visitsByDay';
import { formatDay } from '../units/formatDay';
import type { Visit } from '../yard/types';

/** A visit for a person to choose. */
export interface VisitChoice {
  readonly id: string;
  readonly words: string;
}

/**
 * Visits to choose from, by day: "Light liquid 3, Wed, Apr 7", "Spring feed, done Tue, Apr 6". All with
 * their year where it is not this year's alone.
 * @param today YYYY-MM-DD
 */
export function visitChoices(visits: readonly Visit[], today: string): readonly VisitChoice[] {
  const year = today.slice(0, 4);
  const withYear = visits.some((visit) => !(dateOfVisit(visit) ?? year).startsWith(year));
  return visitsByDay(visits).map((visit) => {
    const day = dateOfVisit(visit);
    const when = day === null ? '' : `, ${visit.doneOn ? 'done ' : ''}${formatDay(day, withYear)}`;
    return { id: visit.id, words: `${visit.name.trim() || 'Visit without a name'}${when}` };
  });
}
