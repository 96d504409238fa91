import type { XY } from '../../measure/types';
import { formatArea, formatLength } from '../../units/format';
import type { Issue, UnitSystem } from '../../yard/types';
import { pointAlong } from '../marks/alongLine';
import { doneAt, type WalkProgress } from '../marks/walkProgress';
import type { DoseCoverage, Leg } from '../passTypes';
import type { CarryGround } from './carryGround';
import { isShut } from './overWet';

/** The farthest place is found to within this, m. */
const FINE_M = 0.25;
/** Stretches shorter than this are not halved again, m. */
const SHORT_M = 0.5;
/** Less ground than this beyond the hose is rounding, m². */
const LEAST_M2 = 0.05;

interface Pull {
  readonly lengthM: number;
  readonly bib: XY;
  readonly isReached: boolean;
}

/**
 * Whether a hose reaches wherever a dose goes out. It must come to the hand that holds its end, from the nearest
 * bib, and lies on ground that can be walked: round houses, water and beds (a hose dragged through a bed breaks
 * what grows there), over strips. What goes out of it lands up to half a swath further.
 * @param progress the walk, with the ground that the dose counts
 * @returns null without a bib or a lap or pass to reach
 */
export function hoseReach(
  progress: WalkProgress,
  bibs: readonly XY[],
  hoseM: number,
  ground: CarryGround,
  units: UnitSystem,
  doseId: string,
): { readonly hose: NonNullable<DoseCoverage['hose']>; readonly issues: readonly Issue[] } | null {
  const pullTo = createPull(bibs, ground);
  let [farthest, beyondM2, cutOffM2]: [Pull | null, number, number] = [null, 0, 0];
  const beyondIn = new Map<string, number>();
  const look = (legIndex: number, leg: Leg, fromM: number, toM: number, from: Pull, to: Pull): void => {
    const lengthM = toM - fromM;
    // along open ground the way to the hand grows by no more than the hand moves
    const mostM = (from.lengthM + to.lengthM + lengthM) / 2;
    const isKnown = from.isReached && to.isReached;
    const isNear = isKnown && mostM <= hoseM;
    const isFar =
      !from.isReached || !to.isReached || Math.min(from.lengthM, to.lengthM) - lengthM / 2 > hoseM;
    for (const pull of [from, to])
      if (pull.isReached && pull.lengthM > (farthest?.lengthM ?? -1)) farthest = pull;
    // beyond the hose the ends of straight stretches tell enough of how far it must reach
    const isSettled = isFar || (isNear && mostM <= (farthest?.lengthM ?? 0) + FINE_M);
    if (!isSettled && lengthM > SHORT_M) {
      const middle = (fromM + toM) / 2;
      const pull = pullTo(placeOn(leg, middle));
      look(legIndex, leg, fromM, middle, from, pull);
      look(legIndex, leg, middle, toM, pull, to);
      return;
    }
    const areaM2 =
      doneAt(progress, { legIndex, alongM: toM }) - doneAt(progress, { legIndex, alongM: fromM });
    if (!isKnown) cutOffM2 += areaM2;
    if (isKnown && (from.lengthM + to.lengthM) / 2 <= hoseM) return;
    beyondM2 += areaM2;
    if (leg.zoneId !== null) beyondIn.set(leg.zoneId, (beyondIn.get(leg.zoneId) ?? 0) + areaM2);
  };
  progress.legs.forEach((leg, i) => {
    if (isShut(leg) || leg.lengthM <= 0) return;
    let from = pullTo(placeOn(leg, 0));
    let fromM = 0;
    for (const atM of cornersAlong(leg)) {
      const to = pullTo(placeOn(leg, atM));
      look(i, leg, fromM, atM, from, to);
      [from, fromM] = [to, atM];
    }
  });
  const most = farthest as Pull | null;
  const [first] = bibs;
  if (!first || (!most && beyondM2 === 0)) return null;
  if (beyondM2 < LEAST_M2) beyondM2 = 0;
  const beyond = [...beyondIn]
    .map(([zoneId, areaM2]) => ({ zoneId, areaM2 }))
    .filter(({ areaM2 }) => areaM2 >= LEAST_M2)
    .sort((a, b) => b.areaM2 - a.areaM2);
  const hose = { farthestM: most?.lengthM ?? 0, beyondM2, beyond, bib: most?.bib ?? first };
  const area = formatArea(beyondM2, units);
  const words =
    cutOffM2 > LEAST_M2
      ? `The hose cannot be laid to all of this dose: ${area} of its ground cannot be reached from a hose bib, as walls stand round it or the hose of ${formatLength(hoseM, units)} is too short.`
      : `The hose is too short: it is ${formatLength(hoseM, units)} long and must reach ${formatLength(hose.farthestM, units)} from the nearest hose bib, laid round houses, water and beds; ${area} of this dose lie beyond it.`;
  const issue: Issue = { code: 'hose-too-short', severity: 'warning', message: words, place: { doseId } };
  return { hose, issues: beyondM2 > 0 ? [issue] : [] };
}

/** m along a leg to each of its corners after the first, ascending. */
function cornersAlong({ line, lengthM }: Leg): number[] {
  let alongM = 0;
  const all = line.slice(1).map(([x, y], i) => {
    const before = line[i] as XY;
    alongM += Math.hypot(x - before[0], y - before[1]);
    return Math.min(alongM, lengthM);
  });
  return all.filter((atM, i) => atM > (all[i - 1] ?? 0));
}

function placeOn(leg: Leg, atM: number): XY {
  return pointAlong(leg.line, leg.lengthM > 0 ? atM / leg.lengthM : 0).at;
}

/** How far a hose must be laid to a place from the nearest bib. */
function createPull(bibs: readonly XY[], ground: CarryGround): (place: XY) => Pull {
  return (place) => {
    const byAir = bibs
      .map((bib) => ({ bib, airM: Math.hypot(place[0] - bib[0], place[1] - bib[1]) }))
      .sort((a, b) => a.airM - b.airM);
    let best: Pull | null = null;
    for (const { bib, airM } of byAir) {
      if (best && airM >= best.lengthM) break;
      const way = ground.roundWalls(bib, place);
      if (way && way.lengthM < (best?.lengthM ?? Number.POSITIVE_INFINITY))
        best = { lengthM: way.lengthM, bib, isReached: true };
    }
    const [nearest] = byAir;
    return best ?? { lengthM: nearest?.airM ?? 0, bib: nearest?.bib ?? place, isReached: false };
  };
}
