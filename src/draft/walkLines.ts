/*
 * How a walk over the ground is drawn, one definition for screen and paper. Lines tell apart by the rhythm
 * of their dashes first: ink on paper, no hue needed.
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
  turn: { id: 'turn', words: 'fine dots', width: 1.1, dash: [1.8, 2.4] },
  carry: { id: 'carry', words: 'round dots', width: 2.4, dash: [0.1, 5] },
  hose: { id: 'hose', words: 'dash and three dots', width: 1.8, dash: [12, 4, 1.8, 4, 1.8, 4, 1.8, 4] },
};

/** The line of a leg: passes of the second coat lie across those of the first, and are drawn otherwise. */
export function walkLineOf(leg: {
  readonly kind: 'lap' | 'pass' | 'turn' | 'carry';
  readonly coat: 1 | 2;
}): WalkLineId {
  return leg.kind === 'pass' && leg.coat === 2 ? 'cross' : leg.kind;
}

/**
 * SVG path of a line's sample in a key: straight, but a turn, which is never long, as a hook there and back.
 * @param y of its middle, and @param width of it, in any unit; the hook is a fifth of the width high
 */
export function sampleOfLine(id: WalkLineId, x: number, y: number, width: number): string {
  const r = width / 10;
  if (id !== 'turn') return `M${x} ${y}H${x + width}`;
  const end = x + 0.75 * width;
  return `M${x + 0.2 * width} ${y - r}H${end}A${r} ${r} 0 0 1 ${end} ${y + r}H${x + 0.2 * width}`;
}

/** Inks of a walk by the ground under it. `hose` alone has a hue: water. */
export const WALK_INKS = {
  light: { ink: '#1d2a33', hose: '#0b5685', ground: '#ffffff' },
  dark: { ink: '#eef1ea', hose: '#8fd0f5', ground: '#14202a' },
} as const;

/**
 * Symbols on a 24 by 24 field: where the walk begins, where it ends, who walks it (a ring with
 * the way ahead). Stroked like those of marks; `solid` is filled.
 */
export const WALK_SYMBOLS = {
  start: { stroked: 'M12 3A9 9 0 1 0 12 21A9 9 0 1 0 12 3', solid: 'M9 7.5L17 12L9 16.5Z' },
  end: { stroked: 'M12 3A9 9 0 1 0 12 21A9 9 0 1 0 12 3', solid: 'M8.5 8.5H15.5V15.5H8.5Z' },
  walker: {
    stroked: 'M12 5.5A6.5 6.5 0 1 0 12 18.5A6.5 6.5 0 1 0 12 5.5',
    solid: 'M7.4 4.6L12 -1.5L16.6 4.6C14 3 10 3 7.4 4.6ZM12 9.5A2.5 2.5 0 1 0 12 14.5A2.5 2.5 0 1 0 12 9.5',
  },
} as const;
export type WalkSymbolId = keyof typeof WALK_SYMBOLS;
