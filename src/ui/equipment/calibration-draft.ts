import * as v from 'valibot';
import type { Readings } from '../../pace/calibrate/readings';
import { CALIBRATIONS, type CalibrationKind } from '../../yard/types';

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

/** Which calibration: of what equipment, in which yard. */
export interface DraftPlace {
  readonly yardId: string;
  readonly equipmentId: string;
  readonly kind: CalibrationKind;
}

/** Where drafts outlive the page; `localStorage` in the browser. */
export type DraftStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

const KEY = 'measured-yard-calibrations';
/** Most drafts that are kept; the oldest go first. */
const MOST_DRAFTS = 24;

const positiveOrNull = v.nullable(v.pipe(v.number(), v.finite(), v.minValue(0)));
const DRAFT = v.object({
  readings: v.record(v.string(), v.pipe(v.number(), v.finite())),
  productId: v.nullable(v.string()),
  coats: v.picklist([1, 2] as const),
  doseKgPerM2: positiveOrNull,
  dial: v.string(),
  note: v.string(),
  on: v.nullable(v.pipe(v.string(), v.isoDate())),
});
const KEPT = v.object({
  yardId: v.string(),
  equipmentId: v.string(),
  kind: v.picklist(CALIBRATIONS),
  draft: DRAFT,
});
type Kept = DraftPlace & { readonly draft: CalibrationDraft };

const isAt = (a: DraftPlace, b: DraftPlace) =>
  a.yardId === b.yardId && a.equipmentId === b.equipmentId && a.kind === b.kind;

/**
 * Calibrations under way: kept when the page is left or loaded anew, until they are put in or begun anew. What is
 * damaged in the storage is passed over; without storage they are kept while the page is open.
 */
export class CalibrationDrafts {
  /** what could not be written. */
  private unwritten: readonly Kept[] | null = null;

  constructor(private readonly storage: () => DraftStorage) {}

  /** The draft of one calibration, or null when none is under way. */
  draftOf(place: DraftPlace): CalibrationDraft | null {
    return this.read().find((each) => isAt(each, place))?.draft ?? null;
  }

  /** Calibrations under way in a yard, the one worked on last first. */
  placesIn(yardId: string): readonly DraftPlace[] {
    return this.read()
      .filter((each) => each.yardId === yardId)
      .map(({ draft: _draft, ...place }) => place)
      .reverse();
  }

  /** Keeps a draft; null drops it. */
  keepDraft({ yardId, equipmentId, kind }: DraftPlace, draft: CalibrationDraft | null): void {
    const place = { yardId, equipmentId, kind };
    const others = this.read().filter((each) => !isAt(each, place));
    const kept = draft === null ? others : [...others, { ...place, draft }].slice(-MOST_DRAFTS);
    try {
      if (kept.length === 0) this.storage().removeItem(KEY);
      else this.storage().setItem(KEY, JSON.stringify(kept));
      this.unwritten = null;
    } catch {
      this.unwritten = kept;
    }
  }

  private read(): readonly Kept[] {
    if (this.unwritten) return this.unwritten;
    try {
      const found: unknown = JSON.parse(this.storage().getItem(KEY) ?? '[]');
      if (!Array.isArray(found)) return [];
      return found.flatMap((each) => {
        const read = v.safeParse(KEPT, each);
        return read.success ? [read.output] : [];
      });
    } catch {
      return [];
    }
  }
}

/** The drafts of this browser. */
export const calibrationDrafts = new CalibrationDrafts(() => localStorage);
