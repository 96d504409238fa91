import type { Amount, DoneRecord, Visit, VisitDose } from '../yard/types';
import { elementRates, nutrientRates, solubleNitrogen } from './nutrients';
import { convertAmount } from './rate';
import type { DoseFigures, LaidDose, LaidRates } from './types';

/** What is kept of a dose when its visit is marked done: name, analysis, amount and ground as planned on that day. */
export function doneRecord({ product, amount, zones }: DoseFigures): DoneRecord {
  return {
    productName: product.name,
    useName: product.otherUses.length > 0 ? product.useName : '',
    planned: amount,
    densityKgPerL: product.densityKgPerL,
    analysis: product.analysis,
    zones: zones.flatMap(({ zoneId, name, areaM2 }) => (areaM2 > 0 ? [{ zoneId, name, areaM2 }] : [])),
  };
}

/** The record a dose counts by: its own once it is done, and nothing of today's label or ground. */
export function recordOf(visit: Visit, dose: VisitDose): DoneRecord | null {
  return visit.doneOn === null ? null : dose.laid;
}

/**
 * A dose as it counts. Where it is done what was really used is spread over its ground by area, whichever
 * measure it was told in; a weight needs no density, as percentages are by weight. In the other measure, where
 * no density turns what was told round, it counts as planned.
 * @param figures of today's plan; null where it cannot be planned
 * @param isReal false: as planned, whatever was really used
 * @returns null without a record and without figures
 */
export function laidDose(
  visit: Visit,
  dose: VisitDose,
  figures: DoseFigures | null,
  isReal = true,
): LaidDose | null {
  const record = recordOf(visit, dose) ?? (figures && doneRecord(figures));
  if (record === null) return null;
  const { analysis, densityKgPerL, planned } = record;
  const told = isReal && visit.doneOn !== null ? dose.actual : null;
  const zones = record.zones.filter((zone) => zone.areaM2 > 0);
  const areaM2 = zones.reduce((sum, zone) => sum + zone.areaM2, 0);
  const perM2 = (unit: Amount['unit']): number | null => {
    if (areaM2 === 0) return 0;
    const amount =
      (told && convertAmount(told, unit, densityKgPerL)) ?? convertAmount(planned, unit, densityKgPerL);
    return amount && amount.value / areaM2;
  };
  const kgPerM2 = perM2('kg');
  return {
    doseId: dose.id,
    productId: dose.productId,
    productName: record.productName,
    zones,
    kgPerM2,
    lPerM2: perM2('L'),
    rates: ratesOf(analysis, kgPerM2),
    isSilentOnSlow: analysis.slowNPctOfN === null,
    isUseUnread: told !== null && convertAmount(told, planned.unit, densityKgPerL) === null,
  };
}

/** Percent by weight of what lies on a square metre; null without a weight where the label names any. */
function ratesOf(analysis: DoneRecord['analysis'], kgPerM2: number | null): LaidRates | null {
  const nutrientKgPerM2 = nutrientRates({ analysis }, { kgPerM2 });
  const elementKgPerM2 = elementRates({ analysis }, { kgPerM2 });
  if (nutrientKgPerM2 === null || elementKgPerM2 === null) return null;
  return {
    nutrientKgPerM2,
    solubleNKgPerM2: solubleNitrogen({ analysis }, nutrientKgPerM2.N),
    elementKgPerM2,
  };
}
