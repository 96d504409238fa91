import type { Material, MowingClass, ZoneKind } from '../yard/types';

/**
 * One definition of every hatch and line pattern, for screen and paper alike: plain data, no DOM.
 * A tile repeats edge to edge. Lengths are in tile units: 1 unit is 1 CSS px on screen
 * (1/96 in), so 1 unit = 0.2646 mm on paper unless the sheet scales the tile.
 * Every hatch reads without colour.
 */
export interface Hatch {
  readonly id: HatchId;
  /** what the eye sees, for keys and legends. */
  readonly words: string;
  readonly width: number;
  readonly height: number;
  /** SVG path data, stroked, not filled. */
  readonly lines: readonly string[];
  /** SVG path data, filled, not stroked. */
  readonly blots: readonly string[];
  /** filled dots: centre x, centre y, radius. */
  readonly dots: readonly (readonly [number, number, number])[];
  readonly strokeWidth: number;
}

export const HATCH_IDS = [
  'turf-low-cut',
  'turf-regular',
  'bed',
  'structure',
  'water',
  'other',
  'concrete',
  'asphalt',
  'pavers',
  'stone',
  'wood',
  'gravel',
  'no-apply',
  'slip',
  'unassigned',
] as const;
export type HatchId = (typeof HATCH_IDS)[number];

type HatchParts = Partial<Pick<Hatch, 'lines' | 'blots' | 'dots' | 'strokeWidth'>>;

function hatch(id: HatchId, words: string, width: number, height: number, parts: HatchParts): Hatch {
  return { id, words, width, height, lines: [], blots: [], dots: [], strokeWidth: 1, ...parts };
}

const LEAF_A = 'M5 10C6 6 10 4 14 5C13 9 9 11 5 10Z';
const LEAF_B = 'M27 26C23 27 19 24 18 20C22 19 26 22 27 26Z';

export const HATCHES: Readonly<Record<HatchId, Hatch>> = {
  'turf-low-cut': hatch('turf-low-cut', 'fine stipple', 12, 12, {
    dots: [
      [2, 2, 0.9],
      [8, 1.5, 0.7],
      [5, 6, 0.9],
      [10.5, 7, 0.9],
      [2, 10, 0.7],
      [8, 11, 0.9],
    ],
  }),
  'turf-regular': hatch('turf-regular', 'slanting stripes', 12, 12, {
    lines: ['M-3 3L3 -3', 'M0 12L12 0', 'M9 15L15 9'],
  }),
  bed: hatch('bed', 'leaf marks', 32, 32, { lines: [LEAF_A, LEAF_B, 'M5 10L14 5', 'M27 26L18 20'] }),
  structure: hatch('structure', 'cross hatch', 10, 10, { lines: ['M0 10L10 0', 'M0 0L10 10'] }),
  water: hatch('water', 'wave lines', 24, 12, {
    lines: ['M0 4C4 0 8 0 12 4S20 8 24 4', 'M0 10C4 6 8 6 12 10S20 14 24 10'],
  }),
  other: hatch('other', 'short dashes', 20, 16, { lines: ['M2 4H8', 'M12 12H18'] }),
  concrete: hatch('concrete', 'sparse dots and grit', 36, 36, {
    dots: [
      [6, 7, 0.8],
      [20, 4, 0.7],
      [31, 14, 0.8],
      [12, 20, 0.7],
      [26, 29, 0.8],
      [5, 31, 0.7],
    ],
    lines: ['M22 17L26 18L23 21Z', 'M12 29L15 27L15.5 31Z'],
    strokeWidth: 0.8,
  }),
  asphalt: hatch('asphalt', 'dashed rows', 18, 10, { lines: ['M0 2H5', 'M9 7H14'], strokeWidth: 1.6 }),
  pavers: hatch('pavers', 'brick courses', 24, 16, {
    lines: ['M0 0H24', 'M0 8H24', 'M0 16H24', 'M6 0V8', 'M18 8V16'],
    strokeWidth: 0.8,
  }),
  stone: hatch('stone', 'irregular flags', 32, 32, {
    lines: [
      'M0 10L12 12L20 6L32 10',
      'M12 12L14 22',
      'M0 26L14 22L24 27L32 26',
      'M20 6L19 0',
      'M24 27L19 32',
    ],
    strokeWidth: 0.8,
  }),
  wood: hatch('wood', 'boards', 40, 14, {
    lines: ['M0 0H40', 'M0 7H40', 'M0 14H40', 'M10 0V7', 'M30 7V14'],
    strokeWidth: 0.8,
  }),
  gravel: hatch('gravel', 'small rings', 18, 18, {
    lines: [
      'M3 5A2 2 0 1 0 7 5A2 2 0 1 0 3 5',
      'M11 12A2.4 2.4 0 1 0 15.8 12A2.4 2.4 0 1 0 11 12',
      'M3 14A1.4 1.4 0 1 0 5.8 14A1.4 1.4 0 1 0 3 14',
      'M12 3.5A1.3 1.3 0 1 0 14.6 3.5A1.3 1.3 0 1 0 12 3.5',
    ],
    strokeWidth: 0.8,
  }),
  'no-apply': hatch('no-apply', 'crosses on bare ground', 16, 16, {
    lines: ['M4 4L12 12', 'M12 4L4 12'],
    strokeWidth: 1.6,
  }),
  slip: hatch('slip', 'dense back-slanting lines', 6, 6, {
    lines: ['M-1.5 -1.5L7.5 7.5', 'M-1.5 4.5L1.5 7.5', 'M4.5 -1.5L7.5 1.5'],
    strokeWidth: 1.4,
  }),
  unassigned: hatch('unassigned', 'plus signs', 22, 22, {
    lines: ['M11 6V16', 'M6 11H16'],
    strokeWidth: 1.4,
  }),
};

/** The hatch of a zone: by mowing class for turf, by material for hardscape, else by kind. */
export function hatchIdOfZone(zone: {
  readonly kind: ZoneKind;
  readonly mowing: MowingClass | null;
  readonly material: Material | null;
}): HatchId {
  if (zone.kind === 'turf') return zone.mowing === 'low-cut' ? 'turf-low-cut' : 'turf-regular';
  if (zone.kind === 'hardscape') return zone.material ?? 'concrete';
  return zone.kind;
}

/** Ink of lines and tint of ground, as CSS colours. Hues: Okabe and Ito 2008, darkened for ink. */
export interface Inks {
  readonly ink: string;
  readonly tint: string;
}

export const ZONE_INKS: Readonly<Record<ZoneKind, { readonly light: Inks; readonly dark: Inks }>> = {
  turf: { light: { ink: '#00684c', tint: '#009e73' }, dark: { ink: '#6fd9b8', tint: '#009e73' } },
  bed: { light: { ink: '#8a4b00', tint: '#e69f00' }, dark: { ink: '#f2bd5a', tint: '#e69f00' } },
  structure: { light: { ink: '#3b3f44', tint: '#7b8086' }, dark: { ink: '#c9cdd1', tint: '#7b8086' } },
  water: { light: { ink: '#0b5685', tint: '#56b4e9' }, dark: { ink: '#8fd0f5', tint: '#56b4e9' } },
  hardscape: { light: { ink: '#5b5348', tint: '#b9b19c' }, dark: { ink: '#d3cbb8', tint: '#8d8674' } },
  other: { light: { ink: '#7d3c62', tint: '#cc79a7' }, dark: { ink: '#eab0d0', tint: '#cc79a7' } },
};

export const NO_APPLY_INKS = {
  light: { ink: '#9c2f12', tint: '#ffffff' },
  dark: { ink: '#ffab8f', tint: '#14202a' },
} as const;
export const SLIP_INKS = {
  light: { ink: '#9c2f12', tint: '#fbe3da' },
  dark: { ink: '#ffab8f', tint: '#43201a' },
} as const;

/** Line patterns of edges to be cleaned, told apart by dash first. Lengths in px of the screen. */
export interface EdgePattern {
  readonly id: EdgePatternId;
  readonly words: string;
  readonly width: number;
  readonly dash: readonly number[];
  readonly light: string;
  readonly dark: string;
}
export const EDGE_PATTERN_IDS = ['rinse', 'sweep', 'near-drain'] as const;
export type EdgePatternId = (typeof EDGE_PATTERN_IDS)[number];

export const EDGE_PATTERNS: Readonly<Record<EdgePatternId, EdgePattern>> = {
  rinse: { id: 'rinse', words: 'long dashes', width: 5, dash: [18, 6], light: '#0b5685', dark: '#8fd0f5' },
  sweep: { id: 'sweep', words: 'dots', width: 6, dash: [2, 8], light: '#5a3200', dark: '#f2bd5a' },
  'near-drain': {
    id: 'near-drain',
    words: 'dash and two dots',
    width: 7,
    dash: [16, 5, 3, 5, 3, 5],
    light: '#9c2f12',
    dark: '#ffab8f',
  },
};

/** The pattern of a rinse edge: what is near outranks how it is cleaned. */
export function edgePatternOf(edge: {
  readonly near: unknown;
  readonly treatment: 'rinse-toward-turf' | 'sweep-then-rinse';
}): EdgePatternId {
  if (edge.near) return 'near-drain';
  return edge.treatment === 'sweep-then-rinse' ? 'sweep' : 'rinse';
}
