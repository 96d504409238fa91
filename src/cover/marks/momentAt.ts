import type { XY } from '../../measure/types';
import type { Vessel } from '../passTypes';
import { pointAlong } from './alongLine';
import { firstIndex } from './firstIndex';
import { doneAt } from './walkProgress';
import type { TimeSpan, WalkTimeline } from './walkTimeline';

/** Where the walker is at a moment, and how far the work. */
export interface WalkMoment {
  readonly at: XY;
  /** degrees clockwise from the plane's north, 0 to <360. */
  readonly headingDeg: number;
  readonly legIndex: number;
  /** m along all legs. */
  readonly walkedM: number;
  /** vessel in hand, index from 0; null: the dose has none. */
  readonly vessel: number | null;
  /** share of its full content that is in it, 0 to 1; it rises while it is made ready. Null as above. */
  readonly level: number | null;
  /** the zone being worked on; null: on a way between zones. */
  readonly zoneId: string | null;
  /** m² of the dose done. */
  readonly doneM2: number;
  /** standing, to make the vessel ready. */
  readonly isRefilling: boolean;
  /** product goes out. */
  readonly isWorking: boolean;
}

/**
 * The walk at a moment of its clock.
 * @param second s since the start; before it the start counts, after the end the end
 * @returns null for a dose without any leg
 */
export function momentAt(timeline: WalkTimeline, second: number): WalkMoment | null {
  const { dose, progress, spans, totalS } = timeline;
  const clock = Math.min(totalS, Math.max(0, Number.isFinite(second) ? second : 0));
  const span = spanAt(spans, clock);
  const leg = span && dose.legs[span.legIndex];
  if (!span || !leg) return null;
  const share = (clock - span.fromS) / (span.toS - span.fromS);
  const alongM = span.fromM + share * (span.toM - span.fromM);
  const { at, headingDeg } = pointAlong(leg.line, leg.lengthM > 0 ? alongM / leg.lengthM : 0);
  const doneM2 = doneAt(progress, { legIndex: span.legIndex, alongM });
  const inHand = dose.vessels[span.vessel];
  return {
    at,
    headingDeg,
    legIndex: span.legIndex,
    walkedM: (progress.startM[span.legIndex] ?? 0) + alongM,
    vessel: inHand ? span.vessel : null,
    level: inHand ? levelOf(dose.vessels, span.vessel, doneM2) * (span.isRefill ? share : 1) : null,
    zoneId: leg.zoneId,
    doneM2,
    isRefilling: span.isRefill,
    isWorking: !span.isRefill && (leg.kind === 'lap' || leg.kind === 'pass'),
  };
}

/**
 * When so much is walked first.
 * @param walkedM m along all legs; less than 0 is the start, more than all the end
 * @returns s since the start
 */
export function secondAtWalked({ spans, progress, totalS }: WalkTimeline, walkedM: number): number {
  if (!(walkedM > 0)) return 0;
  const endOf = (span: TimeSpan) => (progress.startM[span.legIndex] ?? 0) + span.toM;
  const span = spans[firstIndex(spans.length, (i) => endOf(spans[i] as TimeSpan) >= walkedM)];
  if (!span) return totalS;
  const [from, to] = [endOf(span) - (span.toM - span.fromM), endOf(span)];
  const share = to > from ? Math.min(1, Math.max(0, (walkedM - from) / (to - from))) : 0;
  return span.fromS + share * (span.toS - span.fromS);
}

/**
 * Share of its full content that a vessel holds when so much of the dose is done, 0 to 1.
 * @param index of the vessel, from 0; @param doneM2 m² of the dose
 */
export function levelOf(vessels: readonly Vessel[], index: number, doneM2: number): number {
  const vessel = vessels[index];
  if (!vessel || !(vessel.full.value > 0)) return 0;
  const beforeM2 = vessels.slice(0, index).reduce((sum, { areaM2 }) => sum + areaM2, 0);
  const part = vessel.areaM2 > 0 ? Math.min(1, Math.max(0, (doneM2 - beforeM2) / vessel.areaM2)) : 1;
  const holds = vessel.start.value - part * vessel.taken.value;
  return Math.min(1, Math.max(0, holds / vessel.full.value));
}

function spanAt(spans: readonly TimeSpan[], clock: number): TimeSpan | undefined {
  return spans[firstIndex(spans.length, (i) => (spans[i] as TimeSpan).toS >= clock)] ?? spans.at(-1);
}
