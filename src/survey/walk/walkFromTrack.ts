import { roundPosition } from '../../measure/corners';
import { checkRing } from '../../measure/crossings';
import { areaOfRingM2, perimeterOfRingM } from '../../measure/geodesic';
import type { XY } from '../../measure/types';
import type { Issue, Ring } from '../../yard/types';
import { areaGradient, vertexSigmaFor } from './areaGradient';
import { estimateNoise, type PlaneFix, varianceOfSum } from './fixNoise';
import { judgeFixes } from './judgeFix';
import { meanOfStand } from './meanOfStand';
import { outlineRound } from './outlineRound';
import { type PlacedFixes, placeFixes, scaleSigmas } from './placeFixes';
import type { Fix, Stand, WalkCorner, WalkOptions, WalkOutline, WalkResult } from './types';
import { notesOfWalk } from './walkNotes';

/**
 * What the first-order sigma leaves out: bends that the noise itself places, and a time constant known
 * from a few fixes. By simulated walks of known noise the area errs by 0.9 to 1.1 first-order sigmas
 * (tests/property/walk.test.ts); with this ±2 sigma holds the truth in 95 % of them or more.
 */
const BEYOND_MODEL = 1.15;

/**
 * The outline of a walk, whether recorded here or read from a GPX file: poor fixes left out, errors
 * estimated from the fixes, corners averaged (mode `corners`) or sides fitted to the line walked (mode
 * `round`), the ring closed, and the area with its sigma.
 *
 * Model of the error: each fix errs by a normal with sigma = accuracy / 2.4477 in x and in y, and the
 * errors of two fixes t apart are alike by exp(-t/T). T comes from the fixes (`estimateNoise`). What is
 * common to the whole walk moves the outline and leaves its area; the area's variance is the double sum
 * over all fixes of what each adds to it. `vertexSigmaM` is what gives the same by the polygon formula of
 * independent corners, so it is less than the error of a corner's place.
 * @param fixes in the order in which they came
 * @param stands mode `corners`: the stand at each corner, in order round the ground; mode `round`: the
 * stretches of the edge, the way between them left out; none: every fix lies on the edge
 */
export function walkFromTrack(
  fixes: readonly Fix[],
  options: WalkOptions,
  stands: readonly Stand[] = [],
): WalkResult {
  const judged = judgeFixes(fixes, options.limits, options.assumedAccuracyM);
  const made =
    options.mode === 'corners'
      ? outlineOfStands(judged.accepted, options, stands)
      : outlineOfLine(onEdge(judged.accepted, stands), options);
  if ('code' in made) return { ok: false, issue: made, judged };
  const fault = checkRing(made.ring)[0];
  if (fault) {
    const message = `${fault.message} Corners must be taken in order round the edge: take the last ones back, or do them again.`;
    return { ok: false, issue: { ...fault, message }, judged };
  }
  return { ok: true, outline: made, judged, notes: notesOfWalk(made, judged, options) };
}

function outlineOfLine(accepted: readonly Fix[], options: WalkOptions): WalkOutline | Issue {
  const few = `An outline needs more positions than ${accepted.length}: walk on round the edge.`;
  if (accepted.length < 3) return issue('walk-too-short', few);
  const placed = placeFixes(accepted, options.assumedAccuracyM);
  const noise = estimateNoise(placed.isTimed ? [placed.fixes] : []);
  const made = outlineRound(placed, noise, options);
  if (!made) {
    return issue(
      'walk-no-outline',
      'The positions make no outline: what was walked is too small or too narrow for how well they are known. Walk all the way round, go corner by corner, or measure it by tape.',
      accepted[0],
    );
  }
  const corners = made.ring.slice(1).map((position): WalkCorner => {
    return { position, sigmaM: null, fixCount: 0, effectiveCount: 0 };
  });
  return {
    ...figures(made.ring, made.corners, made.areaSigmaM2),
    corners,
    noise: { ...noise, timeConstantS: made.timeConstantS },
    gapM: made.gapM,
    overlapM: made.overlapM,
    toleranceM: made.toleranceM,
    largestOffsetM: made.largestOffsetM,
  };
}

function outlineOfStands(
  accepted: readonly Fix[],
  options: WalkOptions,
  stands: readonly Stand[],
): WalkOutline | Issue {
  if (stands.length < 3) {
    const words = `An outline needs at least three corners; ${stands.length} ${stands.length === 1 ? 'is' : 'are'} taken.`;
    return issue('walk-few-corners', words);
  }
  const placed = placeFixes(accepted, options.assumedAccuracyM);
  const at = stands.map((stand) => indicesOf(accepted, stand));
  const empty = at.findIndex((indices) => indices.length === 0);
  if (empty >= 0) {
    const words = `Corner ${empty + 1} has no usable position: take it again, or drop it.`;
    return issue('walk-empty-corner', words, accepted[0]);
  }
  const noise = estimateNoise(
    at.map((indices) => pick(placed.fixes, indices)),
    true,
  );
  const fixes = scaleSigmas(placed.fixes, noise.scale);
  const means = at.map((indices) => meanOfStand(pick(fixes, indices), noise.timeConstantS));
  const corners = means.map((mean) => mean.at);
  const sigmaM2 = sigmaOfStands({ ...placed, fixes }, at, means, noise.timeConstantS);
  const open = corners.map((corner) => roundPosition(placed.plane.toLonLat(corner)));
  return {
    ...figures([...open, ...open.slice(0, 1)], corners, sigmaM2),
    corners: means.map((mean, j): WalkCorner => {
      const { sigmaM, effectiveCount, shares } = mean;
      return { position: open[j] ?? [0, 0], sigmaM, effectiveCount, fixCount: shares.length };
    }),
    noise,
    gapM: null,
    overlapM: 0,
    toleranceM: null,
    largestOffsetM: null,
  };
}

/** One standard deviation of the area of corners that are means of fixes, m²; by corners that know nothing of each other where the time constant is not known. */
function sigmaOfStands(
  placed: PlacedFixes,
  at: readonly (readonly number[])[],
  means: readonly ReturnType<typeof meanOfStand>[],
  timeConstantS: number | null,
): number {
  const gradient = areaGradient(means.map((mean) => mean.at));
  if (timeConstantS === null) {
    const terms = gradient.map(([x, y], j) => (x * x + y * y) * (means[j]?.sigmaM ?? 0) ** 2);
    return Math.sqrt(terms.reduce((sum, term) => sum + term, 0));
  }
  const weights: [number, number][] = placed.fixes.map(() => [0, 0]);
  at.forEach((indices, j) => {
    indices.forEach((index, k) => {
      const [weight, share] = [weights[index], means[j]?.shares[k] ?? 0];
      if (!weight) return;
      weight[0] += share * (gradient[j]?.[0] ?? 0);
      weight[1] += share * (gradient[j]?.[1] ?? 0);
    });
  });
  return Math.sqrt(varianceOfSum(placed.fixes, weights, timeConstantS));
}

function figures(ring: Ring, corners: readonly XY[], modelSigmaM2: number) {
  const areaSigmaM2 = BEYOND_MODEL * modelSigmaM2;
  return {
    ring,
    areaM2: areaOfRingM2(ring),
    areaSigmaM2,
    vertexSigmaM: vertexSigmaFor(areaSigmaM2, corners),
    perimeterM: perimeterOfRingM(ring),
  };
}

function onEdge(fixes: readonly Fix[], stretches: readonly Stand[]): readonly Fix[] {
  if (stretches.length === 0) return fixes;
  const indices = new Set(stretches.flatMap((stretch) => indicesOf(fixes, stretch)));
  return fixes.filter((_, index) => indices.has(index));
}

/** Which of the fixes were found during a stand. */
export function indicesOf(fixes: readonly Fix[], { fromMs, toMs }: Stand): number[] {
  return fixes.flatMap(({ timeMs }, index) =>
    timeMs !== null && timeMs >= fromMs && timeMs <= toMs ? [index] : [],
  );
}

function pick(fixes: readonly PlaneFix[], indices: readonly number[]): PlaneFix[] {
  return indices.flatMap((index) => fixes[index] ?? []);
}

function issue(code: string, message: string, at?: Fix): Issue {
  return { code, severity: 'error', message, place: at ? { position: at.position } : {} };
}
