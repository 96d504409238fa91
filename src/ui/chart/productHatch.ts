import { svg, type TemplateResult } from 'lit';

/** A hatch that reads in black and white: SVG path data stroked on a tile of `size` px, and dots x, y, radius. */
interface ProductHatch {
  readonly size: number;
  readonly lines: readonly string[];
  readonly dots?: readonly (readonly [number, number, number])[];
}

/** In the order in which products get them; neighbours in a stack differ in direction and in weight. */
const HATCHES: readonly ProductHatch[] = [
  { size: 7, lines: ['M-1.75 1.75L1.75 -1.75', 'M0 7L7 0', 'M5.25 8.75L8.75 5.25'] },
  {
    size: 6,
    lines: [],
    dots: [
      [1.5, 1.5, 1.1],
      [4.5, 4.5, 1.1],
    ],
  },
  { size: 5, lines: ['M0 2.5H5'] },
  { size: 8, lines: ['M0 0L8 8', 'M0 8L8 0'] },
  { size: 5, lines: ['M2.5 0V5'] },
  { size: 7, lines: ['M-1.75 5.25L1.75 8.75', 'M0 0L7 7', 'M5.25 -1.75L8.75 1.75'] },
  { size: 6, lines: ['M3 0V6', 'M0 3H6'] },
  { size: 8, lines: ['M0 6L4 2L8 6'] },
];

/** Letter that stands for a product in bars, key and table: A, B … Z, then A2. */
export function productLetter(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letter}${Math.floor(index / 26) + 1}`;
}

/** A pattern for a drawing's `defs`; the ink is set by class `ink` of the drawing's own styles. */
export function productPattern(index: number, id: string): TemplateResult {
  const hatch = HATCHES[index % HATCHES.length] as ProductHatch;
  return svg`<pattern id=${id} width=${hatch.size} height=${hatch.size} patternUnits="userSpaceOnUse">
    ${hatch.lines.map((d) => svg`<path class="hatch-line" d=${d} />`)}
    ${(hatch.dots ?? []).map(([x, y, r]) => svg`<circle class="hatch-dot" cx=${x} cy=${y} r=${r} />`)}
  </pattern>`;
}
