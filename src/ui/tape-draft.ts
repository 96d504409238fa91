import type { OffsetSide } from '../survey/tape/makeOffsets';
import type { OffsetRule } from '../survey/tape/offsetOutline';
import { type Dimensions, type TapeError, USUAL_TAPE_ERROR } from '../survey/tape/types';

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
  readonly error: TapeError;
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
  error: USUAL_TAPE_ERROR,
  offsets: { side: 'left', isSpaced: false, spacingM: null, text: '', rule: 'trapezoid' },
};

const drafts = new WeakMap<object, TapeDraft>();

/** @param owner what the draft belongs to: the open yard's session */
export function draftOf(owner: object): TapeDraft {
  return drafts.get(owner) ?? FIRST_DRAFT;
}

/** Keeps the draft while its owner lives. */
export function keepDraft(owner: object, draft: TapeDraft): void {
  drafts.set(owner, draft);
}
