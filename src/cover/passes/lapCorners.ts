import { signedArea } from '../../measure/signedArea';
import type { XY } from '../../measure/types';
import { distanceOf, lengthOfLine } from './frame';
import { makeWork, type Work } from './work';

/** A pushed corner's sides leave their line this share of the spacing before it. */
const BEND_SHARE = 0.75;
/** Corners that turn less are not pushed, radians. */
const LEAST_TURN = 0.25;
/** Tips are taken as no sharper than this turn, radians. */
const MOST_TURN = 2.6;

/** Turn at each corner of a closed ring, radians, more than 0 away from its inside. */
export function turnsOf(ring: readonly XY[]): number[] {
  const count = ring.length - 1;
  const side = Math.sign(signedArea(ring));
  return Array.from({ length: count }, (_, i) => {
    const [a, b, c] = [ring[(i + count - 1) % count] as XY, ring[i] as XY, ring[i + 1] as XY];
    const cross = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
    const dot = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]);
    return Math.min(MOST_TURN, Math.atan2(side * cross, dot));
  });
}

/**
 * Ground between the point of a band's outer corner and the arc of a swath that turns there: h² · (tan(t/2) - t/2) for a
 * turn t and half width h, less what wider swaths overlap and what corners pushed out reach. Only turns away from
 * the ground inside have one.
 * @param turns radians, see turnsOf; @param push see pushCorners
 */
export function missedAtCorners(
  turns: readonly number[],
  spacingM: number,
  swathM: number,
  push: number,
): number {
  let sum = 0;
  for (const turn of turns) {
    if (turn <= 0) continue;
    // the tip lies spacing/2 / cos from the corner, the arc swath/2
    const reach =
      Math.max(0, 1 - (swathM / spacingM) * Math.cos(turn / 2)) / Math.max(1e-9, 1 - Math.cos(turn / 2));
    sum +=
      (spacingM / 2) ** 2 * (Math.tan(turn / 2) - turn / 2) * Math.max(0, Math.min(1, reach) - push) ** 1.6;
  }
  return sum;
}

/** How much longer laps get when their corners are pushed out, about, m. @param turns radians */
export function lengthOfPush(turns: readonly number[], push: number, spacingM: number): number {
  return turns.reduce(
    (sum, turn) => sum + (turn < LEAST_TURN ? 0 : 2 * pushM(turn, push, spacingM) * Math.sin(turn / 2)),
    0,
  );
}

function pushM(turn: number, push: number, spacingM: number): number {
  return push * (spacingM / 2) * (1 / Math.cos(turn / 2) - 1);
}

/**
 * A lap with its corners pushed out towards their tips, so that the arc of the swath leaves less of them: by
 * `push` of the way from the arc to the tip. The sides bend out shortly before the corner; what the swath
 * gives up there lies inside the turn, where it reaches twice.
 * @param mayPush whether the lap may leave its line at a corner, within so much of it, m
 */
export function pushCorners(
  lap: Work,
  push: number,
  spacingM: number,
  mayPush: (corner: XY, withinM: number) => boolean,
): Work {
  const ring = lap.line;
  const count = ring.length - 1;
  const turns = turnsOf(ring);
  const line: XY[] = [];
  for (let i = 0; i < count; i++) {
    const [a, b, c] = [ring[(i + count - 1) % count] as XY, ring[i] as XY, ring[i + 1] as XY];
    const turn = turns[i] as number;
    const [before, after] = [distanceOf(a, b), distanceOf(b, c)];
    if (turn < LEAST_TURN || before === 0 || after === 0) {
      line.push(b);
      continue;
    }
    const byM = pushM(turn, push, spacingM);
    if (!mayPush(b, BEND_SHARE * spacingM + byM)) {
      line.push(b);
      continue;
    }
    const u: XY = [(b[0] - a[0]) / before, (b[1] - a[1]) / before];
    const v: XY = [(b[0] - c[0]) / after, (b[1] - c[1]) / after];
    const size = Math.hypot(u[0] + v[0], u[1] + v[1]);
    if (size < 1e-9) {
      line.push(b);
      continue;
    }
    const [bendA, bendC] = [before, after].map((lengthM) =>
      Math.min(BEND_SHARE * spacingM, 0.45 * lengthM),
    ) as [number, number];
    line.push([b[0] - u[0] * bendA, b[1] - u[1] * bendA]);
    line.push([b[0] + ((u[0] + v[0]) / size) * byM, b[1] + ((u[1] + v[1]) / size) * byM]);
    line.push([b[0] - v[0] * bendC, b[1] - v[1] * bendC]);
  }
  line.push(line[0] as XY);
  const factor = lengthOfLine(line) / lap.lengthM;
  return makeWork(
    'lap',
    line,
    lap.knots.map(({ atM, areaM2 }) => ({ atM: atM * factor, areaM2 })),
  );
}
