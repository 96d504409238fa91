import { formatArea, formatDuration, formatLength, formatTemperature } from '../units/format';
import type { Issue, Product, Visit, VisitDose, Yard } from '../yard/types';
import { isLiquid } from './rate';
import { productVolume, sprayRate } from './sprayRate';
import type { DoseFigures, ProductRate } from './types';

const TOLERANCE = 1e-9;

/**
 * Cautions of one dose: rate above the label, powder's volume, heat, watering in, rain.
 * @param product as the dose's use has it
 */
export function cautionsOfDose(
  yard: Yard,
  visit: Visit,
  dose: VisitDose,
  product: Product,
  rate: ProductRate,
): Issue[] {
  const issues: Issue[] = [];
  const add = (code: string, severity: Issue['severity'], message: string) =>
    issues.push({
      code,
      severity,
      message: `${product.name}: ${message}`,
      place: { visitId: visit.id, doseId: dose.id, productId: product.id },
    });
  if (dose.rateFactor > 1 + TOLERANCE)
    add(
      'above-label-rate',
      'warning',
      'this is more than the label rate. The label decides; do not pass its most.',
    );
  const spray = sprayRate(product, rate);
  if (spray !== null && !(spray.waterLPerM2 > 0))
    add(
      'no-room-for-water',
      'error',
      'at this rate the product alone fills the whole spray volume; give more spray per area.',
    );
  if (spray !== null && productVolume(product, rate) === 0)
    add(
      'powder-volume',
      'note',
      isLiquid(product)
        ? 'dosed by weight and its density is not known, so it is counted as adding no volume to the tank.'
        : 'dosed by weight, so it is counted as adding no volume to the tank.',
    );
  if (product.limits.maxAirTempC !== null)
    add(
      'air-temperature',
      'note',
      `not above ${formatTemperature(product.limits.maxAirTempC, yard.settings.units)} air temperature, by its label.`,
    );
  const { waterIn, waterInDepthM, rainfastS } = product;
  const { units } = yard.settings;
  if (waterIn && waterInDepthM !== null && waterInDepthM > 0)
    add(
      'water-in',
      'note',
      `water it in with ${formatLength(waterInDepthM, units)} of water after it is down, no run-off.`,
    );
  else if (waterIn) add('water-in', 'note', 'water it in after it is down, as the label says.');
  if (!waterIn && rainfastS !== null && rainfastS > 0)
    add(
      'rainfast',
      'note',
      `no rain and no watering for ${formatDuration(rainfastS)} after it is down, by its label.`,
    );
  return issues;
}

/** Two zones (ids) that both claim some ground, and its area, m². */
export type ZoneClash = readonly [zoneIdA: string, zoneIdB: string, areaM2: number];

/** Warnings `zones-overlap`, at each dose that counts ground twice as two of its zones claim it. */
export function cautionsOfOverlap(
  yard: Yard,
  visitId: string,
  doses: readonly DoseFigures[],
  clashes: readonly ZoneClash[],
): Issue[] {
  return doses.flatMap(({ dose, product, zones }) => {
    const treated = new Map(zones.filter((zone) => zone.areaM2 > 0).map((zone) => [zone.zoneId, zone.name]));
    const named = (id: string) => (treated.get(id) ? `“${treated.get(id)}”` : 'an unnamed zone');
    return clashes.flatMap(([a, b, areaM2]): Issue[] => {
      if (!treated.has(a) || !treated.has(b) || !(areaM2 > 0)) return [];
      const area = formatArea(areaM2, yard.settings.units);
      const message = `${product.name}: ${named(a)} and ${named(b)} overlap, so ${area} is counted twice and would be treated twice; mend it on the Measure screen.`;
      const place = { visitId, doseId: dose.id, productId: product.id, zoneId: a };
      return [{ code: 'zones-overlap', severity: 'warning', message, place }];
    });
  });
}

/** Cautions on the order: one tank used for different mixes in turn. Each dose is a pass of its own. */
export function cautionsOfOrder(visit: Visit, doses: readonly DoseFigures[]): Issue[] {
  const tanked = doses.filter((dose) => dose.tank !== null);
  return tanked.slice(1).flatMap((dose, index): Issue[] => {
    const before = tanked[index];
    if (before === undefined || before.product.id === dose.product.id) return [];
    const message = `${dose.product.name} follows ${before.product.name} in the same tank: rinse the tank in between onto ground that may take it. Mix the two in one load only if both labels allow it and a jar test stays clear.`;
    return [
      {
        code: 'tank-shared',
        severity: 'warning',
        message,
        place: { visitId: visit.id, doseId: dose.dose.id, productId: dose.product.id },
      },
    ];
  });
}
