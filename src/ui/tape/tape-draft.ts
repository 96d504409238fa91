import type { OffsetSide } from '../../survey/tape/makeOffsets';
import type { OffsetRule } from '../../survey/tape/offsetOutline';
import { type Dimensions, type TapeError, USUAL_TAPE_ERROR } from '../../survey/tape/types';
import type { UnitSystem } from '../../yard/types';

/** Everything typed into the form of the tape; outlives the form, so that nothing typed is lost when it is left. */
export interface TapeDraft {
  /** id of a shape, or `offsets`. */
  readonly shapeId: string;
  /** chosen way of taping by shape. */
  readonly wayIds: Readonly<Record<string, string>>;
  /** typed dimensions by way. */
  readonly dimensions: Readonly<Record<string, Dimensions>>;
  readonly headingDeg: number;
  /** typed latitude and longitude of its middle; empty: the middle of the map. */
  readonly middleText: string;
  /** null: as usual. */
  readonly error: TapeError | null;
  readonly offsets: {
    readonly side: OffsetSide;
    readonly isSpaced: boolean;
    readonly spacingM: number | null;
    readonly text: string;
    readonly rule: OffsetRule;
  };
}

/** What the form begins with: as on the sketch, side a running east. */
export const FIRST_DRAFT: TapeDraft = {
  shapeId: 'rectangle',
  wayIds: {},
  dimensions: {},
  headingDeg: 90,
  middleText: '',
  error: null,
  offsets: { side: 'left', isSpaced: false, spacingM: null, text: '', rule: 'trapezoid' },
};

/** 2 in for 5 cm: round where inches are read. */
const USUAL_IN_INCHES: TapeError = { ...USUAL_TAPE_ERROR, readingSigmaM: 0.0508 };

/** How well it is taped: as typed, else the usual error in round figures of the units shown. */
export function errorOf(draft: TapeDraft, system: UnitSystem): TapeError {
  return draft.error ?? (system === 'us' ? USUAL_IN_INCHES : USUAL_TAPE_ERROR);
}

const drafts = new WeakMap<object, TapeDraft>();

/** @param owner what the draft belongs to: the open yard's session */
export function draftOf(owner: object): TapeDraft {
  return drafts.get(owner) ?? FIRST_DRAFT;
}

/** Keeps the draft while its owner lives. */
export function keepDraft(owner: object, draft: TapeDraft): void {
  drafts.set(owner, draft);
}
