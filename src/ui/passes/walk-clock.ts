import { secondAtWalked } from '../../cover/marks/momentAt';
import { type WalkTimeline, walkTimeline } from '../../cover/marks/walkTimeline';
import type { DoseInHand } from './dose-in-hand';

/** A walk by the clock. */
export interface WalkClock {
  readonly timeline: WalkTimeline;
  readonly totalS: number;
  /** laps, passes and turns on one zone in one coat, s. */
  secondsOf(zoneId: string, coat: 1 | 2): number;
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
  const { walk, pace } = hand;
  if (!walk || !pace || walk.dose.legs.length === 0) return null;
  const known = kept.get(hand);
  if (known) return known;
  const timeline = walkTimeline(walk.dose, walk.from.zones, pace);
  const seconds = new Map<string, number>();
  for (const span of timeline.spans) {
    const leg = walk.dose.legs[span.legIndex];
    if (!leg || leg.zoneId === null || span.isRefill) continue;
    const key = `${leg.coat}:${leg.zoneId}`;
    seconds.set(key, (seconds.get(key) ?? 0) + span.toS - span.fromS);
  }
  const markSeconds = walk.dose.marks.map((mark) =>
    secondAtWalked(timeline, (timeline.progress.startM[mark.legIndex] ?? 0) + mark.alongM),
  );
  const clock: WalkClock = {
    timeline,
    totalS: timeline.totalS,
    secondsOf: (zoneId, coat) => seconds.get(`${coat}:${zoneId}`) ?? 0,
    markSeconds,
    stops: stopsOf(timeline, markSeconds),
  };
  kept.set(hand, clock);
  return clock;
}

function stopsOf(timeline: WalkTimeline, markSeconds: readonly number[]): readonly number[] {
  const { dose, progress, totalS } = timeline;
  const starts = dose.legs.flatMap((leg, i) => {
    const before = dose.legs.slice(0, i).findLast((each) => each.zoneId !== null);
    const isNew = leg.zoneId !== null && (before?.zoneId !== leg.zoneId || before.coat !== leg.coat);
    return isNew ? [progress.startM[i] ?? 0] : [];
  });
  const all = [...starts.map((walkedM) => secondAtWalked(timeline, walkedM)), ...markSeconds];
  const stops: number[] = [];
  for (const second of [0, ...all, totalS].sort((a, b) => a - b))
    if (second - (stops.at(-1) ?? Number.NEGATIVE_INFINITY) >= SAME_S) stops.push(second);
  return stops;
}
