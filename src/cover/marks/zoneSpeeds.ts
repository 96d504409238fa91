import { FASTEST_M_PER_S } from '../../pace/usual';
import { formatSpeed } from '../../units/formatPace';
import type { Issue, UnitSystem } from '../../yard/types';
import type { Leg } from '../passTypes';
import type { DoseGround } from './walkProgress';

/** Beyond so many times the planned speed (or below its inverse) the swath does not suit the zone. */
export const MOST_FACTOR = 1.25;

/** How fast one zone is walked in one coat. */
export interface ZoneSpeed {
  readonly zoneId: string;
  readonly coat: 1 | 2;
  /** m of laps and passes on it. */
  readonly workingM: number;
  /** times the speed of the dose's pace. */
  readonly factor: number;
}

/**
 * How fast each zone is walked so that just its own amount goes out: laps and passes that lie closer than planned,
 * or reach beyond the edge, are longer than area / spacing, and product goes out along all of them. So the
 * speed there is the pace's times (working length · spacing / area): 1 on ground that the spacing divides evenly.
 * @param zones ground that the dose counts, m²; @param spacingM distance between passes that the pace is for, m
 * @returns one for each zone and coat that is worked on, in the order of the walk; factor 1 where an area is not known
 */
export function zoneSpeeds(
  legs: readonly Leg[],
  zones: readonly DoseGround[],
  spacingM: number,
): readonly ZoneSpeed[] {
  const areas = new Map(zones.map(({ zoneId, areaM2 }) => [zoneId, areaM2]));
  const rows = new Map<string, { zoneId: string; coat: 1 | 2; workingM: number }>();
  for (const { zoneId, coat, kind, lengthM } of legs) {
    if (zoneId === null || (kind !== 'lap' && kind !== 'pass')) continue;
    const key = `${coat}:${zoneId}`;
    const row = rows.get(key) ?? { zoneId, coat, workingM: 0 };
    row.workingM += lengthM;
    rows.set(key, row);
  }
  return [...rows.values()].map((row) => {
    const factor = (row.workingM * spacingM) / (areas.get(row.zoneId) ?? 0);
    return { ...row, factor: Number.isFinite(factor) && factor > 0 ? factor : 1 };
  });
}

/** The factor of a zone and coat; 1 where it is not worked on. */
export function factorOf(
  speeds: readonly ZoneSpeed[],
  { zoneId, coat }: { readonly zoneId: string | null; readonly coat: 1 | 2 },
): number {
  return speeds.find((each) => each.zoneId === zoneId && each.coat === coat)?.factor ?? 1;
}

/**
 * Zones that the swath does not suit: where passes lay down much more than the plan, or much less, at the dose's pace.
 * @param names of the zones by id
 * @param speedMPerS of the dose's pace; null: not known
 * @returns notes `passes-crowded` and `passes-spread`, and a warning `zone-too-fast` where the zone alone cannot be
 * walked so fast (what is told of the whole dose is not told again); one for each zone at most
 */
export function speedIssues(
  speeds: readonly ZoneSpeed[],
  names: ReadonlyMap<string, string>,
  speedMPerS: number | null,
  units: UnitSystem,
): Issue[] {
  const told = new Set<string>();
  return speeds.flatMap(({ zoneId, factor }): Issue[] => {
    const isCrowded = factor > MOST_FACTOR;
    const isTooFast =
      speedMPerS !== null && speedMPerS <= FASTEST_M_PER_S && speedMPerS * factor > FASTEST_M_PER_S;
    if (told.has(zoneId) || (!isCrowded && !isTooFast && factor > 1 / MOST_FACTOR)) return [];
    told.add(zoneId);
    const name = names.get(zoneId)?.trim();
    const where = name ? `On “${name}”` : 'On a zone without a name';
    if (isTooFast) {
      const message = `${where} the walk would be ${formatSpeed(speedMPerS * factor, units)}, faster than a person walks: use a nozzle or setting that puts out less, or a swath that suits it.`;
      return [{ code: 'zone-too-fast', severity: 'warning', message, place: { zoneId } }];
    }
    const times = factor.toFixed(1);
    const message = isCrowded
      ? `${where} the passes take ${times} times the walk that its area asks for: walk it as much faster, so that only its own amount goes out, or use a narrower swath there.`
      : `${where} the passes take only ${times} times the walk that its area asks for: walk it as much slower, and see to what they leave out.`;
    return [
      { code: isCrowded ? 'passes-crowded' : 'passes-spread', severity: 'note', message, place: { zoneId } },
    ];
  });
}
