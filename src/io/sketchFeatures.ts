import { createPlane } from '../measure/plane';
import type { Position, Ring } from '../yard/types';
import type { DeskContext, DeskSketch } from './deskTypes';
import type { Box, Judged } from './importTypes';

/** Shapes drawn at most, and corners of each. */
const MOST_SHAPES = 400;
const MOST_CORNERS = 60;
const MARGIN_PX = 8;
/** The open yard is drawn along while it lies within so many widths of what comes in. */
const YARD_REACH = 6;

/**
 * Outlines of features beside those of the open yard, as SVG paths in px of a box: north up, one scale.
 * @param indices of the features listed; @param judgeOf gives the shape of one
 */
export function sketchOf(
  indices: readonly number[],
  isTicked: (index: number) => boolean,
  judgeOf: (index: number) => Judged,
  boxOf: (index: number) => Box | null,
  context: Pick<DeskContext, 'yardBox' | 'outlines'>,
  widthPx: number,
  heightPx: number,
): DeskSketch {
  const none: DeskSketch = { yard: '', ticked: '', others: '', points: [], isPart: false };
  const placed = indices.filter((index) => boxOf(index) !== null);
  const chosen = placed.filter(isTicked);
  const framed = (chosen.length > 0 ? chosen : placed).flatMap((index) => boxOf(index) ?? []);
  const frame = joinBoxes(chunked(framed), context.yardBox);
  if (frame === null || Math.abs(frame[1]) >= 89 || Math.abs(frame[3]) >= 89) return none;
  const plane = createPlane([(frame[0] + frame[2]) / 2, (frame[1] + frame[3]) / 2]);
  const [x0, y0] = plane.toPlane([frame[0], frame[1]]);
  const [x1, y1] = plane.toPlane([frame[2], frame[3]]);
  const scale = Math.min(
    (widthPx - 2 * MARGIN_PX) / Math.max(1, x1 - x0),
    (heightPx - 2 * MARGIN_PX) / Math.max(1, y1 - y0),
  );
  const [midX, midY] = [(x0 + x1) / 2, (y0 + y1) / 2];
  const toPx = (at: Position): [number, number] => {
    const [x, y] = plane.toPlane(at);
    return [widthPx / 2 + (x - midX) * scale, heightPx / 2 - (y - midY) * scale];
  };
  const isShown = (box: Box) => overlaps(box, frame);
  const shown = [...chosen, ...placed.filter((index) => !isTicked(index))].filter((index) =>
    isShown(boxOf(index) as Box),
  );
  const paths = { ticked: '', others: '' };
  const points: [number, number][] = [];
  for (const index of shown.slice(0, MOST_SHAPES)) {
    const judged = judgeOf(index);
    if (judged.position) points.push(toPx(judged.position));
    for (const ring of judged.parts.flat())
      paths[isTicked(index) ? 'ticked' : 'others'] += pathOf(ring, toPx);
  }
  return {
    ...paths,
    yard: context.outlines.map((ring) => pathOf(ring, toPx)).join(''),
    points,
    isPart: shown.length > MOST_SHAPES,
  };
}

function pathOf(ring: Ring, toPx: (at: Position) => [number, number]): string {
  const step = Math.max(1, Math.ceil((ring.length - 1) / MOST_CORNERS));
  const corners = ring.slice(0, -1).filter((_, i) => i % step === 0);
  if (corners.length < 3) return '';
  return `M${corners
    .map((p) =>
      toPx(p)
        .map((px) => px.toFixed(1))
        .join(' '),
    )
    .join('L')}Z`;
}

function chunked(values: readonly number[]): Box[] {
  const boxes: Box[] = [];
  for (let i = 0; i + 3 < values.length; i += 4) {
    boxes.push([values[i] ?? 0, values[i + 1] ?? 0, values[i + 2] ?? 0, values[i + 3] ?? 0]);
  }
  return boxes;
}

/** The box of all, with the yard's when it is near enough to be seen beside them. */
function joinBoxes(boxes: readonly Box[], yard: Box | null): Box | null {
  const [first] = boxes;
  if (!first) return yard;
  let all: Box = first;
  for (const box of boxes) all = joined(all, box);
  if (yard === null) return all;
  const both = joined(all, yard);
  const size = (box: Box) => Math.max(box[2] - box[0], box[3] - box[1], 1e-4);
  return size(both) <= YARD_REACH * Math.max(size(all), size(yard)) ? both : all;
}

function joined(a: Box, b: Box): Box {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
}

function overlaps(a: Box, b: Box): boolean {
  return a[0] <= b[2] && a[2] >= b[0] && a[1] <= b[3] && a[3] >= b[1];
}
