import type { VisitCoverage } from '../cover/passTypes';
import { dateOfVisit } from '../plan/heldWith';
import type { Derived } from '../session/types';
import { formatDay } from '../units/formatDay';
import type { Yard } from '../yard/types';
import { doseWalks, pagesOf } from './doseWalks';
import { groundBounds, type MapInput, type PrintedWalk, ratioOn } from './mapFrame';
import { mapPage } from './mapPage';
import { countPoorBreaks, paginate } from './paginate';
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
/** Sizes of type tried, as shares of the wanted size. */
const SIZES_TRIED = [1, 0.97, 0.94, 0.91];
/** Pages that one poor break, or all of the type's size, is held to be worth. */
const PAGES_PER_BREAK = 0.2;
const PAGES_PER_SHRINK = 2;

/** Every part, US Letter, lying or standing as the ground fits larger. @param drawnOn as it is to be printed */
export function defaultSheetOptions(drawnOn: string, paper: SheetOptions['paper'] = 'letter'): SheetOptions {
  return { paper, orientation: 'auto', scale: 'auto', parts: SHEET_PARTS, bigType: false, drawnOn };
}

/**
 * The sheet as plain data: zone map and work sheet of a visit, or zone map and areas of the yard alone.
 * @param visitId null, or an id that the yard does not have: the sheet without a visit
 * @param coverage the walks of that visit; null: not laid out, so no map and table of passes
 * @returns pages in printing order; none when no part has anything to show
 */
export function sheetModel(
  yard: Yard,
  derived: Derived,
  visitId: string | null,
  options: SheetOptions,
  coverage: VisitCoverage | null = null,
): SheetModel {
  const visit = visitId === null ? null : derived.visit(visitId);
  const input: MapInput = { yard, derived, visit, options };
  const paper = choosePaper(input);
  const season = derived.season().issues.filter(({ place }) => place.visitId === visitId);
  const visits = yard.visits.flatMap(({ id }) => derived.visit(id)?.figures ?? []);
  const walks =
    visit && coverage?.visitId === visitId && options.parts.includes('passes')
      ? doseWalks(derived, visit, coverage, options.doseId ?? null)
      : [];
  const blocks = visit
    ? visitBlocks(yard, visit, options.parts, season, visits, walks)
    : options.parts.includes('zones')
      ? yardBlocks(yard, derived)
      : [];
  const { tables, baseMm } = setTables(blocks, paper, options.bigType ? 4.4 : 3.35);
  const visitName = visit ? visit.figures.visit.name : null;
  const visitDay = visit && dateOfVisit(visit.figures.visit);
  const visitDate = visitDay && formatDay(visitDay, true);
  const hasGround = groundBounds(yard, derived) !== null;
  // one map of the zones, then one of each walk: a helper takes the one of the product in hand
  const drawn: (PrintedWalk | null)[] = hasGround
    ? [...(options.parts.includes('map') ? [null] : []), ...walks.flatMap(pagesOf)]
    : [];
  const count = tables.length + drawn.length;
  const maps = drawn.flatMap((walk, i): MapPage | [] => {
    const rows: [string, string][] = [['Yard', yard.name]];
    if (walk) rows.push(['Passes', walk.name]);
    if (walk?.coats === 2) rows.push(['Coat', `${walk.coat} of 2`]);
    if (visitName !== null) rows.push(['Visit', visitName], ['On', visitDate ?? 'no date set']);
    rows.push(['Drawn', formatDay(options.drawnOn, true)]);
    if (!walk) rows.push(['Areas', '± at 95 %']);
    rows.push(['Sheet', `${i + 1} of ${count}`]);
    return mapPage({ ...input, walk }, paper, rows) ?? [];
  });
  return {
    paper,
    baseMm,
    yardName: yard.name,
    visitName,
    visitDate,
    drawnOn: options.drawnOn,
    hasAreas: true,
    pages: [...maps, ...tables],
  };
}

/** The blocks on pages; type somewhat smaller where that spares a page or a poor break. */
function setTables(blocks: readonly Block[], paper: Paper, wantedMm: number) {
  const sets = SIZES_TRIED.map((share) => {
    const baseMm = wantedMm * share;
    const tables = paginate(blocks, {
      widthMm: paper.widthMm - 2 * paper.marginMm,
      heightMm: paper.heightMm - 2 * paper.marginMm - HEAD_MM - FOOT_MM,
      baseMm,
    });
    const cost = tables.length + PAGES_PER_BREAK * countPoorBreaks(tables) + PAGES_PER_SHRINK * (1 - share);
    return { baseMm, tables, cost };
  });
  return sets.reduce((best, one) => (one.cost < best.cost ? one : best));
}

/** `auto`: standing, unless the map comes out larger on the lying paper. */
function choosePaper(input: MapInput): Paper {
  const { paper, orientation, parts } = input.options;
  const standing = paperOf(paper, false);
  const lying = paperOf(paper, true);
  if (orientation !== 'auto') return orientation === 'landscape' ? lying : standing;
  const bounds = groundBounds(input.yard, input.derived);
  if (!(parts.includes('map') || parts.includes('passes')) || !bounds) return standing;
  return ratioOn(lying, bounds, input).ratio < ratioOn(standing, bounds, input).ratio ? lying : standing;
}
