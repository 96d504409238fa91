import { describe, expect, it } from 'vitest';
import { testYard } from '../../../tests/fixtures/testYard';
import { markDone } from '../../season/markDone';
import { deriveYard } from '../../session/derive';
import '../../session/deriveVisit';
import { removeZones } from '../../yard/edits';
import type { Yard } from '../../yard/types';
import { goneGround, goneName, groundChoices, ledgerModel, meanOfModel } from './ledger-model';

const base = testYard();
const [visit] = base.visits;
if (!visit) throw new Error('no visit');
const dated: Yard = { ...base, visits: [{ ...visit, date: '2026-05-01' }] };
const figures = deriveYard(dated).visit(visit.id)?.figures;
if (!figures) throw new Error('no figures');
const done = markDone(dated, figures, '2026-05-01', false);

describe('ground that is gone', () => {
  const before = deriveYard(done);
  const after = deriveYard(removeZones(done, ['z-lawn']));
  const gone = goneGround(after.season().entries, after.yard);

  it('is told by its recorded name, and none is while every zone is there', () => {
    expect(goneGround(before.season().entries, done)).toEqual([]);
    expect(gone.map(goneName)).toEqual(['Lawn (gone)']);
    expect(groundChoices(done, [])).not.toContain('gone');
    expect(groundChoices(after.yard, gone).at(-1)).toBe('gone');
  });
  it('keeps its sums beside the ground there is, and stays out of the mean of that', () => {
    const model = ledgerModel(after, 'all', 2026, 'N', null);
    const lawn = model.years.get('z-lawn');
    expect(lawn?.year.done.N).toBeGreaterThan(0);
    expect(lawn?.year.done.N).toBeCloseTo(
      ledgerModel(before, 'zone z-lawn', 2026, 'N', null).years.get('z-lawn')?.year.done.N ?? 0,
      12,
    );
    expect(model.zones.map((zone) => zone.id)).not.toContain('z-lawn');
    expect(model.gone).toHaveLength(1);
    const rates = model.zones.map((zone) => model.years.get(zone.id)?.year.done.N ?? 0);
    expect(meanOfModel(model).year.done.N ?? 0).toBeLessThanOrEqual(Math.max(...rates) + 1e-12);
    const alone = ledgerModel(after, 'gone', 2026, 'N', null);
    expect(meanOfModel(alone).year.done.N).toBeCloseTo(lawn?.year.done.N ?? 0, 12);
    expect(ledgerModel(after, 'all', 2027, 'N', null).gone).toEqual([]);
  });
});
