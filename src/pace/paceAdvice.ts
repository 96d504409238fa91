import { formatLength, formatPercent } from '../units/format';
import { formatSpeed } from '../units/formatPace';
import type { Equipment, Issue, UnitSystem } from '../yard/types';
import { isDrawn } from './isDrawn';
import { FASTEST_M_PER_S, RATE_TOLERANCE, SLOWEST_M_PER_S } from './usual';

/** What the advice on a pace hangs on: speed that the flow asks for, the person's own with the equipment, m/s. */
export interface PaceCase {
  readonly speedMPerS: number;
  readonly ownMPerS: number | null;
  readonly coats: 1 | 2;
  readonly equipment: Pick<Equipment, 'applicator' | 'swathM' | 'productShare'>;
  readonly units: UnitSystem;
}

/** Widest that a swath is suggested, as a multiple of the one in use. */
const MOST_WIDER = 2;

/**
 * What speaks against a pace that the flow asks for: `pace-too-slow` under 0.5 mph and `pace-too-fast` over 5 mph,
 * with what to change and, where one change is enough, how much; `own-speed-differs` where the person's own walk
 * would lay down more than 5 % too much or too little. Issues have no place yet.
 */
export function paceAdvice(each: PaceCase): readonly Issue[] {
  const { speedMPerS, ownMPerS, units } = each;
  const speed = formatSpeed(speedMPerS, units);
  if (speedMPerS < SLOWEST_M_PER_S) {
    const limit = formatSpeed(SLOWEST_M_PER_S, units);
    return [told('pace-too-slow', `${speed} is too slow to walk evenly (under ${limit}). ${slowCure(each)}`)];
  }
  if (speedMPerS > FASTEST_M_PER_S) {
    const limit = formatSpeed(FASTEST_M_PER_S, units);
    return [told('pace-too-fast', `${speed} is too fast to walk (over ${limit}). ${fastCure(each)}`)];
  }
  if (ownMPerS === null || Math.abs(speedMPerS / ownMPerS - 1) <= RATE_TOLERANCE) return [];
  const off = speedMPerS / ownMPerS - 1;
  const words = `${formatPercent(Math.abs(off))} ${off > 0 ? 'too much' : 'too little'}`;
  const message = `Your own walk with it, ${formatSpeed(ownMPerS, units)}, would lay down ${words}: walk ${speed}, ${
    isMixed(each) ? 'or mix for your own walk' : 'or change the swath or the flow'
  }.`;
  return [told('own-speed-differs', message)];
}

/** Mixed in a tank: how much water carries the product is the person's choice within the label. */
function isMixed({ equipment }: PaceCase): boolean {
  return !isDrawn(equipment);
}

/** Too little comes out for so high a rate on so broad a swath. */
function slowCure(each: PaceCase): string {
  const { speedMPerS, coats, equipment, units } = each;
  const factor = SLOWEST_M_PER_S / speedMPerS;
  const cures: string[] = [];
  if (coats === 1 && speedMPerS * 2 >= SLOWEST_M_PER_S)
    cures.push(`two coats at half the rate (${formatSpeed(speedMPerS * 2, units)})`);
  if (factor <= MOST_WIDER)
    cures.push(`a swath of ${formatLength(equipment.swathM / factor, units)} or less`);
  cures.push(
    isMixed(each)
      ? 'a nozzle that puts out more, less water where the label allows it'
      : 'the tap fully open, a stronger draw of product',
  );
  return `What helps: ${cures.join('; ')}.`;
}

/** Too much comes out for so low a rate on so narrow a swath. */
function fastCure(each: PaceCase): string {
  const { speedMPerS, coats, equipment, units } = each;
  const factor = speedMPerS / FASTEST_M_PER_S;
  const cures: string[] = [];
  if (coats === 2) cures.push(`one coat (${formatSpeed(speedMPerS / 2, units)})`);
  if (factor <= MOST_WIDER)
    cures.push(`a swath of ${formatLength(equipment.swathM * factor, units)} or more`);
  cures.push(
    isMixed(each)
      ? 'a nozzle that puts out less, more water where the label allows it'
      : 'a weaker draw of product, the tap not fully open and measured anew',
  );
  return `What helps: ${cures.join('; ')}.`;
}

function told(code: string, message: string): Issue {
  return { code, severity: 'warning', message, place: {} };
}
