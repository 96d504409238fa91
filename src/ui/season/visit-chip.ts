import { css, html, nothing, svg, type TemplateResult } from 'lit';
import { HATCHES, ZONE_INKS } from '../../draft/hatches';
import { productOfDose } from '../../plan/applyUse';
import { dateOfVisit } from '../../plan/heldWith';
import { isLiquid } from '../../plan/rate';
import { CLASS_WORDS } from '../../words/productWords';
import { classesOfVisit, dayWords, productsWords, visitName } from '../../words/seasonWords';
import { type Issue, type Visit, type Yard, ZONE_CLASSES, type ZoneClass } from '../../yard/types';

/** What a chip shows of a visit. */
export interface ChipModel {
  readonly visit: Visit;
  readonly issues: readonly Issue[];
  /** held over a day it is not on yet. */
  readonly isHeld: boolean;
  readonly isDone: boolean;
}

/** Classes of a chip. @param isDragged held by pointer: its own place is left */
export function chipClasses({ issues, isHeld, isDone }: ChipModel, isDragged: boolean): string {
  return [
    'chip',
    isDone ? 'done' : 'planned',
    isHeld ? (isDragged ? 'left' : 'held') : '',
    issues.some((issue) => issue.severity === 'error') ? 'wrong' : '',
  ].join(' ');
}

/** The words of a chip for those who hear it: what, when, where, done or not, and what is wrong. */
export function chipLabel(yard: Yard, { visit, issues, isDone }: ChipModel): string {
  const date = dateOfVisit(visit);
  const classes = classesOfVisit(yard, visit).map((one) => CLASS_WORDS[one].toLowerCase());
  const parts = [
    visitName(visit),
    date ? dayWords(date, true) : 'without a day',
    isDone ? 'done' : 'planned',
    productsWords(yard, visit) || 'nothing to put out yet',
    classes.length > 0 ? `on ${classes.join(' and ')}` : 'on no ground',
    ...issues.map((issue) =>
      issue.severity === 'error' ? `not right: ${issue.message}` : `check: ${issue.message}`,
    ),
  ];
  return parts.join('; ');
}

/** Hatches of the ground as patterns, once for all chips of a calendar: `url(#ground-…)` in its own root. */
export function groundPatterns(isDark: boolean): TemplateResult {
  return html`<svg class="patterns" width="0" height="0" aria-hidden="true"><defs>
    ${ZONE_CLASSES.map((one) => {
      const hatch = HATCHES[one];
      const { ink } = inksOf(one, isDark);
      return svg`<pattern id=${`ground-${one}`} width=${hatch.width} height=${hatch.height} patternUnits="userSpaceOnUse">
        ${hatch.lines.map((d) => svg`<path d=${d} fill="none" stroke=${ink} stroke-width=${hatch.strokeWidth} />`)}
        ${hatch.blots.map((d) => svg`<path d=${d} fill=${ink} />`)}
        ${hatch.dots.map(([x, y, r]) => svg`<circle cx=${x} cy=${y} r=${r} fill=${ink} />`)}
      </pattern>`;
    })}
${svg`<pattern id="ground-barred" width="6" height="6" patternUnits="userSpaceOnUse"><path d="M0 6L6 0M0 0L6 6" fill="none" stroke="currentColor" stroke-width="1" /></pattern>
      <pattern id="ground-held" width="6" height="6" patternUnits="userSpaceOnUse"><path d="M0 1.5H6M0 4.5H6" fill="none" stroke="currentColor" stroke-width="1" stroke-dasharray="3 1.5" /></pattern>`}
  </defs></svg>`;
}

function inksOf(one: ZoneClass, isDark: boolean) {
  const kind = one === 'bed' || one === 'other' ? one : 'turf';
  return ZONE_INKS[kind][isDark ? 'dark' : 'light'];
}

/** A strip of the hatches of some classes of ground, one below the other. */
export function groundStrip(classes: readonly ZoneClass[], isDark: boolean): TemplateResult {
  const share = 100 / Math.max(1, classes.length);
  return html`<svg class="ground" aria-hidden="true">${classes.map((one, i) => {
    const y = `${i * share}%`;
    const { tint } = inksOf(one, isDark);
    return svg`<rect x="0" y=${y} width="100%" height=${`${share}%`} fill=${tint} fill-opacity="0.22" />
      <rect x="0" y=${y} width="100%" height=${`${share}%`} fill=${`url(#ground-${one})`} />`;
  })}</svg>`;
}

/** What goes out, as small marks: a drop for what is poured, grains for what is strewn. */
function formMarks(yard: Yard, visit: Visit): TemplateResult {
  const products = visit.doses.flatMap((dose) => productOfDose(yard.products, dose) ?? []);
  const isPoured = products.some(isLiquid);
  const isStrewn = products.some((product) => !isLiquid(product));
  return html`${isPoured ? mark('M6 1C8.5 4.5 10 6 10 8A4 4 0 0 1 2 8C2 6 3.5 4.5 6 1Z', false) : nothing}${
    isStrewn ? mark('M3 3H5V5H3ZM7 2H9V4H7ZM2 8H4V10H2ZM6 7H8V9H6ZM9 8H11V10H9Z', true) : nothing
  }`;
}

function mark(path: string, isFilled: boolean): TemplateResult {
  return html`<svg class="form" viewBox="0 0 12 12" aria-hidden="true">${svg`<path d=${path} fill=${isFilled ? 'currentColor' : 'none'} stroke="currentColor" stroke-width=${isFilled ? 0 : 1.3} />`}</svg>`;
}

/** The inside of a chip: hatch of the ground, name, what goes out, and its state in a word. */
export function chipFace(yard: Yard, model: ChipModel, isDark: boolean): TemplateResult {
  const { visit, issues, isDone } = model;
  const isWrong = issues.some((issue) => issue.severity === 'error');
  return html`${groundStrip(classesOfVisit(yard, visit), isDark)}
    <span class="words">
      <span class="name">${visitName(visit)}</span>
      <span class="what">${formMarks(yard, visit)} ${productsWords(yard, visit) || 'no product'}</span>
      ${isDone ? html`<span class="state">✓ done</span>` : nothing}
      ${issues.length > 0 ? html`<span class="fault">${isWrong ? '! not right' : '! check'}</span>` : nothing}
    </span>
    <span class="signs">${formMarks(yard, visit)}${isDone ? '✓' : ''}${issues.length > 0 ? html`<b class="fault">!</b>` : nothing}</span>`;
}

export const chipStyles = css`
  .patterns { position: absolute; }
  .chip { position: relative; display: block; width: 100%; min-height: var(--touch); min-width: 0; padding: 0 0 0 12px; text-align: left;
    font-size: 0.8125rem; line-height: 1.2; border: 1.5px dashed var(--ink-soft); background: var(--sheet); scroll-margin: 3rem 0 15rem; touch-action: pan-y; user-select: none; -webkit-user-select: none; -webkit-touch-callout: none; cursor: grab; overflow: hidden; }
  .chip.done { border-style: solid; border-color: var(--ink); background: var(--sheet-sunk); cursor: pointer; }
  .chip.held { border-style: solid; border-color: var(--focus); box-shadow: 0 0 0 2px var(--focus); }
  .chip.left { opacity: 0.4; }
  .chip.wrong { border-color: var(--danger); }
  .chip .ground { position: absolute; inset: 0 auto 0 0; width: 12px; height: 100%; border-right: 1px solid var(--line-strong); }
  .key .ground { width: 100%; height: 100%; display: block; }
  .chip .words { display: block; padding: 0.2rem 0.3rem; min-width: 0; }
  .chip .name { display: block; font-weight: 650; overflow-wrap: anywhere; }
  .chip .what { display: block; color: var(--ink-soft); font-size: 0.75rem; overflow-wrap: anywhere; }
  td .chip .what { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 3; overflow: hidden; }
  .chip .state { font-weight: 650; font-size: 0.75rem; display: block; }
  .chip .fault { font-weight: 650; font-size: 0.75rem; color: var(--danger); display: block; }
  .chip .signs { display: none; }
  @container weeks (max-width: 520px) {
    /* no room for words: the hatch, what goes out and how it stands; the words are below, and in the list */
    td .chip { padding-left: 0; }
    td .chip .ground { width: 100%; border: 0; }
    td .chip .words { display: none; }
    td .chip .signs { position: relative; display: flex; flex-wrap: wrap; justify-content: center; align-items: center; gap: 0 0.15rem; width: fit-content; max-width: 100%; min-width: 1.5rem; margin: auto; padding: 0.1rem; line-height: 1.25; background: var(--sheet); color: var(--ink); font-size: 0.875rem; }
  }
  .form { width: 0.75rem; height: 0.75rem; vertical-align: -0.1rem; }
`;
