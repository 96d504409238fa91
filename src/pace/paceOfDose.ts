import { isSprayed, productVolume, sprayRate } from '../plan/sprayRate';
import type { DoseFigures } from '../plan/types';
import { formatAmount } from '../units/format';
import type { Equipment, Issue, Settings } from '../yard/types';
import { walkOfSpray } from './calibrate/sprayOutput';
import { isDrawn } from './isDrawn';
import { paceAdvice } from './paceAdvice';
import { settingIssues } from './settingIssues';
import type { DosePace } from './types';
import { SHUT_SPEED_M_PER_S, spacingOf, TURN_S, USUAL_SPEED_M_PER_S } from './usual';

type PaceSettings = Pick<Settings, 'units' | 'stepM'>;

/** What leaves the nozzle for this dose: L/s, and how much of it each m² is to get, L/m²; null: not known. */
interface Outflow {
  readonly flowLPerS: number | null;
  readonly rateLPerM2: number | null;
  /** what is still to be measured or told, when something is. */
  readonly missing: Issue | null;
}

/**
 * How fast a dose is walked with its equipment.
 *
 * Liquids: speed = flow / (rate · spacing) (see `walkOfSpray`). What draws product on its way out (see `isDrawn`) counts
 * product alone: flow · its share over the product rate; a tank counts finished spray, which a concentrate has none of
 * where its use gives no water. Two coats halve the rate of each, so the walk is twice as fast.
 * Granules: the setting fixes the rate, overlap counted, the walk is the person's own.
 * @param isAssumed the equipment is usual figures of the trade, not the yard's own (see `equipmentOfDose`)
 * @returns issues `flow-not-measured`, `product-share-not-measured`, `rate-not-by-volume`, `no-water-for-tank`, `tank-differs`, `speed-not-measured`,
 * `setting-not-found`, `setting-off`, `own-speed-differs`, `equipment-unfit`, `pace-too-slow`, `pace-too-fast`
 */
export function paceOfDose(
  figures: DoseFigures,
  equipment: Equipment,
  settings: PaceSettings,
  isAssumed: boolean,
): DosePace {
  const { dose, product, rate } = figures;
  const { coats } = dose.passes;
  const { applicator } = equipment;
  const place = {
    doseId: dose.id,
    productId: dose.productId,
    ...(isAssumed ? {} : { equipmentId: equipment.id }),
  };
  const spacingM = spacingOf(equipment);
  const isWet = isSprayed(product);
  const own = equipment.speedMPerS;
  const issues: Issue[] = [];
  let speedMPerS = own ?? USUAL_SPEED_M_PER_S[applicator];
  let source: DosePace['source'] = own === null ? 'usual' : 'measured';
  const fit = unfitIssue(figures, equipment, isWet);
  if (fit) issues.push({ ...fit, place });
  else if (isWet && applicator !== 'by-hand') {
    const { flowLPerS, rateLPerM2, missing } = outflow(figures, equipment);
    if (missing) issues.push({ ...missing, place });
    const tank = tankIssue(figures, equipment, settings.units);
    if (tank) issues.push({ ...tank, place });
    if (flowLPerS !== null && rateLPerM2 !== null && flowLPerS > 0 && rateLPerM2 > 0) {
      speedMPerS = walkOfSpray(flowLPerS, rateLPerM2 / coats, spacingM);
      source = 'flow';
      const advice = paceAdvice({ speedMPerS, ownMPerS: own, coats, equipment, units: settings.units });
      issues.push(...advice.map((issue) => ({ ...issue, place })));
    }
  } else if (!isWet) {
    if (own === null && applicator !== 'by-hand') {
      const message =
        'The walk with this spreader is not timed: a usual walk stands in. Time it over a known distance.';
      issues.push({ code: 'speed-not-measured', severity: 'note', message, place });
    }
    const kgPerM2 = rate.kgPerM2 === null ? null : rate.kgPerM2 / coats;
    const off = settingIssues({ equipment, product, kgPerM2, units: settings.units, isAssumed });
    issues.push(...off.map((issue) => ({ ...issue, place })));
  }
  const perS = speedMPerS * spacingM * (rate.perM2.value / coats);
  return {
    speedMPerS: Number.isFinite(speedMPerS) && speedMPerS > 0 ? speedMPerS : null,
    source,
    shutSpeedMPerS: SHUT_SPEED_M_PER_S[applicator],
    turnS: TURN_S[applicator],
    stepsPerM: settings.stepM !== null && settings.stepM > 0 ? 1 / settings.stepM : null,
    productPerS: Number.isFinite(perS) && perS > 0 ? perS : null,
    issues,
  };
}

/** `equipment-unfit`: a spreader puts nothing wet out, a sprayer nothing dry. */
function unfitIssue({ product }: DoseFigures, { applicator, name }: Equipment, isWet: boolean): Issue | null {
  const isSprayer = applicator === 'hose-end' || applicator === 'tank-sprayer';
  if (applicator === 'by-hand' || isSprayer === isWet) return null;
  const what = isWet ? 'goes out wet, and this is a spreader' : 'goes out dry, and this is a sprayer';
  return told(
    'equipment-unfit',
    `${product.name} ${what}${name ? ` (${name})` : ''}: choose other equipment, or another use of the label.`,
  );
}

function outflow({ product, rate }: DoseFigures, equipment: Equipment): Outflow {
  const { flowLPerS, productShare } = equipment;
  const productLPerM2 = rate.lPerM2 ?? productVolume(product, rate);
  const noFlow =
    flowLPerS === null
      ? told(
          'flow-not-measured',
          'What comes out is not measured: a usual walk stands in. Time how long it takes to fill a bucket.',
        )
      : null;
  if (!isDrawn(equipment)) {
    const spray = sprayRate(product, rate);
    if (spray === null && product.form !== 'ready-to-use')
      return { flowLPerS: null, rateLPerM2: null, missing: noWater(product.name) };
    const total = spray?.totalLPerM2 ?? productLPerM2;
    return {
      flowLPerS,
      rateLPerM2: total,
      missing: noFlow ?? (total > 0 ? null : notByVolume(product.name)),
    };
  }
  if (productShare === null || productShare === 0) {
    const message =
      'How much of the spray is product is not measured: a usual walk stands in. The bucket test asks for it: the ratio on the bottle, or how long one bottle lasts.';
    const missing = noFlow ?? told('product-share-not-measured', message);
    return { flowLPerS: null, rateLPerM2: null, missing };
  }
  return {
    flowLPerS: flowLPerS === null ? null : flowLPerS * productShare,
    rateLPerM2: productLPerM2,
    missing: noFlow ?? (productLPerM2 > 0 ? null : notByVolume(product.name)),
  };
}

/** A tank is never full of neat concentrate, unless that is said. */
function noWater(name: string): Issue {
  return told(
    'no-water-for-tank',
    `${name}: this use says no water for a tank. Choose the label’s use for a tank, or enter its water; where it goes out undiluted, say for the sprayer that 100 % of the spray is product. A usual walk stands in.`,
  );
}

/** `tank-differs`: loads are marked by the sprayer's own tank, the visit's mixes are for another size. */
function tankIssue({ tank }: DoseFigures, equipment: Equipment, units: Settings['units']): Issue | null {
  const { holds, applicator } = equipment;
  if (!tank || applicator !== 'tank-sprayer' || isDrawn(equipment)) return null;
  if (holds?.unit !== 'L' || !(holds.value > 0) || Math.abs(holds.value / tank.tankL - 1) < 1e-3) return null;
  const [own, other] = [formatAmount(holds, units), formatAmount({ unit: 'L', value: tank.tankL }, units)];
  return told(
    'tank-differs',
    `${equipment.name || 'The sprayer'} holds ${own}, the tank of the visit ${other}: marks go by the sprayer, the visit’s mixes by the other. Enter the same size for both.`,
  );
}

function notByVolume(name: string): Issue {
  return told(
    'rate-not-by-volume',
    `${name}: its rate is by weight, so the walk needs its density; a usual walk stands in.`,
  );
}

function told(code: string, message: string): Issue {
  return { code, severity: 'warning', message, place: {} };
}
