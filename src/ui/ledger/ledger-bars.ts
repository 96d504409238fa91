import { css, html, nothing, svg, type TemplateResult } from 'lit';
import { capMark, needMark } from './limit-marks';

/** One bar: a name, what is done and to come, and the marks it is held against; in the unit of the axis. */
export interface LedgerBar {
  readonly name: string;
  readonly done: number;
  readonly toCome: number;
  readonly need: number | null;
  readonly cap: number | null;
}

/** Styles of the bars, for the component that shows them. */
export const barStyles = css`
  svg.bars { display: block; width: 100%; height: auto; background: var(--sheet); border: 1px solid var(--line); }
  .bars text { fill: var(--ink); font-size: 13px; dominant-baseline: central; }
  .bars .axis { fill: var(--ink-soft); font-size: 12px; text-anchor: middle; }
  .bars .grid { stroke: var(--line); stroke-width: 1; }
  .bars .done { fill: var(--ink); }
  .bars .come { stroke: var(--ink); stroke-width: 1; }
  .bars .hatch { stroke: var(--ink); stroke-width: 1.4; fill: none; }
  .bars .ground { fill: var(--sheet); }
  .bars .need { stroke: var(--ink); stroke-width: 2; fill: none; }
  .bars .cap { stroke: var(--ink); stroke-width: 3.5; fill: none; }
  .bars .under { stroke: var(--sheet); stroke-width: 6; fill: none; }
  .bars .over { font-weight: 700; }
  .key { display: flex; flex-wrap: wrap; gap: 0.25rem 1rem; margin: 0.25rem 0 0.75rem; font-size: var(--text-small); color: var(--ink-soft); }
  .key span { display: inline-flex; align-items: center; gap: 0.35rem; }
  .key svg { flex: none; width: 22px; height: 16px; border: 0; background: none; }
`;

/** Room left, right and below, px; names stand over the bars, or left of them where there is room. */
const EDGE = 8;
const RIGHT = 22;
const FOOT = 26;
const NAMES = 168;
const ROOMY = 520;

const hatch = (id: string) => svg`<pattern id=${id} width="6" height="6" patternUnits="userSpaceOnUse">
  <rect class="ground" width="6" height="6"></rect><path class="hatch" d="M-1 7L7 -1M-1 1L1 -1M5 7L7 5"></path></pattern>`;

/**
 * Bars of a year in ink alone: what is done is filled, what is to come is hatched, the need is a line with a
 * ring at its foot, the cap a thick line with a bar on top. A table beside it says the same.
 * @param label what the picture shows, for those who do not see it
 * @param unit words of the axis
 * @param width of the picture, px
 */
export function drawBars(
  bars: readonly LedgerBar[],
  unit: string,
  label: string,
  width: number,
): TemplateResult {
  const most = Math.max(0, ...bars.flatMap((bar) => [bar.done + bar.toCome, bar.need ?? 0, bar.cap ?? 0]));
  const { top, step } = axisOf(most);
  const isRoomy = width >= ROOMY;
  const left = isRoomy ? NAMES : EDGE;
  const row = isRoomy ? 34 : 46;
  const x = (value: number) => left + (value / top) * (width - left - RIGHT);
  const height = bars.length * row + FOOT + 4;
  const bottom = bars.length * row + 6;
  const ticks = Array.from({ length: Math.round(top / step) + 1 }, (_, index) => index * step);
  return html`
    <svg class="bars" viewBox="0 0 ${width} ${height}" role="img" aria-label=${label}>
      <defs>${hatch('come')}</defs>
      ${ticks.map(
        (tick) => svg`<path class="grid" d=${`M${x(tick)} 4V${bottom}`}></path>
          <text class="axis" x=${x(tick)} y=${bottom + 12}>${Number(tick.toPrecision(3))}</text>`,
      )}
      ${bars.map((bar, index) => drawBar(bar, index * row, x, isRoomy))}
    </svg>
    <p class="key">
      <span>${swatch(svg`<rect class="done" x="1" y="3" width="20" height="10"></rect>`)} done</span>
      <span>${swatch(svg`<defs>${hatch('key-come')}</defs><rect class="come" x="1" y="3" width="20" height="10" fill="url(#key-come)"></rect>`)} to come</span>
      <span>${swatch(svg`<path class="need" d="M11 1V10"></path><circle class="need" cx="11" cy="12.5" r="2.5"></circle>`)} need</span>
      <span>${swatch(svg`<path class="cap" d="M11 2V16M6 2H16"></path>`)} cap</span>
      <span>${unit}</span>
    </p>
  `;
}

function swatch(inside: unknown): TemplateResult {
  return html`<svg class="bars" viewBox="0 0 22 16" width="22" height="16" aria-hidden="true">${inside}</svg>`;
}

function drawBar(bar: LedgerBar, y: number, x: (value: number) => number, isRoomy: boolean) {
  const [nameY, barTop, barHeight] = isRoomy ? [y + 22, y + 15, 14] : [y + 14, y + 28, 14];
  const end = x(bar.done + bar.toCome);
  const over = [bar.need, bar.cap].some(
    (limit) => limit !== null && bar.done + bar.toCome > limit * 1.0000001,
  );
  return svg`
    <text class=${over ? 'over' : ''} x=${EDGE} y=${nameY}>${shorten(bar.name, isRoomy ? 22 : 44)}</text>
    ${bar.done > 0 ? svg`<rect class="done" x=${x(0)} y=${barTop} width=${x(bar.done) - x(0)} height=${barHeight}></rect>` : nothing}
    ${bar.toCome > 0 ? svg`<rect class="come" x=${x(bar.done)} y=${barTop} width=${end - x(bar.done)} height=${barHeight} fill="url(#come)"></rect>` : nothing}
    ${bar.cap === null ? nothing : drawCap(capMark(x(bar.cap), barTop, barHeight))}
    ${bar.need === null ? nothing : drawNeed(x(bar.need), needMark(x(bar.need), barTop, barHeight))}
  `;
}

function drawCap(path: string) {
  return svg`<path class="under" d=${path}></path><path class="cap" d=${path}></path>`;
}

function drawNeed(x: number, { line, ringY }: ReturnType<typeof needMark>) {
  return svg`<path class="under" d=${line}></path><path class="need" d=${line}></path><circle class="need" cx=${x} cy=${ringY} r="2.5"></circle>`;
}

function shorten(name: string, letters: number): string {
  return name.length <= letters ? name : `${name.slice(0, letters - 1)}…`;
}

/** A round end of the axis and its step of 1, 2 or 5 times a power of ten. */
function axisOf(most: number): { readonly top: number; readonly step: number } {
  if (!(most > 0)) return { top: 1, step: 0.5 };
  const rough = most / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((each) => each * power >= rough * 0.999) ?? 10) * power;
  return { top: Math.ceil((most / step) * 0.9999) * step, step };
}
