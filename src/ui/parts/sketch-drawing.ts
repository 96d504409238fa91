import { css, html, nothing, svg, type TemplateResult } from 'lit';
import type { XY } from '../../measure/types';

/** A line with words: a side of the outline or a help line across it. */
export interface SketchLine {
  readonly from: XY;
  readonly to: XY;
  readonly words: string;
  /**
   * `side`: run with the ground at its left, its words outside; `help`: thin and dashed, its words along it;
   * `tip`: the same, its words beyond `to`; `angle`: words alone, at `to`.
   */
  readonly role: 'side' | 'help' | 'tip' | 'angle';
}

/** What a sketch shows, in metres: x to the right, y up. */
export interface Sketch {
  readonly rings: readonly (readonly XY[])[];
  readonly lines: readonly SketchLine[];
  /** true: up is north, and an arrow says so. */
  readonly hasNorth: boolean;
}

const WIDTH = 320;
const HEIGHT = 220;
/** Room round the outline, and most of it for words at the left and right. */
const MARGIN = 28;
const MOST_MARGIN = 86;
const TEXT_PX = 13;
/** Mean width of a letter. */
const LETTER_PX = 6.6;

/** Styles of a sketch, for the component that shows it. */
export const sketchStyles = css`
  svg.sketch { display: block; width: 100%; height: auto; max-height: 18rem; background: var(--sheet); border: 1px solid var(--line); border-radius: var(--radius); }
  .sketch .ground { fill: var(--sheet-sunk); stroke: var(--ink); stroke-width: 2; stroke-linejoin: round; fill-rule: evenodd; }
  .sketch .help { stroke: var(--accent); stroke-width: 1.25; stroke-dasharray: 5 3; }
  .sketch text { fill: var(--ink); font-size: 13px; font-weight: 600; text-anchor: middle; dominant-baseline: central; paint-order: stroke; stroke: var(--sheet); stroke-width: 4px; stroke-linejoin: round; }
  .sketch text.on { stroke: var(--sheet-sunk); fill: var(--accent); }
  .sketch .north { fill: none; stroke: var(--ink-soft); stroke-width: 1.5; }
  .sketch text.n { fill: var(--ink-soft); font-size: 11px; }
`;

/** Draws an outline to scale with words at its lines. @param label what the picture shows, for those who do not see it */
export function drawSketch(sketch: Sketch, label: string): TemplateResult {
  const all = [...sketch.rings.flat(), ...sketch.lines.flatMap((line) => [line.from, line.to])];
  const view = viewOf(all, marginFor(sketch.lines));
  const path = sketch.rings
    .map(
      (ring) =>
        `M${ring
          .map((p) =>
            view(p)
              .map((v) => v.toFixed(2))
              .join(' '),
          )
          .join('L')}Z`,
    )
    .join('');
  const help = sketch.lines.filter((line) => line.role === 'help' || line.role === 'tip');
  const placed: Box[] = [];
  return html`<svg class="sketch" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label=${label}>
    <path class="ground" d=${path} />
    ${help.map((line) => {
      const [[x1, y1], [x2, y2]] = [view(line.from), view(line.to)];
      return svg`<line class="help" x1=${x1} y1=${y1} x2=${x2} y2=${y2} />`;
    })}
    ${sketch.hasNorth ? svg`<path class="north" d="M18 40V16M13 22L18 15L23 22" /><text class="n" x="18" y="50">N</text>` : nothing}
    ${sketch.lines.map((line) => {
      if (line.words === '') return nothing;
      const at = wordsAt(line, view, help, placed);
      return at
        ? svg`<text class=${line.role === 'side' ? '' : 'on'} x=${at[0]} y=${at[1]}>${line.words}</text>`
        : nothing;
    })}
  </svg>`;
}

/** Words of sides stand at the left and right of an outline. */
function marginFor(lines: readonly SketchLine[]): number {
  const longest = Math.max(
    0,
    ...lines.filter((line) => line.role === 'side').map((line) => line.words.length),
  );
  return Math.min(MOST_MARGIN, Math.max(MARGIN, longest * LETTER_PX + 16));
}

function viewOf(points: readonly XY[], marginX: number): View {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const [w, h] = [maxX - minX || 1e-9, maxY - minY || 1e-9];
  const scale = Math.min((WIDTH - 2 * marginX) / w, (HEIGHT - 2 * MARGIN) / h);
  return ([x, y]) => [
    WIDTH / 2 + (x - (minX + maxX) / 2) * scale,
    HEIGHT / 2 - (y - (minY + maxY) / 2) * scale,
  ];
}

type View = (p: XY) => XY;
type Box = readonly [x: number, y: number, halfWidth: number];

/** Where the words of a line go: beside a side, away from the middle; on a help line. Null where others stand already. */
function wordsAt(line: SketchLine, view: View, help: readonly SketchLine[], placed: Box[]): XY | null {
  const [a, b] = [view(line.from), view(line.to)];
  const half = Math.max(8, (line.words.length * LETTER_PX) / 2);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [dx, dy]: XY = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  for (const [share, away] of spotsFor(line.role, dx, dy, half)) {
    const at: XY = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
    const out: XY = line.role === 'tip' ? [dx, dy] : [-dy, dx];
    const x = Math.min(WIDTH - half - 3, Math.max(half + 3, at[0] + out[0] * away));
    const y = Math.min(HEIGHT - 10, Math.max(10, at[1] + out[1] * away));
    const isFree = placed.every(
      ([px, py, ph]) => Math.abs(py - y) > TEXT_PX + 1 || Math.abs(px - x) > ph + half + 3,
    );
    const others = help.filter((other) => other !== line && other.words !== '');
    if (
      line.role === 'help' &&
      others.some((other) => doesCross(view(other.from), view(other.to), [x, y, half]))
    )
      continue;
    if (!isFree) continue;
    placed.push([x, y, half]);
    return [Number(x.toFixed(2)), Number(y.toFixed(2))];
  }
  return null;
}

/** Where along a line its words may stand, best first: share of the line, and px out from it. */
function spotsFor(
  role: SketchLine['role'],
  dx: number,
  dy: number,
  half: number,
): readonly (readonly [share: number, away: number])[] {
  if (role === 'angle') return [[1, 0]];
  if (role === 'tip') {
    const away = TEXT_PX * 0.5 + 4 + Math.abs(dx) * (half - 6);
    return [0, 1, 2].map((row) => [1, away + row * (TEXT_PX + 2)]);
  }
  const gap = role === 'side' ? 6 : 3;
  const away = TEXT_PX * 0.5 + gap + Math.abs(dy) * (half - gap);
  // outlines turn left on the ground, so the right of a side is outside; y runs down on the screen
  if (role === 'side') return [0.5, 0.3, 0.7].map((share) => [share, away]);
  // words of a help line stand above it or at its right, and on it when it slants
  const isSlant = Math.abs(dx) > 0.35 && Math.abs(dy) > 0.35;
  const isOther = Math.abs(dx) > 0.3 ? dx > 0 : dy > 0;
  const shift = isSlant ? 0 : isOther ? -away : away;
  return [0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85].map((share) => [share, shift]);
}

/** Whether a line runs through words. */
function doesCross(a: XY, b: XY, [x, y, half]: Box): boolean {
  const steps = Array.from({ length: 41 }, (_, i) => i / 40);
  return steps.some((t) => {
    const [px, py] = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
    return Math.abs(px - x) <= half && Math.abs(py - y) <= TEXT_PX / 2;
  });
}
