import type { XY } from '../../measure/types';
import type { Leg } from '../passTypes';
import { distanceOf, lengthOfLine } from './frame';
import type { Stop } from './orderItems';
import { shortenEnds } from './shortenEnds';
import { type Walkable, wayWithin } from './wayWithin';
import { endOf, startOf, type Work } from './work';
import type { LayOptions } from './zoneGround';

/** Ways shorter than this are none, m. */
const NO_WAY_M = 1e-6;
/** Ways up to so many spacings between neighbouring rows are turns. */
const TURN_SPACINGS = 2.5;

/**
 * Legs of a tour: its stretches and, between them, turns (from row to row) and ways with the applicator shut,
 * round holes by the shortest way. Every leg begins where the last one ended.
 */
export function layLegs(stops: readonly Stop[], walkable: Walkable, { spacingM, swathM }: LayOptions): Leg[] {
  const legs: Leg[] = [];
  let last: Work | null = null;
  for (const [index, stop] of stops.entries()) {
    for (const [rowIndex, row] of stop.choice.rows().entries()) {
      for (const [place, whole] of row.entries()) {
        const work = whole.kind === 'pass' ? shortenEnds(whole, walkable, swathM) : whole;
        if (last) {
          const [from, to] = [endOf(last), startOf(work)];
          const isNext =
            place === 0 && (rowIndex > 0 || (index > 0 && work.kind === 'lap' && last.kind === 'lap'));
          if (distanceOf(from, to) > NO_WAY_M) legs.push(wayLeg(walkable, from, to, isNext ? spacingM : 0));
        }
        legs.push({ ...work, zoneId: null, coat: 1 });
        last = work;
      }
    }
  }
  return legs;
}

function wayLeg(walkable: Walkable, from: XY, to: XY, spacingM: number): Leg {
  const line = wayWithin(walkable, from, to);
  const lengthM = lengthOfLine(line);
  const kind = lengthM <= TURN_SPACINGS * spacingM ? 'turn' : 'carry';
  return { kind, zoneId: null, coat: 1, line, lengthM, knots: [] };
}
