import type { Mm } from './placeLabels';
import type { Drawn } from './types';

type Text = Extract<Drawn, { type: 'text' }>;

const round = (n: number) => Math.round(n * 1000) / 1000;

/** SVG path of points in mm. */
export function pathOf(points: readonly Mm[], close: boolean): string {
  const steps = points.map((p, i) => `${i === 0 ? 'M' : 'L'}${round(p[0])} ${round(p[1])}`).join('');
  return close ? `${steps}Z` : steps;
}

/** SVG path of rings in mm, one subpath a ring. */
export function pathOfRings(parts: readonly (readonly (readonly Mm[])[])[]): string {
  return parts.flatMap((rings) => rings.map((ring) => pathOf(ring, true))).join('');
}

/** Text on the sheet; `y` is its base line. */
export function drawText(x: number, y: number, sizeMm: number, text: string, more: Partial<Text> = {}): Text {
  return {
    type: 'text',
    x,
    y,
    sizeMm,
    text,
    anchor: 'start',
    bold: false,
    halo: false,
    light: false,
    ...more,
  };
}

/** A plain stroke. */
export function drawLine(
  points: readonly Mm[],
  widthMm: number,
  role = 'rule',
  dashMm: number[] = [],
): Drawn {
  return { type: 'line', d: pathOf(points, false), widthMm, dashMm, role };
}

/** A rectangle, hatched or bare. */
export function drawRect(
  x: number,
  y: number,
  width: number,
  height: number,
  strokeMm: number,
  hatch: Extract<Drawn, { type: 'area' }>['hatch'] = null,
): Drawn {
  const corners: Mm[] = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
  return { type: 'area', d: pathOf(corners, true), hatch, strokeMm, paper: false };
}
