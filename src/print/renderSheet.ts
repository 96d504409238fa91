import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { HATCHES } from '../draft/hatches';
import { MARK_STROKE, MARK_SYMBOLS } from '../draft/marks';
import { VESSEL_HATCHES } from '../draft/vesselHatches';
import { WALK_SYMBOLS } from '../draft/walkLines';
import { formatDay } from '../units/formatDay';
import { hatchPaths, pathBounds } from './hatchPath';
import type { Block, Drawn, MapPage, SheetModel, TablePage } from './types';

/** mm of paper to a unit of a hatch tile. */
const TILE_MM = (25.4 / 96) * 0.8;
const INK = '#1a1a1a';
const SOFT = '#555555';
const HATCH_INK = '#5c5c5c';
/** of a vessel's ground: lighter, as lines of passes run over it. */
const VESSEL_INK = '#8c8c8c';
const ALL_HATCHES = { ...HATCHES, ...VESSEL_HATCHES };

/** Badges tell apart by shape, weight and black or white. */
const BADGES = {
  round: { fill: '#ffffff', ink: INK, strokeMm: 0.3, isOval: true },
  disc: { fill: INK, ink: '#ffffff', strokeMm: 0.3, isOval: true },
  square: { fill: INK, ink: '#ffffff', strokeMm: 0.3, isOval: false },
  tag: { fill: '#ffffff', ink: INK, strokeMm: 0.2, isOval: false },
  out: { fill: '#ffffff', ink: INK, strokeMm: 0.7, isOval: false },
} as const;

/** The sheet's pages, one `section` a page, to be styled by `sheetStyles.ts`. */
export function renderSheet(model: SheetModel): TemplateResult {
  return html`${model.pages.map((page, i) =>
    page.type === 'map' ? renderMap(page, model, i) : renderTables(page, model, i + 1),
  )}`;
}

function renderMap(page: MapPage, { paper }: SheetModel, index: number): TemplateResult {
  const { frame } = page;
  return html`<section class="ws-page ws-map" aria-label=${page.title}>
    <svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label=${`${page.title}, ${page.scaleWords}`}
      viewBox=${`0 0 ${paper.widthMm} ${paper.heightMm}`}
      width=${`${paper.widthMm}mm`} height=${`${paper.heightMm}mm`}>
      <defs>
        <clipPath id=${`ws-frame${index}`}><rect x=${frame.x} y=${frame.y} width=${frame.width} height=${frame.height} /></clipPath>
      </defs>
      <g clip-path=${`url(#ws-frame${index})`}>${page.ground.map((one, i) => renderDrawn(one, `ws-g${index}-${i}`))}</g>
      <rect x=${frame.x} y=${frame.y} width=${frame.width} height=${frame.height} fill="none" stroke=${INK} stroke-width="0.5" />
      <g>${page.margin.map((one, i) => renderDrawn(one, `ws-m${index}-${i}`))}</g>
    </svg>
  </section>`;
}

/** Ground filled with its hatch as clipped vector lines. @param clipId unique on the page */
function renderHatch(area: Extract<Drawn, { type: 'area' }>, clipId: string) {
  const hatch = area.hatch && ALL_HATCHES[area.hatch];
  if (!hatch) return nothing;
  const ink = hatch.id in VESSEL_HATCHES ? VESSEL_INK : HATCH_INK;
  const { stroked, filled } = hatchPaths(hatch, pathBounds(area.d), TILE_MM);
  const scale = `scale(${TILE_MM})`;
  return svg`<clipPath id=${clipId}><path d=${area.d} clip-rule="evenodd" /></clipPath>
    <g clip-path=${`url(#${clipId})`}>
      ${stroked ? svg`<path d=${stroked} transform=${scale} fill="none" stroke=${ink} stroke-width=${hatch.strokeWidth * 0.75} />` : nothing}
      ${filled ? svg`<path d=${filled} transform=${scale} fill=${ink} />` : nothing}
    </g>`;
}

function renderDrawn(drawn: Drawn, clipId: string): SVGTemplateResult | SVGTemplateResult[] {
  switch (drawn.type) {
    case 'area': {
      const solid = drawn.strokeMm < 0;
      const fill = solid ? INK : 'none';
      const ground = drawn.paper ? svg`<path d=${drawn.d} fill="#ffffff" fill-rule="evenodd" />` : nothing;
      return svg`${ground}${renderHatch(drawn, clipId)}<path d=${drawn.d} fill=${fill} fill-rule="evenodd" stroke=${INK}
        stroke-width=${solid ? 0.2 : drawn.strokeMm} stroke-linejoin="round" />`;
    }
    case 'line':
      return svg`<path d=${drawn.d} fill="none" stroke=${drawn.role === 'under' ? '#ffffff' : INK}
        stroke-width=${drawn.widthMm} stroke-dasharray=${drawn.dashMm.length ? drawn.dashMm.join(' ') : nothing}
        stroke-linecap=${drawn.isRound ? 'round' : nothing} stroke-linejoin="round" data-role=${drawn.role} />`;
    case 'text':
      return svg`<text x=${drawn.x} y=${drawn.y} font-size=${drawn.sizeMm} text-anchor=${drawn.anchor}
        font-weight=${drawn.bold ? 700 : 400} fill=${drawn.light ? SOFT : INK}
        stroke=${drawn.halo ? '#ffffff' : nothing} stroke-width=${drawn.halo ? 0.9 : nothing}
        stroke-linejoin="round" paint-order="stroke">${drawn.text}</text>`;
    case 'badge': {
      const { x, y, halfW, halfH, sizeMm } = drawn;
      const { fill, ink, strokeMm, isOval } = BADGES[drawn.shape];
      return svg`<rect x=${x - halfW} y=${y - halfH} width=${2 * halfW} height=${2 * halfH}
          rx=${isOval ? halfH : 0.3} fill=${fill} stroke=${INK} stroke-width=${strokeMm} />
        <text x=${x} y=${y + sizeMm * 0.36} font-size=${sizeMm} text-anchor="middle" font-weight="700"
          fill=${ink}>${drawn.text}</text>`;
    }
    case 'sign': {
      const { stroked, solid } = WALK_SYMBOLS[drawn.sign];
      return svg`<g transform=${placed(drawn)}>
        <path d=${stroked} fill="#ffffff" stroke=${INK} stroke-width=${MARK_STROKE} /><path d=${solid} fill=${INK} /></g>`;
    }
    case 'mark':
      return svg`<g transform=${placed(drawn)}>
        <circle cx="12" cy="12" r="13" fill="#ffffff" />
        <path d=${MARK_SYMBOLS[drawn.kind]} fill="none" stroke=${INK} stroke-width=${MARK_STROKE} /></g>`;
  }
}

/** A symbol of 24 by 24 put with its middle on its place, 4.4 mm wide at its usual size. */
function placed({ x, y, scale = 1 }: Extract<Drawn, { type: 'mark' | 'sign' }>): string {
  const half = 2.2 * scale;
  return `translate(${x - half} ${y - half}) scale(${(2 * half) / 24})`;
}

function renderTables(page: TablePage, model: SheetModel, number: number): TemplateResult {
  const visit =
    model.visitName === null ? 'Areas' : `${model.visitName}, ${model.visitDate ?? 'no date set'}`;
  return html`<section class="ws-page ws-tables">
    <header class="ws-head">
      <strong>${model.yardName}</strong><span>${visit}</span>
      <span>Drawn ${formatDay(model.drawnOn, true)}${model.hasAreas ? '; areas ± at 95 %' : ''}</span><span>Sheet ${number} of ${model.pages.length}</span>
    </header>
    ${page.blocks.map(renderBlock)}
  </section>`;
}

function renderBlock(block: Block): TemplateResult {
  switch (block.type) {
    case 'heading':
      return html`<h2>${block.text}</h2>`;
    case 'text':
      return html`<p class=${block.strong ? 'ws-strong' : ''}>${block.text}</p>`;
    case 'list':
      return html`<ul class=${block.ticks ? 'ws-ticks' : 'ws-points'}>${block.items.map((item) => html`<li>${item}</li>`)}</ul>`;
    case 'write':
      return html`<div class="ws-write">${block.fields.map((field) => html`<div><span>${field}</span></div>`)}</div>`;
    case 'table': {
      const last = block.rows.length - 1;
      return html`<table>
        <caption class=${block.plain && !block.continued ? 'ws-unseen' : ''}>${block.caption}${block.continued ? ', continued' : ''}</caption>
        <colgroup>${block.columns.map((c) => html`<col width=${`${c.share * 100}%`} />`)}</colgroup>
        <thead><tr>${block.columns.map((c) => html`<th scope="col" class=${c.align}>${c.head}</th>`)}</tr></thead>
        <tbody>${block.rows.map(
          (row, i) =>
            html`<tr class=${block.sum && i === last ? 'ws-sum' : block.strong?.includes(row) ? 'ws-bold' : ''}>${row.map(
              (cell, n) =>
                cell === '☐'
                  ? html`<td><span class="ws-box"></span></td>`
                  : html`<td class=${block.columns[n]?.align ?? 'left'}>${cell}</td>`,
            )}</tr>`,
        )}</tbody>
      </table>`;
    }
  }
}
