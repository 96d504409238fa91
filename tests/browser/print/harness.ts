import type { VisitCoverage } from '../../../src/cover/passTypes';
import { testWalk } from '../../../src/cover/testWalk';
import { mountSheet } from '../../../src/print/mountSheet';
import { defaultSheetOptions, sheetModel } from '../../../src/print/sheetModel';
import type { SheetModel, SheetOptions } from '../../../src/print/types';
import { deriveYard } from '../../../src/session/derive';
import '../../../src/session/deriveVisit';
import type { Derived } from '../../../src/session/types';
import { yardFromGeoJson } from '../../../src/yard/codec';

let open: Derived | null = null;
/** each dose of the first visit walked by hand, from as many bottles as fit a small yard. */
let walks: VisitCoverage | null = null;
let clear = () => {};

/** Reads a yard; the sheets that follow are of it. */
function read(file: unknown): void {
  const { yard } = yardFromGeoJson(file);
  if (!yard) throw new Error('the sample cannot be read');
  open = deriveYard(yard);
  walks = walksOf(open);
}

function walksOf(derived: Derived): VisitCoverage | null {
  const visit = derived.visit(derived.yard.visits[0]?.id ?? '');
  if (!visit) return null;
  const doses = visit.figures.doses.map(({ dose, zones }) => {
    const grounds = zones.map(({ zoneId }) => ({
      zoneId,
      parts: visit.treated.get(zoneId)?.planeParts ?? [],
    }));
    return { ...testWalk(grounds, 2, 5), doseId: dose.id };
  });
  return { visitId: visit.figures.visit.id, doses };
}

/** Puts the sheet of the yard's first visit (or of no visit) into the page in place of the one before, ready to print. */
function mount(withVisit: boolean, options: Partial<SheetOptions>): SheetModel {
  if (!open) throw new Error('no yard is read');
  const visitId = withVisit ? (open.yard.visits[0]?.id ?? null) : null;
  const chosen = { ...defaultSheetOptions('2027-05-01'), ...options };
  const model = sheetModel(open.yard, open, visitId, chosen, walks);
  clear();
  clear = mountSheet(model, document.body);
  return model;
}

const printing = { read, mount };
export type PrintHarness = typeof printing;
Object.assign(window, { printing });
