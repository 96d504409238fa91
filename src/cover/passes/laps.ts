import simplify from 'simplify-js';
import { bufferOf, differenceOf, planeAreaOf } from '../../measure/clip';
import { signedArea } from '../../measure/signedArea';
import type { PlaneRings, XY } from '../../measure/types';
import { lengthOfLine } from './frame';
import { missedAtCorners, turnsOf } from './lapCorners';
import { makeWork, type Work } from './work';

/** Laps of one round: so far from the outline, and what they leave. */
export interface LapRound {
  readonly laps: readonly Work[];
  /** ground too narrow for a lap, walked along its middle instead. */
  readonly narrow: readonly PlaneRings[];
  /** ground inside the round. */
  readonly inside: readonly PlaneRings[];
  /** ground at the outer corners of its laps that no swath reaches, m². */
  readonly missedM2: number;
}

/** Ground left beside laps smaller than this share of the spacing squared is let go (tips of corners). */
const TIP_SHARE = 0.25;
/** Laps keep this much farther from what is kept off than half the swath: arcs are drawn to 5 mm. */
export const ARC_M = 0.01;
/** Corners of laps may be left out where the lap strays less, m. */
const SMOOTH_M = 0.004;
/** A closed lap shorter than so many swaths is none: no one turns so tightly (common practice, no source). */
const LEAST_LAP = 2;

/** Whether a closed line is long enough to be walked as a lap. */
export const isLap = (ring: readonly XY[], swathM: number): boolean =>
  lengthOfLine(ring) >= LEAST_LAP * swathM;

/**
 * Rounds of laps beside the outline, from outside in, each `spacingM` further in: outer rings and holes alike.
 * A round is the ground's outline moved in by (round - ½) · spacing; what lies deeper than round · spacing is
 * inside it; ground in between takes part in the laps by their length, as the band beside a line
 * is its length times its width (Steiner's formula, its corners cancelling on a closed line but for the turn).
 * @param most rounds at most
 * Ground where a lap would be too short is left as narrow.
 * @returns fewer rounds than `most` where no ground is left inside, or none with room for a lap
 */
export function lapRounds(
  parts: readonly PlaneRings[],
  keepOff: readonly PlaneRings[],
  spacingM: number,
  swathM: number,
  most: number,
): LapRound[] {
  const rounds: LapRound[] = [];
  const shy = keepOff.length > 0 ? bufferOf({ parts: keepOff }, swathM / 2 + ARC_M) : [];
  let outside = parts;
  for (let round = 1; round <= most && outside.length > 0; round++) {
    const all = insetOf(parts, (round - 0.5) * spacingM);
    const isLong = ([ring]: PlaneRings) => ring !== undefined && isLap(ring, swathM);
    const onLap = shy.length > 0 ? all : all.filter(isLong);
    if (!onLap.some(isLong)) break;
    // beside what is kept off touch-ups cover what a short one would have
    const lines = shy.length > 0 ? differenceOf(onLap, shy).filter(isLong) : onLap;
    const inside = insetOf(parts, round * spacingM);
    const bothM2 = planeAreaOf(outside) - planeAreaOf(inside);
    const leastM2 = TIP_SHARE * spacingM * spacingM;
    // a band is its middle line's length times its width; what there is more lies where no lap fits
    const isNarrow = bothM2 - spacingM * lengthOfRings(onLap) > leastM2 / 2;
    const narrow = isNarrow ? narrowOf(outside, onLap, spacingM, leastM2) : [];
    const laps = lapsAlong(lines, Math.max(0, bothM2 - planeAreaOf(narrow)));
    const missedM2 = laps.reduce(
      (sum, lap) => sum + missedAtCorners(turnsOf(lap.line), spacingM, swathM, 0),
      0,
    );
    rounds.push({ laps, narrow, inside, missedM2 });
    outside = inside;
  }
  return rounds;
}

function narrowOf(
  outside: readonly PlaneRings[],
  onLap: readonly PlaneRings[],
  spacingM: number,
  leastM2: number,
): PlaneRings[] {
  const reached = bufferOf({ parts: onLap }, spacingM / 2 + 0.002);
  return differenceOf(outside, reached).filter((part) => planeAreaOf([part]) > leastM2);
}

function lengthOfRings(parts: readonly PlaneRings[]): number {
  return parts.reduce((sum, rings) => sum + rings.reduce((s, ring) => s + lengthOfLine(ring), 0), 0);
}

/** Ground moved in by a distance; slivers gone. */
function insetOf(parts: readonly PlaneRings[], byM: number): PlaneRings[] {
  return bufferOf({ parts }, -byM).filter((part) => planeAreaOf([part]) > 1e-4);
}

/** The rings of areas as laps that share ground by their length. */
function lapsAlong(parts: readonly PlaneRings[], areaM2: number): Work[] {
  const rings = parts.flatMap((rings) => rings.map(smoothRing)).filter((ring) => ring.length > 3);
  const lengthM = rings.reduce((sum, ring) => sum + lengthOfLine(ring), 0);
  return rings.map((ring) => {
    const share = lengthM > 0 ? (areaM2 * lengthOfLine(ring)) / lengthM : 0;
    return makeWork('lap', ring, [
      { atM: 0, areaM2: 0 },
      { atM: lengthOfLine(ring), areaM2: share },
    ]);
  });
}

/** A closed ring with fewer corners, begun at its sharpest. */
function smoothRing(ring: readonly XY[]): readonly XY[] {
  if (ring.length < 8) return ring;
  const open = ring.slice(0, -1);
  const far = open.length >> 1;
  const thin = (line: readonly XY[]) =>
    simplify(
      line.map(([x, y]) => ({ x, y })),
      SMOOTH_M,
      true,
    ).map(({ x, y }): XY => [x, y]);
  const one = thin(open.slice(0, far + 1));
  const two = thin([...open.slice(far), open[0] as XY]);
  const made = [...one, ...two.slice(1)];
  return made.length > 3 && Math.abs(signedArea(made)) > 0 ? made : ring;
}
