import { dateOfVisit } from '../plan/heldWith';
import { daysBetween } from '../yard/calendar';
import { visitZones } from '../yard/choose';
import type { Visit, Yard } from '../yard/types';

/** Visits nearest to a day that put the same product on some of the same ground; days apart, 0 or more. */
export interface ProductNeighbours {
  readonly productId: string;
  readonly before: { readonly visit: Visit; readonly days: number } | null;
  readonly after: { readonly visit: Visit; readonly days: number } | null;
}

/** How far from a day is looked, days; common practice, no source. */
const REACH_DAYS = 60;

/** For each product of a visit put on `date`, the nearest visits before (or on that day) and after it. */
export function productNeighbours(yard: Yard, visit: Visit, date: string): readonly ProductNeighbours[] {
  const groundOf = (of: Visit, productId: string) =>
    new Set(
      of.doses
        .filter((dose) => dose.productId === productId)
        .flatMap(
          (dose) =>
            dose.laid?.zones.map((zone) => zone.zoneId) ?? visitZones(yard, of, dose).map((zone) => zone.id),
        ),
    );
  return [...new Set(visit.doses.map((dose) => dose.productId))].flatMap((productId) => {
    const own = groundOf(visit, productId);
    const near = yard.visits.flatMap((other) => {
      const day = dateOfVisit(other);
      const apart = other.id === visit.id || day === null ? null : daysBetween(day, date);
      if (apart === null || Math.abs(apart) > REACH_DAYS) return [];
      return [...groundOf(other, productId)].some((zoneId) => own.has(zoneId))
        ? [{ visit: other, apart }]
        : [];
    });
    const [before] = near.filter(({ apart }) => apart >= 0).sort((a, b) => a.apart - b.apart);
    const [after] = near.filter(({ apart }) => apart < 0).sort((a, b) => b.apart - a.apart);
    if (!before && !after) return [];
    return [
      {
        productId,
        before: before ? { visit: before.visit, days: before.apart } : null,
        after: after ? { visit: after.visit, days: -after.apart } : null,
      },
    ];
  });
}
