import type { DoseCoverage, LegKind, ZoneWalk } from '../cover/passTypes';
import { formatArea, formatPercent } from '../units/format';
import type { Issue, UnitSystem } from '../yard/types';
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
 * on both coats is told once, and ground left out by its share of the whole zone over its coats, not of one of its pieces.
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
        const sum = (of: (each: TellingWalk) => number) => own.reduce((all, each) => all + of(each), 0);
        const share = sum(({ missedM2 }) => missedM2) / sum(({ areaM2 }) => areaM2);
        const message = `${name}: the passes leave about ${formatPercent(share)} of it out: ${MISSED_WORDS}`;
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

/** What lands beyond the edge is worked out without the guard. */
export const OPEN_SWATH_WORDS = 'by the open swath: the guard that is down keeps what it covers off';

/** Zones beyond the hose that are told by name. */
const MOST_NAMED = 3;

/** "120 m² lie beyond it, most of it in “Back lawn”; also in “Strip”": where a hose does not reach. */
export function beyondHoseWords(
  { beyondM2, beyond }: Pick<NonNullable<DoseCoverage['hose']>, 'beyondM2' | 'beyond'>,
  zoneNames: ReadonlyMap<string, string>,
  units: UnitSystem,
): string {
  const [most, ...others] = beyond.map(({ zoneId }) => `“${groundName(zoneNames.get(zoneId) ?? '')}”`);
  const area = `${formatArea(beyondM2, units)} lie beyond it`;
  if (most === undefined) return area;
  if (others.length === 0) return `${area}, all in ${most}`;
  const named = others.slice(0, MOST_NAMED - 1);
  const rest = others.length - named.length;
  const more = rest === 0 ? '' : ` and ${rest} more`;
  return `${area}, most of it in ${most}; also in ${named.join(', ')}${more}`;
}

/** What the lines of a walk are called in the legend of a small map; `cross` is a pass of the second coat. */
export const WALK_KEY_WORDS: Readonly<Record<LegKind | 'cross' | 'hose', string>> = {
  pass: 'Straight pass',
  cross: 'Second coat',
  lap: 'Lap',
  turn: 'Turn',
  carry: 'Way, shut off',
  hose: 'Hose, straight line',
};
