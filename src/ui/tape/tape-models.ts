import { html, type TemplateResult } from 'lit';
import type { XY } from '../../measure/types';
import { TAPE_SHAPES, type TapeShapeKind } from '../../survey/tape/tapeShapes';
import type { Dimensions, TapeWay } from '../../survey/tape/types';

/** Dimensions that show each way of taping well; for its picture alone, never for a figure. */
const MODELS: Readonly<Record<string, Dimensions>> = {
  rectangle: { a: 16, b: 10 },
  'l-shape': { a: 16, b: 12, c: 6, d: 5 },
  'triangle-sides': { a: 16, b: 11, c: 13 },
  'triangle-height': { a: 16, h: 10, f: 6 },
  trapezoid: { a: 16, b: 9, h: 9, f: 3 },
  quadrilateral: { a: 14, b: 9, c: 11, d: 10, e: 16 },
  'circle-radius': { r: 6 },
  'circle-diameter': { w: 12 },
  'circle-circumference': { u: 37 },
  ellipse: { a: 16, b: 10 },
  'segment-chord': { c: 16, h: 6 },
  'segment-radius': { r: 9, h: 6 },
  'segment-angle': { r: 9, t: 120 },
  'sector-angle': { r: 12, t: 70 },
  'sector-arc': { r: 12, u: 14.7 },
};

/** The line whose direction is asked for, in words; null for a shape without direction. */
const BASES: Readonly<Record<string, string | null>> = {
  circle: null,
  ellipse: 'length a',
  segment: 'the chord',
  sector: 'the right straight side',
};

/** A model of a way, to draw before anything is typed. */
export function modelOf(way: TapeWay): Dimensions {
  return MODELS[way.id] ?? {};
}

/** What the direction of a shape is the direction of; null: none is needed. */
export function baseWords(shape: TapeShapeKind): string | null {
  const words = BASES[shape.id];
  return words === undefined ? 'side a' : words;
}

/** A small picture of a shape for its button. */
export function shapePicture(shape: TapeShapeKind): TemplateResult {
  const [way] = shape.ways;
  return picture(way.outline(modelOf(way)).ring);
}

/** A bed along a straight line with its offsets, for the button of that way. */
export function offsetsPicture(): TemplateResult {
  return html`<svg viewBox="0 0 40 28" width="40" height="28" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="1.75" stroke-linejoin="round">
    <path d="M3 24H37" /><path d="M3 24V16C9 8 14 4 20 7S30 14 37 9V24" /><path stroke-width="1" d="M11.5 24V8M20 24V7M28.5 24V11.5" /></svg>`;
}

function picture(ring: readonly XY[]): TemplateResult {
  const xs = ring.map((p) => p[0]);
  const ys = ring.map((p) => p[1]);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min(34 / (maxX - minX), 22 / (maxY - minY));
  const path = ring
    .map(([x, y]) => {
      const [u, v] = [20 + (x - (minX + maxX) / 2) * scale, 14 - (y - (minY + maxY) / 2) * scale];
      return `${u.toFixed(1)} ${v.toFixed(1)}`;
    })
    .join('L');
  return html`<svg viewBox="0 0 40 28" width="40" height="28" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="1.75" stroke-linejoin="round"><path d=${`M${path}Z`} /></svg>`;
}

/** The shapes in the order of their buttons. */
export const SHAPES = TAPE_SHAPES;
