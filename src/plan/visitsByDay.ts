import type { Visit } from '../yard/types';
import { dateOfVisit } from './heldWith';

/** Visits in the order of their days (see `dateOfVisit`); those of one day as they stand, those without a day last. */
export function visitsByDay(visits: readonly Visit[]): readonly Visit[] {
  return visits.toSorted((a, b) => {
    const [one, other] = [dateOfVisit(a), dateOfVisit(b)];
    if (one === other) return 0;
    if (one === null || other === null) return one === null ? 1 : -1;
    return one < other ? -1 : 1;
  });
}
