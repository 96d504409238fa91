import type { Readings } from '../../pace/calibrate/readings';
import type { CalibrationKind } from '../../yard/types';

/** A calibration under way, as far as it is filled in. */
export interface CalibrationDraft {
  readonly readings: Readings;
  readonly productId: string | null;
  readonly coats: 1 | 2;
  readonly dial: string;
  readonly note: string;
  /** YYYY-MM-DD; null: today. */
  readonly on: string | null;
}

/** Kept while the page is open: going to another screen between two runs loses nothing. */
const drafts = new Map<string, CalibrationDraft>();

const keyOf = (equipmentId: string, kind: CalibrationKind) => `${equipmentId} ${kind}`;

/** The draft of one calibration, or null when none is under way. */
export function draftOf(equipmentId: string, kind: CalibrationKind): CalibrationDraft | null {
  return drafts.get(keyOf(equipmentId, kind)) ?? null;
}

/** Keeps a draft; null drops it. */
export function keepDraft(equipmentId: string, kind: CalibrationKind, draft: CalibrationDraft | null): void {
  if (draft === null) drafts.delete(keyOf(equipmentId, kind));
  else drafts.set(keyOf(equipmentId, kind), draft);
}
