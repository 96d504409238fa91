import type { DoseCoverage, LegKind, ZoneWalk } from '../cover/passTypes';
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
 * on both coats is told once.
 * @param zoneNames names as typed, by zone id
 */
export function walkIssues(
  { issues, walks }: Pick<DoseCoverage, 'issues'> & { readonly walks: readonly TellingWalk[] },
  zoneNames: ReadonlyMap<string, string>,
): readonly Issue[] {
  const told = walks.flatMap((walk) => walk.issues.map((issue) => ({ walk, issue })));
  const ofZones = told.flatMap(({ walk, issue }, i): Issue | [] => {
    const alike = told.filter(
      (each) => each.walk.zoneId === walk.zoneId && each.issue.code === issue.code && each.issue !== issue,
    );
    const isSaidBefore = told
      .slice(0, i)
      .some((each) => alike.includes(each) && each.issue.message === issue.message);
    if (isSaidBefore) return [];
    const isOneCoat = alike.some(
      (each) => each.walk.coat !== walk.coat && each.issue.message !== issue.message,
    );
    const coat = isOneCoat ? `, ${walk.coat === 1 ? 'first' : 'second'} coat` : '';
    const name = groundName(zoneNames.get(walk.zoneId) ?? '');
    const message =
      issue.message.includes(name) && coat === ''
        ? issue.message
        : `${name.charAt(0).toUpperCase()}${name.slice(1)}${coat}: ${issue.message}`;
    return { ...issue, message };
  });
  return [...issues, ...ofZones];
}

type TellingWalk = Pick<ZoneWalk, 'zoneId' | 'coat' | 'issues'>;

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
