import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { HATCHES } from '../draft/hatches';
import { MARK_STROKE, MARK_SYMBOLS } from '../draft/marks';
import { formatDay } from '../units/formatDay';
import { hatchPaths, pathBounds } from './hatchPath';
import type { Block, Drawn, MapPage, SheetModel, TablePage } from './types';

/** mm of paper to a unit of a hatch tile. */
const TILE_MM = (25.4 / 96) * 0.8;
const INK = '#1a1a1a';
const SOFT = '#555555';
const HATCH_INK = '#5c5c5c';

/** The sheet's pages, one `section` a page, to be styled by `sheetStyles.ts`. */
export function renderSheet(model: SheetModel): TemplateResult {
  return html`${model.pages.map((page, i) =>
    page.type === 'map' ? renderMap(page, model) : renderTables(page, model, i + 1),
  )}`;
}

function renderMap(page: MapPage, { paper }: SheetModel): TemplateResult {
  const { frame } = page;
  return html`<section class="ws-page ws-map" aria-label=${page.title}>
    <svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label=${`${page.title}, ${page.scaleWords}`}
      viewBox=${`0 0 ${paper.widthMm} ${paper.heightMm}`}
      width=${`${paper.widthMm}mm`} height=${`${paper.heightMm}mm`}>
      <defs>
        <clipPath id="ws-frame"><rect x=${frame.x} y=${frame.y} width=${frame.width} height=${frame.height} /></clipPath>
      </defs>
      <g clip-path="url(#ws-frame)">${page.ground.map((one, i) => renderDrawn(one, `ws-g${i}`))}</g>
      <rect x=${frame.x} y=${frame.y} width=${frame.width} height=${frame.height} fill="none" stroke=${INK} stroke-width="0.5" />
      <g>${page.margin.map((one, i) => renderDrawn(one, `ws-m${i}`))}</g>
    </svg>
  </section>`;
}

/** Ground filled with its hatch as clipped vector lines. @param clipId unique on the page */
function renderHatch(area: Extract<Drawn, { type: 'area' }>, clipId: string) {
  const hatch = area.hatch && HATCHES[area.hatch];
  if (!hatch) return nothing;
  const { stroked, filled } = hatchPaths(hatch, pathBounds(area.d), TILE_MM);
  const scale = `scale(${TILE_MM})`;
  return svg`<clipPath id=${clipId}><path d=${area.d} clip-rule="evenodd" /></clipPath>
    <g clip-path=${`url(#${clipId})`}>
      ${stroked ? svg`<path d=${stroked} transform=${scale} fill="none" stroke=${HATCH_INK} stroke-width=${hatch.strokeWidth * 0.75} />` : nothing}
      ${filled ? svg`<path d=${filled} transform=${scale} fill=${HATCH_INK} />` : nothing}
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
        stroke-linejoin="round" data-role=${drawn.role} />`;
    case 'text':
      return svg`<text x=${drawn.x} y=${drawn.y} font-size=${drawn.sizeMm} text-anchor=${drawn.anchor}
        font-weight=${drawn.bold ? 700 : 400} fill=${drawn.light ? SOFT : INK}
        stroke=${drawn.halo ? '#ffffff' : nothing} stroke-width=${drawn.halo ? 0.9 : nothing}
        stroke-linejoin="round" paint-order="stroke">${drawn.text}</text>`;
    case 'badge': {
      const { x, y, halfW, halfH, sizeMm } = drawn;
      const round = drawn.shape === 'round';
      return svg`<rect x=${x - halfW} y=${y - halfH} width=${2 * halfW} height=${2 * halfH}
          rx=${round ? halfH : 0.3} fill=${round ? '#ffffff' : INK} stroke=${INK} stroke-width="0.3" />
        <text x=${x} y=${y + sizeMm * 0.36} font-size=${sizeMm} text-anchor="middle" font-weight="700"
          fill=${round ? INK : '#ffffff'}>${drawn.text}</text>`;
    }
    case 'mark':
      return svg`<g transform=${`translate(${drawn.x - 2.2} ${drawn.y - 2.2}) scale(${4.4 / 24})`}>
        <circle cx="12" cy="12" r="13" fill="#ffffff" />
        <path d=${MARK_SYMBOLS[drawn.kind]} fill="none" stroke=${INK} stroke-width=${MARK_STROKE} /></g>`;
  }
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
