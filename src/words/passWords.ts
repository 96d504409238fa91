import type { LegKind } from '../cover/passTypes';

const WINDS = [
  'N',
  'NNE',
  'NE',
  'ENE',
  'E',
  'ESE',
  'SE',
  'SSE',
  'S',
  'SSW',
  'SW',
  'WSW',
  'W',
  'WNW',
  'NW',
  'NNW',
];

/** "72° (ENE–WSW)": which way passes lie, there and back. @param headingDeg clockwise from north, 0 to <180 */
export function headingWords(headingDeg: number): string {
  const degrees = Math.round(headingDeg) % 180;
  const wind = Math.round(degrees / 22.5) % 8;
  return `${degrees}° (${WINDS[wind]}–${WINDS[wind + 8]})`;
}

/** What the lines of a walk are called in the legend of a small map; `cross` is a pass of the second coat. */
export const WALK_KEY_WORDS: Readonly<Record<LegKind | 'cross' | 'hose', string>> = {
  pass: 'Straight pass',
  cross: 'Second coat',
  lap: 'Lap',
  turn: 'Turn',
  carry: 'Way, shut off',
  hose: 'Hose reach',
};
