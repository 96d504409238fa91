import type { DoseFigures, VisitFigures } from '../plan/types';
import type { LedgerEntry } from './types';

/**
 * What the doses of all visits lay on each zone. A dose that is done counts by what was really used, spread
 * over its zones by area; doses of unknown density or on no ground are left out (they carry an issue of their own).
 */
export function ledgerEntries(visits: readonly VisitFigures[]): readonly LedgerEntry[] {
  return visits.flatMap(({ visit, doses }) =>
    doses.flatMap((figures): LedgerEntry[] => {
      const { nutrientKgPerM2, solubleNKgPerM2, elementKgPerM2, dose } = figures;
      if (nutrientKgPerM2 === null || solubleNKgPerM2 === null || elementKgPerM2 === null) return [];
      const share = visit.doneOn === null ? 1 : usedShare(figures);
      const scaled = <T extends Readonly<Partial<Record<string, number>>>>(rates: T): T =>
        Object.fromEntries(Object.entries(rates).map(([key, value]) => [key, (value ?? 0) * share])) as T;
      return figures.zones.flatMap((zone): LedgerEntry | [] =>
        zone.areaM2 > 0
          ? {
              visitId: visit.id,
              doseId: dose.id,
              productId: dose.productId,
              zoneId: zone.zoneId,
              date: visit.doneOn ?? visit.date,
              isDone: visit.doneOn !== null,
              areaM2: zone.areaM2,
              nutrientKgPerM2: scaled(nutrientKgPerM2),
              solubleNKgPerM2: solubleNKgPerM2 * share,
              elementKgPerM2: scaled(elementKgPerM2),
            }
          : [],
      );
    }),
  );
}

/** Product really used over product planned; 1 where nothing else is told. */
function usedShare({ dose, amount }: DoseFigures): number {
  const { actual } = dose;
  return actual !== null && actual.unit === amount.unit && amount.value > 0 ? actual.value / amount.value : 1;
}
