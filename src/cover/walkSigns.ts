import type { XY } from '../measure/types';
import { pointAlong } from './marks/alongLine';
import type { DoseCoverage, Leg, RunOutMark } from './passTypes';

/** A zone of the walk as it is numbered on a drawing. */
export interface ZoneSign {
  /** 1, 2, 3 … in walking order, both coats counted. */
  readonly number: number;
  readonly zoneId: string;
  readonly coat: 1 | 2;
  /** where the work on it begins and ends, in the plane, m. */
  readonly entry: XY;
  readonly exit: XY;
}

/** A run-out mark with the way across the walk. */
export interface MarkSign {
  readonly mark: RunOutMark;
  readonly coat: 1 | 2;
  /** unit vector to the right of the way walked. */
  readonly across: XY;
}

/** Where zones are entered and left, in walking order. Zones without any leg are left out. */
export function zoneSigns({ walks, legs }: Pick<DoseCoverage, 'walks' | 'legs'>): readonly ZoneSign[] {
  return walks.flatMap(({ zoneId, coat }, i) => {
    const own = legs.filter((leg) => leg.zoneId === zoneId && leg.coat === coat && leg.kind !== 'carry');
    const [entry, exit] = [own[0]?.line[0], own.at(-1)?.line.at(-1)];
    return entry && exit ? [{ number: i + 1, zoneId, coat, entry, exit }] : [];
  });
}

/** Run-out marks with the direction in which their line is drawn. */
export function markSigns({ marks, legs }: Pick<DoseCoverage, 'marks' | 'legs'>): readonly MarkSign[] {
  return marks.flatMap((mark) => {
    const leg = legs[mark.legIndex];
    if (!leg) return [];
    const share = leg.lengthM > 0 ? mark.alongM / leg.lengthM : 0;
    const turn = (pointAlong(leg.line, share).headingDeg * Math.PI) / 180;
    return [{ mark, coat: leg.coat, across: [Math.cos(turn), -Math.sin(turn)] as const }];
  });
}

/** Where the whole walk begins and ends; null without legs. */
export function walkEnds(legs: readonly Leg[]): { readonly start: XY; readonly end: XY } | null {
  const [start, end] = [legs[0]?.line[0], legs.at(-1)?.line.at(-1)];
  return start && end ? { start, end } : null;
}

/** A place for an arrow: where on the plane, and the unit vector of the way. */
export interface ArrowSign {
  readonly at: XY;
  readonly way: XY;
}

/**
 * Arrows along laps and passes, no two nearer to each other than a distance, so that they thin out with
 * the scale: one in the middle of each leg, more on long ones.
 * @param apartM more than 0, m
 */
export function arrowSigns(legs: readonly Leg[], apartM: number): readonly ArrowSign[] {
  const arrows: ArrowSign[] = [];
  const cells = new Map<string, XY[]>();
  const cellOf = (n: number) => Math.floor(n / apartM);
  const isFree = ([x, y]: XY) => {
    for (let i = -1; i <= 1; i++) {
      for (let j = -1; j <= 1; j++) {
        const near = cells.get(`${cellOf(x) + i},${cellOf(y) + j}`) ?? [];
        if (near.some((other) => Math.hypot(other[0] - x, other[1] - y) < apartM)) return false;
      }
    }
    return true;
  };
  for (const { kind, line, lengthM } of legs) {
    if (kind !== 'pass' && kind !== 'lap') continue;
    const count = Math.max(1, Math.floor(lengthM / (4 * apartM)));
    if (lengthM < apartM) continue;
    for (let i = 0; i < count; i++) {
      const { at, headingDeg } = pointAlong(line, (i + 0.5) / count);
      if (!isFree(at)) continue;
      const turn = (headingDeg * Math.PI) / 180;
      arrows.push({ at, way: [Math.sin(turn), Math.cos(turn)] });
      const key = `${cellOf(at[0])},${cellOf(at[1])}`;
      cells.set(key, [...(cells.get(key) ?? []), at]);
    }
  }
  return arrows;
}
