import { secondAtWalked } from '../../cover/marks/momentAt';
import { secondsOfWalks } from '../../cover/marks/secondsOfWalks';
import { type WalkTimeline, walkTimeline } from '../../cover/marks/walkTimeline';
import type { Leg } from '../../cover/passTypes';
import { spacingOf } from '../../pace/usual';
import type { DoseInHand } from './dose-in-hand';

/** A walk by the clock. */
export interface WalkClock {
  readonly timeline: WalkTimeline;
  readonly totalS: number;
  /** time of each of the dose's walks, turns and refills in it, s; in their order. */
  readonly seconds: readonly number[];
  /** moments worth standing still at, ascending, s: the start, where each zone begins, each run-out mark, the end. */
  readonly stops: readonly number[];
  /** when each run-out mark of the dose is reached, s, in its order. */
  readonly markSeconds: readonly number[];
}

/** Stops nearer than this are one, s. */
const SAME_S = 0.5;

const kept = new WeakMap<DoseInHand, WalkClock>();

/** @returns null while nothing is laid out, and for a walk without any leg */
export function clockOf(hand: DoseInHand): WalkClock | null {
  const { walk, pace, equipment } = hand;
  if (!walk || !pace || !equipment || walk.dose.legs.length === 0) return null;
  const known = kept.get(hand);
  if (known) return known;
  const timeline = walkTimeline(walk.dose, walk.from.zones, pace, spacingOf(equipment.equipment));
  const markSeconds = walk.dose.marks.map((mark) =>
    secondAtWalked(timeline, (timeline.progress.startM[mark.legIndex] ?? 0) + mark.alongM),
  );
  const clock: WalkClock = {
    timeline,
    totalS: timeline.totalS,
    seconds: secondsOfWalks(timeline),
    markSeconds,
    stops: stopsOf(timeline, markSeconds),
  };
  kept.set(hand, clock);
  return clock;
}

function stopsOf(timeline: WalkTimeline, markSeconds: readonly number[]): readonly number[] {
  const { dose, progress, totalS } = timeline;
  const starts: number[] = [];
  let before: Leg | null = null;
  for (const [i, leg] of dose.legs.entries()) {
    if (leg.zoneId === null) continue;
    if (before?.zoneId !== leg.zoneId || before.coat !== leg.coat) starts.push(progress.startM[i] ?? 0);
    before = leg;
  }
  const all = [...starts.map((walkedM) => secondAtWalked(timeline, walkedM)), ...markSeconds];
  const stops: number[] = [];
  for (const second of [0, ...all, totalS].sort((a, b) => a - b))
    if (second - (stops.at(-1) ?? Number.NEGATIVE_INFINITY) >= SAME_S) stops.push(second);
  return stops;
}
