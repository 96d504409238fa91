import type { DoseCoverage, LegKind, ZoneWalk } from '../cover/passTypes';
import { formatPercent } from '../units/format';
import type { Issue } from '../yard/types';
import { groundName } from './zoneWords';

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

/**
 * All that speaks against a walk: of the dose first, then zone by zone with its name at the head. What is the same
 * on both coats is told once, and ground left out by its share of the whole zone, not of one of its pieces.
 * @param zoneNames names as typed, by zone id
 */
export function walkIssues(
  { issues, walks }: Pick<DoseCoverage, 'issues'> & { readonly walks: readonly TellingWalk[] },
  zoneNames: ReadonlyMap<string, string>,
): readonly Issue[] {
  const told = new Map<string, Issue>();
  for (const walk of walks) {
    const own = walks.filter(({ zoneId }) => zoneId === walk.zoneId);
    const name = groundName(zoneNames.get(walk.zoneId) ?? '').replace(/^./, (letter) => letter.toUpperCase());
    for (const issue of walk.issues) {
      if (issue.code === 'passes-missed') {
        const most = Math.max(...own.map(({ missedM2, areaM2 }) => missedM2 / areaM2));
        const message = `${name}: the passes leave about ${formatPercent(most)} of it out: ${MISSED_WORDS}`;
        told.set(`${walk.zoneId} missed`, { ...issue, message });
        continue;
      }
      const isAlike = own.every((each) => each.issues.some(({ message }) => message === issue.message));
      const coat = own.length < 2 || isAlike ? '' : `, ${walk.coat === 1 ? 'first' : 'second'} coat`;
      const isNamed = coat === '' && issue.message.includes(name);
      const message = isNamed ? issue.message : `${name}${coat}: ${issue.message}`;
      told.set(`${walk.zoneId} ${message}`, { ...issue, message });
    }
  }
  return [...issues, ...told.values()];
}

const MISSED_WORDS =
  'corners, narrow places or edges beside a strip that the swath may not reach over. See to them by hand, or choose other laps.';

type TellingWalk = Pick<ZoneWalk, 'zoneId' | 'coat' | 'issues' | 'missedM2' | 'areaM2'>;

/** What the clock of a walk leaves out, or empty: a dose that goes out wet has its second coat on a dry first one. */
export function dryingWords({ issues }: Pick<DoseCoverage, 'issues'>): string {
  return issues.some(({ code }) => code === 'two-wet-coats')
    ? 'without the wait until the first coat has dried'
    : '';
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
