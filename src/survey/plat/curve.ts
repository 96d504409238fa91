const RAD = Math.PI / 180;

/** The elements of a circular curve, all lengths in metres. */
export interface CurveElements {
  readonly radiusM: number;
  readonly deltaDeg: number;
  readonly arcM: number;
  readonly chordM: number;
  /** from either end to where the two end tangents meet; Infinity from 180° on. */
  readonly tangentM: number;
  /** from that meeting to the middle of the arc; Infinity from 180° on. */
  readonly externalM: number;
  /** from the middle of the chord to the middle of the arc. */
  readonly middleOrdinateM: number;
}

/**
 * Elements of a circular curve. L = R·Δ, C = 2R·sin(Δ/2), T = R·tan(Δ/2), E = R·(1/cos(Δ/2) - 1),
 * M = R·(1 - cos(Δ/2)).
 * Source: Mahun, Open Access Surveying Library, COGO ch. F (L, C, T); textbook formulas E and M.
 * @param radiusM more than 0 @param deltaDeg over 0, under 360
 */
export function curveElements(radiusM: number, deltaDeg: number): CurveElements {
  const half = (deltaDeg / 2) * RAD;
  const hasMeeting = deltaDeg < 180;
  return {
    radiusM,
    deltaDeg,
    arcM: radiusM * deltaDeg * RAD,
    chordM: 2 * radiusM * Math.sin(half),
    tangentM: hasMeeting ? radiusM * Math.tan(half) : Infinity,
    externalM: hasMeeting ? radiusM * (1 / Math.cos(half) - 1) : Infinity,
    middleOrdinateM: radiusM * (1 - Math.cos(half)),
  };
}

/** What a plat gives of a curve; null where it is silent. */
export interface CurveGiven {
  readonly radiusM: number | null;
  readonly deltaDeg: number | null;
  readonly arcM: number | null;
  readonly chordM: number | null;
  readonly tangentM: number | null;
}

/** What of a curve does not fit the rest of it. */
export interface CurveMismatch {
  readonly what: 'central angle' | 'arc' | 'chord' | 'tangent';
  /** as written, and as it follows from the figures used: metres, or degrees for the central angle. */
  readonly written: number;
  readonly computed: number;
}

export type CurveSolved =
  | {
      readonly ok: true;
      readonly radiusM: number;
      readonly deltaDeg: number;
      /** the two figures the curve was made of. */
      readonly from: string;
      readonly mismatches: readonly CurveMismatch[];
    }
  | { readonly ok: false; readonly message: string };

/** Lengths on plats are rounded to 0.01 ft; what differs by more than this, m, or this share, does not fit. */
const FIT_M = 0.015;
const FIT_SHARE = 2e-4;
const NEED =
  'a curve needs two of: radius (R), central angle (delta), arc length (L), chord length (C), such as R=50 delta 30°.';

/**
 * Radius and central angle from any two of radius, central angle, arc, chord and tangent length (the last
 * with radius or central angle only); what is given beyond these is compared with them.
 * A curve by radius and chord alone is taken for the shorter arc, unless the arc length says otherwise.
 * @returns how it was solved and what does not fit, or what is wrong in words
 */
export function solveCurve(given: CurveGiven): CurveSolved {
  const { radiusM: r, deltaDeg, arcM, chordM, tangentM } = given;
  const solved = solvePair(r, deltaDeg, arcM, chordM, tangentM);
  if (typeof solved === 'string') return { ok: false, message: solved };
  const { radiusM } = solved;
  if (!(radiusM > 0) || !Number.isFinite(radiusM))
    return { ok: false, message: 'the radius must be longer than nothing.' };
  if (!(solved.deltaDeg > 0 && solved.deltaDeg < 360))
    return { ok: false, message: 'the central angle must lie between 0° and 360°.' };
  const is = curveElements(radiusM, solved.deltaDeg);
  const mismatches: CurveMismatch[] = [];
  const compare = (what: CurveMismatch['what'], written: number | null, computed: number, fit: number) => {
    if (written !== null && !(Math.abs(written - computed) <= fit))
      mismatches.push({ what, written, computed });
  };
  const fitOf = (computed: number) => Math.max(FIT_M, FIT_SHARE * computed);
  compare('central angle', deltaDeg, is.deltaDeg, Math.max(fitOf(is.arcM) / radiusM / RAD, 1e-9));
  compare('arc', arcM, is.arcM, fitOf(is.arcM));
  compare('chord', chordM, is.chordM, fitOf(is.chordM));
  if (tangentM !== null && Number.isFinite(is.tangentM))
    compare('tangent', tangentM, is.tangentM, fitOf(is.tangentM));
  return { ok: true, ...solved, mismatches };
}

type Pair = { readonly radiusM: number; readonly deltaDeg: number; readonly from: string };

function solvePair(
  r: number | null,
  delta: number | null,
  arc: number | null,
  chord: number | null,
  tangent: number | null,
): Pair | string {
  const half = delta === null ? 0 : (delta / 2) * RAD;
  if (delta !== null && !(delta > 0 && delta < 360)) return 'the central angle must lie between 0° and 360°.';
  if (r !== null && delta !== null) return { radiusM: r, deltaDeg: delta, from: 'radius and central angle' };
  if (r !== null && arc !== null) {
    if (arc >= 2 * Math.PI * r) return 'the arc is longer than the whole circle of that radius.';
    return { radiusM: r, deltaDeg: arc / r / RAD, from: 'radius and arc' };
  }
  if (r !== null && chord !== null) {
    if (chord > 2 * r * (1 + 1e-6)) return 'the chord is longer than the circle is wide.';
    const deltaDeg = (2 * Math.asin(Math.min(1, chord / (2 * r)))) / RAD;
    return { radiusM: r, deltaDeg, from: 'radius and chord' };
  }
  if (r !== null && tangent !== null)
    return { radiusM: r, deltaDeg: (2 * Math.atan(tangent / r)) / RAD, from: 'radius and tangent' };
  if (delta !== null && arc !== null)
    return { radiusM: arc / (delta * RAD), deltaDeg: delta, from: 'central angle and arc' };
  if (delta !== null && chord !== null)
    return { radiusM: chord / (2 * Math.sin(half)), deltaDeg: delta, from: 'central angle and chord' };
  if (delta !== null && tangent !== null && delta < 180)
    return { radiusM: tangent / Math.tan(half), deltaDeg: delta, from: 'central angle and tangent' };
  if (arc !== null && chord !== null) {
    if (chord >= arc) return 'the chord must be shorter than the arc.';
    const deltaDeg = deltaFromArcAndChord(arc, chord);
    return { radiusM: arc / (deltaDeg * RAD), deltaDeg, from: 'arc and chord' };
  }
  return NEED;
}

/** Solves sin(x)/x = chord/arc for x = Δ/2 by halving; sin(x)/x falls steadily from 1 to 0 over 0 to π. */
function deltaFromArcAndChord(arc: number, chord: number): number {
  let [low, high] = [0, Math.PI];
  for (let i = 0; i < 60; i++) {
    const x = (low + high) / 2;
    if (Math.sin(x) / x > chord / arc) low = x;
    else high = x;
  }
  return (low + high) / RAD;
}
