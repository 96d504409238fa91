import type { Issue } from '../../yard/types';
import type { ZonePasses, ZoneWalk } from '../passTypes';

/**
 * The walks over the pieces of one zone as one: lengths and areas summed, the heading of the longest.
 * @param passes one or more
 */
export function mergeWalks(
  passes: readonly ZonePasses[],
  zoneId: string,
  doseId: string,
  coat: 1 | 2,
): ZoneWalk {
  const sum = (of: (each: ZonePasses) => number): number => passes.reduce((s, each) => s + of(each), 0);
  const most = (of: (each: ZonePasses) => number): number => Math.max(...passes.map(of));
  const longest = passes.reduce((a, b) => (b.workingM > a.workingM ? b : a));
  const walked = passes.filter(({ legs }) => legs.length > 0);
  const issues = new Map<string, Issue>();
  for (const issue of passes.flatMap((each) => each.issues)) {
    const place = { ...issue.place, zoneId, doseId };
    issues.set(`${issue.code} ${issue.message}`, { ...issue, place });
  }
  return {
    zoneId,
    coat,
    headingDeg: longest.headingDeg,
    pattern: walked.every(({ pattern }) => pattern === longest.pattern) ? longest.pattern : 'both',
    cells: sum(({ cells }) => cells),
    passes: sum((each) => each.passes),
    turns: sum(({ turns }) => turns),
    lengthM: sum(({ lengthM }) => lengthM),
    workingM: sum(({ workingM }) => workingM),
    leastM: sum(({ leastM }) => leastM),
    areaM2: sum(({ areaM2 }) => areaM2),
    missedM2: sum(({ missedM2 }) => missedM2),
    doubleM2: sum(({ doubleM2 }) => doubleM2),
    outsideM2: sum(({ outsideM2 }) => outsideM2),
    outsideM: most(({ outsideM }) => outsideM),
    issues: [...issues.values()],
  };
}
