import { css, html, nothing, svg, type TemplateResult } from 'lit';
import type { XY } from '../../measure/types';
import { middleOfArc } from '../../survey/plat/placeTraverse';
import { callVector } from '../../survey/plat/traverse';
import type { PlatCall, Traverse } from '../../survey/plat/types';

const WIDTH = 340;
const HEIGHT = 260;
const MARGIN = 30;
/** A gap shorter than this on the sketch is drawn this long, so that it can be seen. */
const LEAST_GAP_PX = 26;
/** Numbers closer together than this are left out. */
const NUMBER_ROOM_PX = 17;

/** Styles of the sketch, for the component that shows it. */
export const platSketchStyles = css`
  .plat-sketch svg { display: block; width: 100%; height: auto; max-height: 20rem; background: var(--sheet); border: 1px solid var(--line); border-radius: var(--radius); }
  .plat-sketch .ground { fill: var(--sheet-sunk); stroke: none; }
  .plat-sketch .calls { fill: none; stroke: var(--ink); stroke-width: 2; stroke-linejoin: round; }
  .plat-sketch .last { fill: none; stroke: var(--accent); stroke-width: 2; stroke-dasharray: 6 4; }
  .plat-sketch .gap { stroke: var(--danger); stroke-width: 2; }
  .plat-sketch .start { fill: var(--accent); stroke: var(--sheet); stroke-width: 2; }
  .plat-sketch .corner { fill: var(--ink); }
  .plat-sketch text { fill: var(--ink); font-size: 12px; font-weight: 600; text-anchor: middle; dominant-baseline: central; paint-order: stroke; stroke: var(--sheet); stroke-width: 4px; stroke-linejoin: round; }
  .plat-sketch text.soft { fill: var(--ink-soft); font-size: 11px; }
  .plat-sketch .north { fill: none; stroke: var(--ink-soft); stroke-width: 1.5; }
  .plat-sketch figcaption { color: var(--ink-soft); font-size: var(--text-small); }
  figure.plat-sketch { margin: 0; }
`;

/** The calls as written, to scale, plat north up; the gap made longer where it would not be seen. */
export function drawPlatSketch(
  written: Traverse,
  numbers: readonly number[],
  hasGap: boolean,
  isWhole: boolean,
  closesBySide: boolean,
): TemplateResult | typeof nothing {
  const { calls, points } = written;
  if (calls.length === 0) return nothing;
  const { view, scale } = viewOf(points.concat(calls.map((call, i) => middleOf(call, points[i] ?? [0, 0]))));
  const path = `M${spot(view([0, 0]))}${calls.map((call, i) => segment(call, points[i + 1] ?? [0, 0], view, scale)).join('')}`;
  const start = view([0, 0]);
  const end = view(points.at(-1) ?? [0, 0]);
  const gapPx = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const isShort = hasGap && isWhole && gapPx < LEAST_GAP_PX;
  const times = LEAST_GAP_PX / Math.max(gapPx, 1e-9);
  const shownEnd: XY = isShort
    ? [start[0] + (end[0] - start[0]) * times, start[1] + (end[1] - start[1]) * times]
    : end;
  return html`<figure class="plat-sketch">
    <svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label=${`Sketch of ${calls.length} calls, the plat’s north up`}>
      ${isWhole ? svg`<path class="ground" d=${`${path}Z`} />` : nothing}
      <path class="calls" d=${path} />
      ${points.map((point) => {
        const [x, y] = view(point);
        return svg`<circle class="corner" cx=${x} cy=${y} r="2.5" />`;
      })}
      ${hasGap && isWhole && closesBySide && !isShort ? svg`<path class="last" d=${`M${spot(end)}L${spot(start)}`} />` : nothing}
      ${hasGap && isWhole && !(closesBySide && !isShort) ? svg`<line class="gap" x1=${start[0]} y1=${start[1]} x2=${shownEnd[0]} y2=${shownEnd[1]} />` : nothing}
      <circle class="start" cx=${start[0]} cy=${start[1]} r="6" />
      ${placeNumbers(written, numbers, view)}
      <path class="north" d="M20 42V16M14 24L20 16L26 24" /><text class="soft" x="20" y="52">N</text>
    </svg>
    <figcaption>The dot is the point of beginning.${isShort ? ` The gap (red) is drawn ${Math.round(times).toLocaleString('en-US')} times its size.` : ''}${isWhole ? '' : ' Drawn up to the first line that is not understood.'}</figcaption>
  </figure>`;
}

function middleOf(call: PlatCall, from: XY): XY {
  if (call.kind === 'arc') return middleOfArc(call, from);
  const [dx, dy] = callVector(call);
  return [from[0] + dx / 2, from[1] + dy / 2];
}

/** A number beside the middle of each call, outside the figure; left out where there is no room. */
function placeNumbers(
  { calls, points, isClockwise }: Traverse,
  numbers: readonly number[],
  view: (p: XY) => XY,
) {
  const placed: XY[] = [view([0, 0])];
  return calls.map((call, i) => {
    const [x, y] = view(middleOf(call, points[i] ?? [0, 0]));
    const [dx, dy] = callVector(call);
    const length = Math.hypot(dx, dy) || 1;
    const side = isClockwise ? -1 : 1;
    const at: XY = [x + (side * 11 * dy) / length, y + (side * 11 * dx) / length];
    if (placed.some(([px, py]) => Math.hypot(px - at[0], py - at[1]) < NUMBER_ROOM_PX)) return nothing;
    placed.push(at);
    return svg`<text x=${at[0].toFixed(1)} y=${at[1].toFixed(1)}>${numbers[i] ?? i + 1}</text>`;
  });
}

function segment(call: PlatCall, to: XY, view: (p: XY) => XY, scale: number): string {
  if (call.kind === 'line') return `L${spot(view(to))}`;
  const r = (call.radiusM * scale).toFixed(2);
  // seen from above with north up, a right turn runs clockwise on the screen
  return `A${r} ${r} 0 ${call.deltaDeg > 180 ? 1 : 0} ${call.turn === 'right' ? 1 : 0} ${spot(view(to))}`;
}

function spot([x, y]: XY): string {
  return `${x.toFixed(2)} ${y.toFixed(2)}`;
}

function viewOf(points: readonly XY[]): { view: (p: XY) => XY; scale: number } {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min(
    (WIDTH - 2 * MARGIN - 20) / (maxX - minX || 1e-9),
    (HEIGHT - 2 * MARGIN) / (maxY - minY || 1e-9),
  );
  return {
    scale,
    view: ([x, y]) => [
      WIDTH / 2 + 10 + (x - (minX + maxX) / 2) * scale,
      HEIGHT / 2 - (y - (minY + maxY) / 2) * scale,
    ],
  };
}
