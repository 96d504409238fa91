import { isDrawn } from '../../pace/isDrawn';
import { convertAmount } from '../../plan/rate';
import { isSprayed, sprayRate } from '../../plan/sprayRate';
import { tankLoads } from '../../plan/tankLoads';
import type { DoseFigures, TankLoads } from '../../plan/types';
import type { Amount, Equipment, Product } from '../../yard/types';
import type { Vessel } from '../passTypes';
import { containerVessels } from './containerVessels';
import { type Drawn, upToMost } from './mostVessels';
import { packsOfFills } from './packsOfFills';
import { type Draw, vesselsOfDraws } from './vesselsOfDraws';

/** A jar or hopper that holds a pack to within this share is that pack: a bottle that is hung on the hose itself. */
const SAME_SIZE = 0.02;
/** A leftover smaller than this share of a fill is rounding, not a fill. */
const SLACK = 1e-9;

/**
 * What a dose is drawn from, in the order in which it is used up:
 * - from a tank, where what is mixed in it goes out as it is (see `isDrawn`): tank loads of finished spray, full ones
 *   and the exact last, by what the sprayer holds, else by the tank of the visit (`DoseFigures.tank`);
 * - from a spreader whose hopper's content is told: hopper fills, the last with what is left;
 * - from a hose-end jar that is told and is none of the product's packs: fills of that jar;
 * - else containers: bottles, bags (see `containerVessels`).
 * @param dose figures of the dose, its product as the use has it
 * @param onHand packs on hand when its turn comes, by pack id (see `stockAtDose`); null: none. A dose that is done
 * goes by full containers, for the shelf is what is left after it.
 * @returns vessels whose areas sum to `dose.areaM2`; empty where nothing is known to draw from, or where they would be
 * too many to mark (see `drawnFrom`)
 */
export function vesselsOf(
  dose: DoseFigures,
  equipment: Equipment,
  onHand: Product['onHand'] | null,
): readonly Vessel[] {
  return drawnFrom(dose, equipment, onHand).vessels;
}

/** The vessels of a dose as `vesselsOf` has them, and how many there would be. */
export function drawnFrom(dose: DoseFigures, equipment: Equipment, onHand: Product['onHand'] | null): Drawn {
  const tank = tankOf(dose, equipment);
  if (tank) {
    const count = tank.fullLoads + (tank.last ? 1 : 0);
    return upToMost(count, () => loadVessels(tank, dose.areaM2));
  }
  const holds = fillOf(dose, equipment);
  // what a done dose was drawn from is off the shelf already
  const isDone = dose.dose.laid !== null || dose.dose.taken !== null;
  const containers = containerVessels(dose, isDone ? null : onHand);
  if (holds === null) return containers;
  const count = Math.ceil(dose.amount.value / holds.value - SLACK);
  return upToMost(count, () => fillVessels(dose, holds, count, containers.vessels));
}

/**
 * Loads of what is mixed: by what the sprayer named holds, else the tank of the visit, from which a can is filled by hand
 * too; null: nothing is mixed in a tank.
 */
function tankOf({ product, rate, areaM2, tank }: DoseFigures, equipment: Equipment): TankLoads | null {
  const { applicator, holds } = equipment;
  if (applicator === 'by-hand') return tank;
  if (applicator !== 'tank-sprayer' || isDrawn(equipment)) return null;
  if (holds?.unit !== 'L' || !(holds.value > 0)) return tank;
  const spray = sprayRate(product, rate);
  return spray && tankLoads(rate, spray, holds.value, areaM2);
}

function loadVessels({ tankL, full, last, fullLoads, totalL }: TankLoads, areaM2: number): readonly Vessel[] {
  const load = (startL: number): Draw => ({ packId: null, full: tankL, start: startL, levelAfter: 0 });
  const draws = full ? Array.from({ length: fullLoads }, () => load(tankL)) : [];
  if (last) draws.push(load(last.totalL));
  return vesselsOfDraws('tank-load', draws, { unit: 'L', value: totalL }, areaM2);
}

/** What one fill holds, in the unit of the dose; null: no fills, it goes by containers. */
function fillOf(dose: DoseFigures, { applicator, holds }: Equipment): Amount | null {
  const { amount, product } = dose;
  if (holds === null || !(holds.value > 0) || applicator === 'by-hand' || applicator === 'tank-sprayer') {
    return null;
  }
  // a jar on the hose takes liquids, a hopper what is dry
  if (isSprayed(product) !== (applicator === 'hose-end')) return null;
  const fill = convertAmount(holds, amount.unit, product.densityKgPerL);
  if (fill === null || applicator !== 'hose-end') return fill;
  const isPack = product.packs.some(({ content }) => {
    const value = convertAmount(content, amount.unit, product.densityKgPerL)?.value ?? 0;
    return Math.abs(value - fill.value) <= SAME_SIZE * fill.value;
  });
  return isPack ? null : fill;
}

function fillVessels(
  { amount, areaM2 }: DoseFigures,
  fill: Amount,
  count: number,
  containers: readonly Vessel[],
): readonly Vessel[] {
  const draws = Array.from({ length: count }, (_, i): Draw => {
    const start = Math.min(fill.value, amount.value - i * fill.value);
    return { packId: null, full: fill.value, start, levelAfter: 0 };
  });
  const fills = vesselsOfDraws('hopper-fill', draws, amount, areaM2);
  const from = packsOfFills(fills, containers);
  return fills.map((vessel, i) => {
    const numbers = (from[i] ?? []).flatMap((index) => containers[index]?.number ?? []);
    return numbers.length > 0 ? { ...vessel, from: numbers } : vessel;
  });
}
