import { checkRing } from '../../measure/crossings';
import { areaSigmaPerMetre } from '../../survey/areaSigmaPerMetre';
import { adjustByCompassRule, closingCall } from '../../survey/plat/adjust';
import { findMistakes, type LikelyMistake } from '../../survey/plat/mistakes';
import { CLOSED_M, type LaidPlat, placeTraverse } from '../../survey/plat/placeTraverse';
import { readCalls } from '../../survey/plat/readCalls';
import { areaSigma, cornerSigmaOfClosure } from '../../survey/plat/sigma';
import { computeTraverse } from '../../survey/plat/traverse';
import type { CallSigma, CallsRead, PlatCall, Traverse } from '../../survey/plat/types';
import type { Position, UnitSystem } from '../../yard/types';
import { readCoordinates } from '../parts/read-coordinates';
import { bareUnitOf, type PlatDraft, sigmaOf } from './plat-draft';

/** A gap of more than this share of the calls is not spread unless the person says so: 1:n. */
const SPREAD_FROM_RATIO = 500;

/** What the draft comes to. */
export interface PlatReading {
  readonly read: CallsRead;
  /** the calls of the outline as written, up to the first faulty one. */
  readonly written: Traverse;
  /** true: every line is understood and there are calls enough for an outline. */
  readonly isSound: boolean;
  readonly hasGap: boolean;
  /** true: a gap that only a mistake in a call explains. */
  readonly isBadGap: boolean;
  /** what is done about the gap; null: the person has to say. */
  readonly gap: 'spread' | 'side' | null;
  /** the outline as it will be made. */
  readonly closed: Traverse;
  readonly mistakes: readonly LikelyMistake[];
  /** where it begins, or what is wrong with what was typed. */
  readonly start: { readonly position: Position } | { readonly message: string };
  readonly laid: LaidPlat | null;
  /** why the outline cannot become a zone; empty when it can. */
  readonly fault: string;
  /** error of a corner and of the area, one standard deviation. */
  readonly vertexSigmaM: number;
  readonly areaSigmaM2: number;
}

/** Reads the draft and works it out. @param middle where it begins while no place is given */
export function readPlat(draft: PlatDraft, system: UnitSystem, middle: Position): PlatReading {
  const read = readCalls(draft.text, { foot: draft.foot, bareUnit: bareUnitOf(draft, system) });
  const outline = read.entries.filter(({ role }) => role === 'boundary');
  const firstFault = outline.findIndex(({ call }) => call === null);
  const upTo = firstFault < 0 ? outline : outline.slice(0, firstFault);
  const calls = upTo.flatMap(({ call }) => (call ? [call] : []));
  const written = computeTraverse(calls);
  const hasGap = written.closure.gapM > CLOSED_M;
  const mistakes = hasGap ? findMistakes(calls) : [];
  const gap = draft.gap ?? usualGap(written.closure.ratio, mistakes);
  const hasFault = read.issues.some(({ severity }) => severity === 'error');
  const made = gap === 'spread' ? adjustByCompassRule(calls) : closedBySide(calls, hasGap);
  const closed = computeTraverse(made);
  const start = startOf(draft, middle);
  const isSound = !hasFault && hasCorners(made);
  const laid = isSound && 'position' in start ? placeTraverse(made, start.position, draft.northDeg) : null;
  const ring = laid?.parts[0]?.[0];
  const crossing = ring ? checkRing(ring)[0] : undefined;
  const estimate =
    laid && !crossing ? estimateError(draft, sigmaOf(draft, system), calls, made, gap, laid) : NO_ERROR;
  return {
    read,
    written,
    isSound,
    hasGap,
    isBadGap: usualGap(written.closure.ratio, mistakes) === null,
    gap,
    closed,
    mistakes: isSound ? mistakes : [],
    start,
    laid: crossing ? null : laid,
    fault: faultOf(read, hasFault, isSound, gap, start, crossing?.message),
    ...estimate,
  };
}

/** A small gap is spread, a side left out is drawn; between them stands a mistake, and nothing is taken for granted. */
function usualGap(ratio: number, mistakes: readonly LikelyMistake[]): PlatReading['gap'] {
  if (ratio >= SPREAD_FROM_RATIO) return 'spread';
  return mistakes[0]?.kind === 'missing' ? 'side' : null;
}

const NO_ERROR = { vertexSigmaM: 0, areaSigmaM2: 0 };

function closedBySide(calls: readonly PlatCall[], hasGap: boolean): readonly PlatCall[] {
  const last = hasGap ? closingCall(calls) : null;
  return last ? [...calls, last] : calls;
}

/** Three straight calls make an outline, two where one of them is a curve. */
function hasCorners(calls: readonly PlatCall[]): boolean {
  return calls.length >= (calls.some(({ kind }) => kind === 'arc') ? 2 : 3);
}

function startOf(draft: PlatDraft, middle: Position): PlatReading['start'] {
  if (draft.picked) return { position: draft.picked };
  if (draft.startText.trim() === '') return { position: middle };
  const read = readCoordinates(draft.startText);
  if (!read.ok) return { message: read.message };
  return Math.abs(read.position[1]) < 89
    ? { position: read.position }
    : { message: 'A yard lies between latitudes -89 and 89.' };
}

function estimateError(
  draft: PlatDraft,
  sigma: CallSigma,
  calls: readonly PlatCall[],
  made: readonly PlatCall[],
  gap: PlatReading['gap'],
  laid: LaidPlat,
) {
  const perMetre = areaSigmaPerMetre(laid);
  const fromCalls =
    perMetre > 0 ? areaSigma(calls, sigma, gap === 'spread' ? adjustByCompassRule : undefined) / perMetre : 0;
  const fromGap =
    gap === 'spread' ? cornerSigmaOfClosure(computeTraverse(calls).closure.gapM, made.length) : 0;
  const vertexSigmaM = draft.vertexSigmaM ?? Math.max(fromCalls, fromGap);
  return { vertexSigmaM, areaSigmaM2: vertexSigmaM * perMetre };
}

function faultOf(
  read: CallsRead,
  hasFault: boolean,
  isSound: boolean,
  gap: PlatReading['gap'],
  start: PlatReading['start'],
  crossing: string | undefined,
): string {
  if (read.entries.length === 0) return 'Write the calls first, one a line or as in the deed.';
  if (hasFault) return 'Mend the lines marked in the list first.';
  if (!isSound) return 'Write at least two sides; the last side back to the beginning is drawn by itself.';
  if (gap === null) return 'Put the calls right, or choose first what becomes of the gap.';
  if ('message' in start) return start.message;
  return crossing ?? '';
}
