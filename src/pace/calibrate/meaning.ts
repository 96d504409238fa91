import { productRate } from '../../plan/rate';
import { sprayRate } from '../../plan/sprayRate';
import type { Amount, Equipment, Product } from '../../yard/types';
import { isDrawn } from '../isDrawn';
import { spacingOf } from '../usual';
import { productPerSpray, walkOfSpray } from './sprayOutput';
import type { CalibrationResult } from './types';

/** What a calibration of a sprayer means for one product at its label rate. */
export interface ProductMeaning {
  /** how fast to walk, m/s, and the time of one m², s; null: flow, share or rate is not known. */
  readonly walk: { readonly speedMPerS: number; readonly secondsPerM2: number } | null;
  /** one fill at the spray laid down in the calibration: product in it, and the ground it does; null: no tank, or its size or the spray is not known. */
  readonly fill: { readonly spray: Amount; readonly product: Amount; readonly areaM2: number } | null;
  /** spray that the label asks for, L/m²; null: none mixed. */
  readonly labelSprayLPerM2: number | null;
}

/**
 * Product per fill by GPA and rate (NC State Extension, backpack worksheet), walk by flow and label rate.
 * @param use the product as the use has it that this equipment puts out
 * @returns null where the label gives no rate
 */
export function meaningFor(
  result: CalibrationResult,
  before: Equipment,
  use: Product,
): ProductMeaning | null {
  const { rate } = productRate(use);
  if (!rate) return null;
  const equipment = { ...before, ...result.change };
  const { flowLPerS, productShare, holds } = equipment;
  const spacingM = spacingOf(equipment);
  const spray = sprayRate(use, rate);
  const drawn = isDrawn(equipment);
  const outLPerS = drawn ? (flowLPerS ?? 0) * (productShare ?? 0) : (flowLPerS ?? 0);
  // a tank is never full of neat concentrate
  const neatLPerM2 = use.form === 'ready-to-use' ? rate.lPerM2 : null;
  const rateLPerM2 = drawn ? rate.lPerM2 : (spray?.totalLPerM2 ?? neatLPerM2);
  const speedMPerS =
    rateLPerM2 !== null && rateLPerM2 > 0 && outLPerS > 0
      ? walkOfSpray(outLPerS, rateLPerM2, spacingM)
      : null;
  const laidLPerM2 = result.figures.find((figure) => figure.key === 'spray-rate')?.value ?? null;
  const tankL = holds?.unit === 'L' && holds.value > 0 ? holds.value : null;
  return {
    walk: speedMPerS === null ? null : { speedMPerS, secondsPerM2: 1 / (speedMPerS * spacingM) },
    fill:
      laidLPerM2 === null || tankL === null || drawn
        ? null
        : {
            spray: { unit: 'L', value: tankL },
            product: { unit: rate.perM2.unit, value: productPerSpray(rate.perM2.value, laidLPerM2) * tankL },
            areaM2: tankL / laidLPerM2,
          },
    labelSprayLPerM2: spray?.totalLPerM2 ?? null,
  };
}
