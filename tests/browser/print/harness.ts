import { mountSheet } from '../../../src/print/mountSheet';
import { defaultSheetOptions, sheetModel } from '../../../src/print/sheetModel';
import type { SheetModel, SheetOptions } from '../../../src/print/types';
import { deriveYard } from '../../../src/session/derive';
import '../../../src/session/deriveVisit';
import { yardFromGeoJson } from '../../../src/yard/codec';

/** Puts the sheet of a yard's first visit (or of no visit) into the page, ready to print. */
function mount(file: unknown, withVisit: boolean, options: Partial<SheetOptions>): SheetModel {
  const { yard } = yardFromGeoJson(file);
  if (!yard) throw new Error('the sample cannot be read');
  const visitId = withVisit ? (yard.visits[0]?.id ?? null) : null;
  const model = sheetModel(yard, deriveYard(yard), visitId, {
    ...defaultSheetOptions('2027-05-01'),
    ...options,
  });
  clear();
  clear = mountSheet(model, document.body);
  return model;
}
let clear = () => {};

const printing = { mount, clear: () => clear() };
export type PrintHarness = typeof printing;
Object.assign(window, { printing });
