/*
 * How a walk over the ground is drawn, one definition for screen and paper. Lines tell apart by dash and
 * weight first: ink on paper, no hue needed.
 */

/** A line of a walk; widths and dashes in px of the screen. */
export interface WalkLine {
  readonly id: WalkLineId;
  /** what the eye sees, for keys and legends. */
  readonly words: string;
  readonly width: number;
  readonly dash: readonly number[];
}
export const WALK_LINE_IDS = ['pass', 'cross', 'lap', 'turn', 'carry', 'hose'] as const;
export type WalkLineId = (typeof WALK_LINE_IDS)[number];

export const WALK_LINES: Readonly<Record<WalkLineId, WalkLine>> = {
  pass: { id: 'pass', words: 'thin line', width: 1.3, dash: [] },
  cross: { id: 'cross', words: 'long dash and dot', width: 1.3, dash: [16, 3, 1.5, 3] },
  lap: { id: 'lap', words: 'even dashes', width: 1.5, dash: [9, 4] },
  turn: { id: 'turn', words: 'hairline', width: 0.7, dash: [] },
  carry: { id: 'carry', words: 'round dots', width: 2.4, dash: [0.1, 5] },
  hose: { id: 'hose', words: 'wide dashes', width: 1.8, dash: [14, 9] },
};

/** The line of a leg: passes of the second coat lie across those of the first, and are drawn otherwise. */
export function walkLineOf(leg: {
  readonly kind: 'lap' | 'pass' | 'turn' | 'carry';
  readonly coat: 1 | 2;
}): WalkLineId {
  return leg.kind === 'pass' && leg.coat === 2 ? 'cross' : leg.kind;
}

/** Inks of a walk by the ground under it. `hose` alone has a hue: water. */
export const WALK_INKS = {
  light: { ink: '#1d2a33', hose: '#0b5685', ground: '#ffffff' },
  dark: { ink: '#eef1ea', hose: '#8fd0f5', ground: '#14202a' },
} as const;

/**
 * Symbols on a 24 by 24 field: where the walk begins, where it ends, who walks it (seen from above, facing up
 * the sheet: shoulders, head, and the way ahead). Stroked like those of marks; `solid` is filled.
 */
export const WALK_SYMBOLS = {
  start: { stroked: 'M12 3A9 9 0 1 0 12 21A9 9 0 1 0 12 3', solid: 'M9 7.5L17 12L9 16.5Z' },
  end: { stroked: 'M12 3A9 9 0 1 0 12 21A9 9 0 1 0 12 3', solid: 'M8.5 8.5H15.5V15.5H8.5Z' },
  walker: {
    stroked: 'M3.5 14.5C5.5 10.5 18.5 10.5 20.5 14.5C18.5 17.5 5.5 17.5 3.5 14.5Z',
    solid: 'M12 10A3.8 3.8 0 1 0 12 17.6A3.8 3.8 0 1 0 12 10M8.5 6.5L12 1.5L15.5 6.5Z',
  },
} as const;
export type WalkSymbolId = keyof typeof WALK_SYMBOLS;
