import type { Derived } from '../session/types';
import type { Yard } from '../yard/types';
import { groundBounds, type MapInput, mapPage, ratioOn } from './mapPage';
import { type PageRoom, pageFill, paginate } from './paginate';
import { paperOf } from './paper';
import {
  type Block,
  type MapPage,
  type Paper,
  SHEET_PARTS,
  type SheetModel,
  type SheetOptions,
} from './types';
import { visitBlocks } from './visitBlocks';
import { yardBlocks } from './yardBlocks';

/** Height of the strip with yard, visit and sheet number above the tables, with the space under it, mm. */
export const HEAD_MM = 11;
/** Height kept free at the foot of a page of tables, mm. */
const FOOT_MM = 1;
/** Sizes of type tried to spare a last page that would stay nearly empty, as shares of the wanted size. */
const SQUEEZES = [0.97, 0.94, 0.91];
/** Fill of a last page that is worth sparing. */
const THIN_PAGE = 0.3;

/** Every part, US Letter, lying or standing as the ground fits larger. @param drawnOn as it is to be printed */
export function defaultSheetOptions(drawnOn: string, paper: SheetOptions['paper'] = 'letter'): SheetOptions {
  return { paper, orientation: 'auto', scale: 'auto', parts: SHEET_PARTS, bigType: false, drawnOn };
}

/**
 * The sheet as plain data: zone map and work sheet of a visit, or zone map and areas of the yard alone.
 * @param visitId null, or an id that the yard does not have: the sheet without a visit
 * @returns pages in printing order; none when no part has anything to show
 */
export function sheetModel(
  yard: Yard,
  derived: Derived,
  visitId: string | null,
  options: SheetOptions,
): SheetModel {
  const visit = visitId === null ? null : derived.visit(visitId);
  const input: MapInput = { yard, derived, visit, options };
  const paper = choosePaper(input);
  const blocks = visit
    ? visitBlocks(yard, visit, options.parts)
    : options.parts.includes('zones')
      ? yardBlocks(yard, derived)
      : [];
  const { tables, baseMm } = setTables(blocks, paper, options.bigType ? 4.4 : 3.35);
  const visitName = visit ? visit.figures.visit.name : null;
  const visitDate = visit ? visit.figures.visit.date : null;
  const hasMap = options.parts.includes('map') && groundBounds(yard, derived) !== null;
  const count = tables.length + (hasMap ? 1 : 0);
  const rows: [string, string][] = [['Yard', yard.name]];
  if (visitName !== null) rows.push(['Visit', visitName], ['On', visitDate ?? 'no date set']);
  rows.push(['Drawn', options.drawnOn], ['Areas', '± at 95 %'], ['Sheet', `1 of ${count}`]);
  const map: MapPage | null = hasMap ? mapPage(input, paper, rows) : null;
  return {
    paper,
    baseMm,
    yardName: yard.name,
    visitName,
    visitDate,
    drawnOn: options.drawnOn,
    pages: map ? [map, ...tables] : tables,
  };
}

/** The blocks on pages; type somewhat smaller where that spares a last page with little on it. */
function setTables(blocks: readonly Block[], paper: Paper, wantedMm: number) {
  const roomOf = (baseMm: number): PageRoom => ({
    widthMm: paper.widthMm - 2 * paper.marginMm,
    heightMm: paper.heightMm - 2 * paper.marginMm - HEAD_MM - FOOT_MM,
    baseMm,
  });
  const set = (baseMm: number) => ({ baseMm, tables: paginate(blocks, roomOf(baseMm)) });
  const usual = set(wantedMm);
  const last = usual.tables.at(-1);
  if (!last || usual.tables.length < 2 || pageFill(last, roomOf(wantedMm)) > THIN_PAGE) return usual;
  for (const squeeze of SQUEEZES) {
    const tried = set(wantedMm * squeeze);
    if (tried.tables.length < usual.tables.length) return tried;
  }
  return usual;
}

/** `auto`: standing, unless the map comes out larger on the lying paper. */
function choosePaper(input: MapInput): Paper {
  const { paper, orientation, parts } = input.options;
  const standing = paperOf(paper, false);
  const lying = paperOf(paper, true);
  if (orientation !== 'auto') return orientation === 'landscape' ? lying : standing;
  const bounds = groundBounds(input.yard, input.derived);
  if (!parts.includes('map') || !bounds) return standing;
  return ratioOn(lying, bounds, input).ratio < ratioOn(standing, bounds, input).ratio ? lying : standing;
}
