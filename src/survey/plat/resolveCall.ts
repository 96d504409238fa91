import type { Issue } from '../../yard/types';
import { exitBearing, formatBearing, formatDms, normaliseBearing, turnBetween } from './bearing';
import { type CurveMismatch, solveCurve } from './curve';
import type { CurveDraft, Draft } from './draft';
import type { PlatCall, Turn } from './types';

/** The longest course taken, m; a longer one is a slip of the finger or of the unit. */
const LONGEST_M = 10_000;
/** Directions on plats are whole seconds; a curve that leaves the course before by more than this is not tangent to it, degrees. */
const TANGENT_DEG = 0.02;

const HOW =
  "Write a direction such as N 45°30' E, an azimuth such as 135°, a turn such as right or left 30, and a length such as 120.5 ft.";

/** What resolving needs to know beside the draft. */
export interface ResolveContext {
  /** the call before it in the text, null for the first or after a faulty one. */
  readonly before: PlatCall | null;
  readonly isFirst: boolean;
  /** a length alone turns right by 90° (typed lists); false in running text. */
  readonly mayTurnByItself: boolean;
  /** lengths in words of the reader's units. */
  readonly sayLength: (m: number) => string;
  readonly line: number;
  quote(draft: Draft): string;
}

/** A call worked out, with what is to be said of it. */
export interface Resolved {
  readonly call: PlatCall | null;
  readonly issues: Issue[];
}

/** Works out one call from its draft: directions from turns, curves from their figures. */
export function resolveCall(draft: Draft, context: ResolveContext): Resolved {
  const { line } = context;
  const issues: Issue[] = [];
  const say = (code: string, severity: Issue['severity'], message: string) =>
    issues.push({ code, severity, message: `Line ${line}: ${message}`, place: { line } });
  const fail = (code: string, message: string): Resolved => {
    say(code, 'error', message);
    return { call: null, issues };
  };
  const fault = draft.faults[0];
  if (fault) {
    const words = context.quote({ ...draft, tokens: [fault.token] });
    return fail('call-fault', `“${words}” ${fault.why}.`);
  }
  const call = draft.curve ? resolveCurve(draft.curve) : resolveLine();
  return typeof call === 'string' ? fail('call-incomplete', call) : { call, issues };

  function resolveLine(): PlatCall | string {
    const { lengthM, turn, isTangent } = draft;
    const quoted = `“${context.quote(draft)}”`;
    const unknown = unknownWords();
    if (lengthM === null)
      return draft.directionDeg !== null || turn || isTangent
        ? `${quoted} has a direction but no length.${unknown}`
        : `${quoted} is not understood. ${HOW}`;
    if (!(lengthM > 0)) return `${quoted}: a side must be longer than nothing.`;
    if (lengthM > LONGEST_M)
      return `${quoted}: a side longer than 10 km (33,000 ft) cannot be meant; check it.`;
    const line = (bearingDeg: number): PlatCall => ({ kind: 'line', bearingDeg, lengthM });
    if (draft.directionDeg !== null) return line(normaliseBearing(draft.directionDeg));
    const from = context.before ? exitBearing(context.before) : null;
    if (turn) {
      if (from === null && !context.isFirst) return `${quoted} is a turn, and the call before it is faulty.`;
      if (from === null)
        return `${quoted}: a turn needs a call before it; give this one a direction, such as N or 90°.`;
      return line(normaliseBearing(from + (turn.turn === 'right' ? 1 : -1) * (turn.deg ?? 90)));
    }
    if (isTangent && from !== null) return line(from);
    if (draft.looseDeg !== null) return line(draft.looseDeg);
    if (draft.isVague) return `${quoted} gives no exact direction: “northerly” and the like are no bearing.`;
    if (!context.mayTurnByItself || draft.words.length > 0)
      return `${quoted} has a length but no direction. ${HOW}${unknown}`;
    if (context.isFirst) {
      say('direction-assumed', 'note', `${quoted} has no direction: taken as due north.`);
      return line(0);
    }
    if (from === null) return `${quoted} has no direction, and the call before it is faulty.`;
    say('direction-assumed', 'note', `${quoted} has no direction: turned right by 90°.`);
    return line(normaliseBearing(from + 90));
  }

  function unknownWords(): string {
    if (draft.words.length === 0) return '';
    return ` Not understood: “${draft.words.map((token) => context.quote({ ...draft, tokens: [token] })).join(' ')}”.`;
  }

  function resolveCurve(curve: CurveDraft): PlatCall | string {
    const solved = solveCurve(curve);
    const quoted = `“${context.quote(draft)}”`;
    if (!solved.ok) return `${quoted}: ${solved.message}${unknownWords()}`;
    const { radiusM, deltaDeg } = solved;
    if (radiusM > LONGEST_M)
      return `${quoted}: a radius longer than 10 km (33,000 ft) cannot be meant; check it.`;
    for (const mismatch of solved.mismatches)
      say('curve-mismatch', 'warning', mismatchWords(mismatch, solved.from, context.sayLength));
    const from = context.before ? exitBearing(context.before) : null;
    const way = wayOf(curve, deltaDeg, from);
    if (typeof way === 'string') return `${quoted}: ${way}`;
    const { turn, entryBearingDeg } = way;
    if (from !== null && (curve.chordDeg !== null || curve.radialDeg !== null)) {
      const off = Math.abs(turnBetween(from, entryBearingDeg));
      const words = `the curve sets out ${formatBearing(entryBearingDeg)}, the call before it ends ${formatBearing(from)}`;
      if (off > 90)
        say('curve-turns-back', 'warning', `${words}: it turns back. Is one of the two bearings reversed?`);
      else if (off > TANGENT_DEG && curve.tangency === 'tangent')
        say('curve-not-tangent', 'warning', `called tangent, but ${words}: ${formatDms(off)} apart.`);
      else if (off > TANGENT_DEG && curve.tangency === null)
        say('curve-not-tangent', 'note', `${words}: not tangent, ${formatDms(off)} apart.`);
    }
    return { kind: 'arc', radiusM, deltaDeg, turn, entryBearingDeg };
  }
}

type Way = { readonly turn: Turn; readonly entryBearingDeg: number };

/** Which way a curve turns, and how it sets out: by chord, by radius, else tangent to the call before. */
function wayOf(curve: CurveDraft, deltaDeg: number, from: number | null): Way | string {
  const { chordDeg, radialDeg, concaveDeg } = curve;
  const half = deltaDeg / 2;
  const sign = (turn: Turn) => (turn === 'right' ? 1 : -1);
  const entries = (turn: Turn): number[] => {
    if (chordDeg !== null) return [normaliseBearing(chordDeg - sign(turn) * half)];
    if (radialDeg !== null) {
      const toCenter = normaliseBearing(radialDeg - sign(turn) * 90);
      return curve.isToCenter ? [toCenter] : [toCenter, normaliseBearing(toCenter + 180)];
    }
    return from === null ? [] : [from];
  };
  if (curve.tangency === 'non-tangent' && chordDeg === null && radialDeg === null)
    return 'a curve that is not tangent needs the direction of its chord or of its radius.';
  /** nearest to the call before, where there is a choice. */
  const entry = (turn: Turn): number | null =>
    entries(turn).toSorted(
      (a, b) => Math.abs(turnBetween(from ?? a, a)) - Math.abs(turnBetween(from ?? a, b)),
    )[0] ?? null;
  const turns: readonly Turn[] = curve.turn ? [curve.turn] : ['right', 'left'];
  let ways = turns.flatMap((turn): Way[] => {
    const entryBearingDeg = entry(turn);
    return entryBearingDeg === null ? [] : [{ turn, entryBearingDeg }];
  });
  if (ways.length === 0)
    return 'it needs the direction of its chord or of its radius, for no sound call comes before it.';
  if (ways.length > 1 && concaveDeg !== null)
    ways = ways.filter(({ turn, entryBearingDeg }) => {
      const inward = entryBearingDeg + sign(turn) * (half + 90);
      return Math.abs(turnBetween(inward, concaveDeg)) < 90;
    });
  else if (ways.length > 1 && chordDeg !== null && from !== null)
    ways = ways.filter((way) => Math.abs(turnBetween(from, way.entryBearingDeg)) <= TANGENT_DEG);
  const [way] = ways;
  return way && ways.length === 1 ? way : 'say whether the curve turns right or left.';
}

function mismatchWords(
  { what, written, computed }: CurveMismatch,
  from: string,
  sayLength: (m: number) => string,
): string {
  const show = (value: number) => (what === 'central angle' ? formatDms(value) : sayLength(value));
  return `the ${what} is written as ${show(written)}, but ${from} make it ${show(computed)}; ${from} are used.`;
}
