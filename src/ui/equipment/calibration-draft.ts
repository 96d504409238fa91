import type { Readings } from '../../pace/calibrate/readings';
import type { CalibrationKind } from '../../yard/types';

/** A calibration under way, as far as it is filled in. */
export interface CalibrationDraft {
  readonly readings: Readings;
  readonly productId: string | null;
  readonly coats: 1 | 2;
  /** what the dose that asks for it lays down in all coats, kg/m²; null: the label counts. */
  readonly doseKgPerM2: number | null;
  readonly dial: string;
  readonly note: string;
  /** YYYY-MM-DD; null: today. */
  readonly on: string | null;
}

/** Kept while the page is open: going to another screen between two runs loses nothing. */
const drafts = new Map<string, CalibrationDraft>();

/** Which calibration: of what equipment, in which yard. */
export interface DraftPlace {
  readonly yardId: string;
  readonly equipmentId: string;
  readonly kind: CalibrationKind;
}

const keyOf = ({ yardId, equipmentId, kind }: DraftPlace) => `${yardId} ${equipmentId} ${kind}`;

/** The draft of one calibration, or null when none is under way. */
export function draftOf(place: DraftPlace): CalibrationDraft | null {
  return drafts.get(keyOf(place)) ?? null;
}

/** Keeps a draft; null drops it. */
export function keepDraft(place: DraftPlace, draft: CalibrationDraft | null): void {
  if (draft === null) drafts.delete(keyOf(place));
  else drafts.set(keyOf(place), draft);
}
