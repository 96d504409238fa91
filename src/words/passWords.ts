import type { LegKind, RunOutMark, Vessel } from '../cover/passTypes';

/** What a container, tank load or hopper fill is called, singular. */
export const VESSEL_WORDS: Readonly<Record<Vessel['kind'], string>> = {
  container: 'Container',
  'tank-load': 'Tank load',
  'hopper-fill': 'Hopper fill',
};

/** What the lines of a walk are called in keys and legends; `cross` is a pass of the second coat. */
export const WALK_LINE_WORDS: Readonly<Record<LegKind | 'cross' | 'hose', string>> = {
  pass: 'Straight pass',
  cross: 'Pass of the second coat',
  lap: 'Lap along the outline',
  turn: 'Turn',
  carry: 'Way, applicator shut',
  hose: 'As far as the hose reaches',
};

const FRACTIONS = new Map([
  [0.75, '3/4'],
  [0.5, '1/2'],
  [0.25, '1/4'],
]);

/** "2 · 1/2", "2 empty": what stands beside a run-out mark on map and sheet. */
export function markTag({ number, left }: Pick<RunOutMark, 'number' | 'left'>): string {
  return left === 0
    ? `${number} empty`
    : `${number} · ${FRACTIONS.get(left) ?? `${Math.round(left * 100)} %`}`;
}

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
