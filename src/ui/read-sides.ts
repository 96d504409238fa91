import type { Side } from '../measure/shapes';
import { parseLength } from '../units/parse';
import type { UnitSystem } from '../yard/types';

export type SidesRead =
  | { readonly ok: true; readonly sides: readonly Side[] }
  | { readonly ok: false; readonly message: string };

const COMPASS: Readonly<Record<string, number>> = {
  n: 0,
  ne: 45,
  e: 90,
  se: 135,
  s: 180,
  sw: 225,
  w: 270,
  nw: 315,
};
/** the longest side taken, m; a longer one is a slip of the finger or of the unit. */
const LONGEST_M = 10_000;

const HELP =
  'After the length write a direction: a bearing such as 90, a compass letter such as E, N 45 E, or left, right, left 30.';

function turned(bearingDeg: number): number {
  return ((bearingDeg % 360) + 360) % 360;
}

/** The bearing a direction names; a turn needs the side before. */
function readDirection(text: string, beforeDeg: number | null): number | null {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/°|degrees?|deg/g, ' ')
    .trim();
  const compass = COMPASS[plain];
  if (compass !== undefined) return compass;
  const turn = plain.match(/^(left|right)\s*(\d+(?:\.\d+)?)?$/);
  if (turn && beforeDeg !== null)
    return turned(beforeDeg + (turn[1] === 'left' ? -1 : 1) * Number(turn[2] ?? 90));
  const quadrant = plain.match(/^([ns])\s*(\d+(?:\.\d+)?)\s*([ew])$/);
  if (quadrant) {
    const angle = Number(quadrant[2]);
    if (angle > 90) return null;
    const sign = quadrant[3] === 'e' ? 1 : -1;
    return turned(quadrant[1] === 'n' ? sign * angle : 180 - sign * angle);
  }
  const bearing = plain.match(/^(?:bearing\s*)?(\d+(?:\.\d+)?)$/);
  return bearing && Number(bearing[1]) <= 360 ? turned(Number(bearing[1])) : null;
}

const SAMPLE = 'Write a length, then a direction, such as “40 ft, N” or “40 E”.';

/** Where a line's length ends and its direction begins: at the last comma, else at the space that makes sense of both. */
function cutLine(line: string, system: UnitSystem): { lengthText: string; directionText: string | null } {
  if (parseLength(line, system).ok) return { lengthText: line, directionText: null };
  const comma = line.lastIndexOf(',');
  const at = (index: number) => ({
    lengthText: line.slice(0, index).trim(),
    directionText: line.slice(index + 1).trim(),
  });
  // a turn may be the first side's by mistake: it is a direction all the same
  const spaces = [...line.matchAll(/\s/g)].map((space) => space.index);
  const cut = [...spaces, ...(comma >= 0 ? [comma] : [])].findLast((index) => {
    const { lengthText, directionText } = at(index);
    return parseLength(lengthText, system).ok && readDirection(directionText, 0) !== null;
  });
  if (cut !== undefined) return at(cut);
  return comma >= 0 ? at(comma) : { lengthText: line, directionText: null };
}

/**
 * Sides of a zone, one a line: `40 ft, N`, `12' 6", right`, `30 m, left 30`, `25 ft, N 45 E`, `18 m, 270`.
 * A space does for the comma: `40 ft N`, `100 E`.
 * A line with a length alone turns right by 90 degrees; the first then runs north.
 * @returns lengths in metres with bearings in degrees, or what is wrong and in which line.
 */
export function readSides(text: string, system: UnitSystem): SidesRead {
  const sides: Side[] = [];
  for (const [index, line] of text.split('\n').entries()) {
    if (line.trim() === '') continue;
    const fail = (message: string): SidesRead => ({ ok: false, message: `Line ${index + 1}: ${message}` });
    const before = sides.at(-1)?.bearingDeg ?? null;
    const { lengthText, directionText } = cutLine(line.trim(), system);
    const length = parseLength(lengthText, system);
    if (!length.ok) return fail(`${length.message} ${SAMPLE}`);
    if (!(length.value > 0)) return fail('a side must be longer than nothing.');
    if (length.value > LONGEST_M)
      return fail('a side longer than 10 km (33,000 ft) cannot be meant; check it.');
    const standard = before === null ? 0 : turned(before + 90);
    const bearingDeg = directionText === null ? standard : readDirection(directionText, before);
    if (bearingDeg === null)
      return fail(
        before === null ? 'the first side needs a bearing or a compass letter, such as N or 90.' : HELP,
      );
    sides.push({ lengthM: length.value, bearingDeg });
  }
  if (sides.length < 2)
    return {
      ok: false,
      message: 'Write at least two sides, one a line; the last side back to the start is drawn by itself.',
    };
  return { ok: true, sides };
}
