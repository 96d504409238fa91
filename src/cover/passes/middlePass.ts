import simplify from 'simplify-js';
import { planeAreaOf } from '../../measure/clip';
import type { PlaneRings, XY } from '../../measure/types';
import { frameOf, orientedRings, ringsInFrame } from './frame';
import { headingsToTry } from './headings';
import { crossingsAt } from './section';
import { makeWork, type Work } from './work';

/** Stations along a middle line: this share of the spacing apart. */
const STEP_SHARE = 0.35;
/** The middle line is drawn with fewer corners where it strays less, as a share of the spacing. */
const SMOOTH_SHARE = 0.03;
const MOST_STATIONS = 2000;
/** Ground wider than this share of the spacing is walked in more than one pass. */
const MOST_WIDE = 1.15;

/**
 * One pass along the middle of ground that is no wider than a swath anywhere across some heading: it follows
 * the ground's bends. Its ground is counted evenly by station.
 * @param spareM2 ground that may be left out beside it, where it is a little wider, m²
 * @returns null where the ground is wider, or lies side by side
 */
export function middlePass(part: PlaneRings, spacingM: number, spareM2 = 0): Work | null {
  const rings = orientedRings([part]);
  for (const { degrees } of headingsToTry([rings], spacingM, 6)) {
    const frame = frameOf(degrees);
    // swapped, so that a line of equal y crosses the ground at one station
    const swapped = ringsInFrame(rings, frame).map((ring) => ring.map(([x, y]): XY => [y, x]));
    const stations = stationsOf(swapped, spacingM, spareM2);
    if (stations === null) continue;
    const knots: { atM: number; areaM2: number }[] = [];
    const thin = simplify(
      stations.map(({ x, y }) => ({ x, y })),
      SMOOTH_SHARE * spacingM,
      true,
    );
    const line = thin.map(({ x, y }): XY => frame.back([x, y]));
    const all = planeAreaOf([part]);
    let [raw, atM] = [0, 0];
    stations.forEach((station, i) => {
      const before = stations[i - 1];
      if (before) {
        raw += ((station.x - before.x) * (station.width + before.width)) / 2;
        atM += Math.hypot(station.x - before.x, station.y - before.y);
      }
      knots.push({ atM, areaM2: raw });
    });
    const work = makeWork('pass', line, []);
    if (!(raw > 0 && atM > 0)) continue;
    const stretch = work.lengthM / atM;
    return makeWork(
      'pass',
      line,
      knots.map((knot) => ({ atM: knot.atM * stretch, areaM2: (knot.areaM2 * all) / raw })),
    );
  }
  return null;
}

interface Station {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

function stationsOf(
  swapped: readonly (readonly XY[])[],
  spacingM: number,
  spareM2: number,
): Station[] | null {
  let [low, high] = [Infinity, -Infinity];
  for (const ring of swapped) {
    for (const [, x] of ring) {
      low = Math.min(low, x);
      high = Math.max(high, x);
    }
  }
  const length = high - low;
  if (!(length > 0)) return null;
  const count = Math.min(MOST_STATIONS, Math.max(2, Math.ceil(length / (STEP_SHARE * spacingM))));
  const inner: Station[] = [];
  let leftM2 = 0;
  for (let i = 0; i < count; i++) {
    const x = low + (length * (i + 0.5)) / count;
    const across = crossingsAt(swapped, x);
    const [first, last] = [across[0], across.at(-1)];
    if (!first || !last) return null;
    const width = last.x - first.x;
    if (across.length > 2 || width > spacingM * MOST_WIDE) return null;
    leftM2 += width > spacingM * 1.02 ? ((width - spacingM) * length) / count : 0;
    if (leftM2 > spareM2) return null;
    inner.push({ x, y: (first.x + last.x) / 2, width });
  }
  const [first, last] = [inner[0] as Station, inner.at(-1) as Station];
  return [{ ...first, x: low }, ...inner, { ...last, x: high }];
}
