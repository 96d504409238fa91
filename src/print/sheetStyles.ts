import { SIZES } from './paginate';
import { HEAD_MM } from './sheetModel';
import type { SheetModel } from './types';

/**
 * Styles of the sheet as text of a constructed stylesheet: lengths in mm, grey only.
 * @param root selector of the element that holds the pages
 * @param printing adds the page size, and hides everything but the root on paper and the root on screen
 */
export function sheetStyles({ paper, baseMm: b }: SheetModel, root: string, printing: boolean): string {
  const mm = (times: number) => `${(times * b).toFixed(3)}mm`;
  const paged = `
@page { size: ${paper.widthMm}mm ${paper.heightMm}mm; margin: 0; }
@media screen { ${root} { display: none; } }
@media print {
  html, body { height: auto; min-height: 0; margin: 0; padding: 0; background: #fff; overflow: visible; }
  body > *:not(${root}) { display: none !important; }
}`;
  return `${printing ? paged : ''}
${root} { color: #1a1a1a; background: #fff; font: 400 ${b}mm/${SIZES.line} Helvetica, "Liberation Sans", Arial, sans-serif;
  font-variant-numeric: tabular-nums; color-scheme: light; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
${root} *, ${root} *::before { box-sizing: border-box; }
${root} .ws-page { position: relative; width: ${paper.widthMm}mm; height: ${paper.heightMm - 0.1}mm; overflow: hidden;
  break-after: page; break-inside: avoid; background: #fff; }
${root} .ws-page:last-of-type { break-after: auto; }
${root} .ws-map svg { display: block; font-family: inherit; }
${root} .ws-tables { padding: ${paper.marginMm}mm; }
${root} .ws-head { display: flex; gap: 5mm; align-items: baseline; justify-content: space-between; height: 8mm;
  margin-bottom: ${HEAD_MM - 8}mm; padding: 1.2mm 2mm; border: 0.5mm solid #1a1a1a; font-size: 3mm; white-space: nowrap; }
${root} .ws-head > * { overflow: hidden; text-overflow: ellipsis; }
${root} .ws-head > *:last-child { flex: none; }
${root} .ws-head strong { font-size: 3.9mm; }
${root} h2 { margin: ${mm(SIZES.headingAbove)} 0 ${mm(SIZES.headingBelow)}; font-size: ${mm(SIZES.headingSize)};
  line-height: ${SIZES.line}; font-weight: 700; }
${root} .ws-head + h2 { margin-top: 0; }
${root} p { margin: 0 0 ${mm(SIZES.blockBelow)}; }
${root} .ws-strong { font-weight: 700; }
${root} table { width: 100%; table-layout: fixed; border-collapse: collapse; margin: 0 0 ${mm(SIZES.blockBelow)}; break-inside: auto; }
${root} caption { text-align: left; padding-bottom: ${mm(SIZES.captionBelow)}; color: #444; white-space: nowrap; overflow: hidden; }
${root} .ws-unseen { height: 0; padding: 0; font-size: 0; }
${root} tr { break-inside: avoid; }
${root} th, ${root} td { padding: ${mm(SIZES.cellPadY)} ${mm(SIZES.cellPadX)}; text-align: left; vertical-align: top;
  overflow-wrap: anywhere; border: 0; border-bottom: ${mm(SIZES.rule / 2)} solid #999; font-size: 1em; color: inherit; }
${root} th { font-weight: 700; border-top: 0.35mm solid #1a1a1a; border-bottom: 0.35mm solid #1a1a1a; vertical-align: bottom; }
${root} .right { text-align: right; }
${root} .right + .left { padding-left: ${mm(SIZES.cellPadX + SIZES.turnGap)}; }
${root} .ws-bold td { font-weight: 700; }
${root} .ws-sum td { font-weight: 700; border-top: 0.3mm solid #1a1a1a; border-bottom: 0.35mm solid #1a1a1a; }
${root} ul { margin: 0 0 ${mm(SIZES.blockBelow)}; padding: 0; list-style: none; }
${root} li { position: relative; padding-left: ${mm(SIZES.tick)}; margin-bottom: ${mm(SIZES.itemBelow)}; break-inside: avoid; }
${root} li::before { content: ""; position: absolute; left: 0; }
${root} .ws-ticks li::before, ${root} .ws-box { display: inline-block; width: ${mm(1)}; height: ${mm(1)}; border: 0.3mm solid #1a1a1a; }
${root} .ws-box { vertical-align: -0.12em; }
${root} .ws-ticks li::before { top: ${mm(0.14)}; }
${root} .ws-points li::before { top: ${mm(0.5)}; left: ${mm(0.5)}; width: ${mm(0.35)}; height: ${mm(0.35)}; background: #1a1a1a; }
${root} .ws-write { display: grid; grid-template-columns: 1fr 1fr; column-gap: 6mm; margin-bottom: ${mm(SIZES.blockBelow)}; }
${root} .ws-write > div { height: ${mm(SIZES.writeHeight)}; border-bottom: 0.3mm solid #1a1a1a; display: flex; align-items: end;
  color: #444; padding-bottom: 0.6mm; }
`;
}
