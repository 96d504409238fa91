import { describe, expect, it } from 'vitest';
import { testSoil } from '../soil/testSoil';
import { checkOverrideShape } from '../yard/schemaPlan';
import type { Override, SoilTest, VisitDose, Yard } from '../yard/types';
import { newSoilOverride, SOIL_REFUSAL } from './soilOverride';
import { ground, testLabel, testUse, turfVisit, turfYard } from './testDose';
import { planVisit } from './visit';

const only = (id: string) => ({ classes: [], include: [id], exclude: [] });
const backSoil = testSoil({ mgPerKg: { P: 92 }, zones: only('back') });
const frontSoil = testSoil({ id: 'soil-2', name: 'Front soil', mgPerKg: { P: 20 }, zones: only('front') });
const product = testLabel({ otherUses: [testUse()] });

function yardWith(
  soilTests: readonly SoilTest[],
  overrides: readonly Override[],
  fields: Partial<VisitDose> = {},
  date = '2026-05-01',
): Yard {
  return { ...turfYard([product], [turfVisit('v', date, [fields])]), soilTests, overrides };
}

/** Plans the dose on ground of these zones. */
function plan(yard: Yard, ...zoneIds: readonly string[]) {
  const [visit] = yard.visits;
  if (!visit) throw new Error('no visit');
  const zonesByDose = new Map([['v-0', ground(...zoneIds)]]);
  return planVisit({ yard, visit, zonesByDose, sigmaByDose: new Map() });
}
const refusal = (figures: ReturnType<typeof plan>) =>
  figures.issues.find((issue) => issue.code === SOIL_REFUSAL)?.message ?? '';

/** The decision given for the back at 1.2 times the label rate. */
function decide(soilTests: readonly SoilTest[] = [backSoil, frontSoil]): Override {
  const yard = yardWith(soilTests, [], { rateFactor: 1.2 });
  const [visit] = yard.visits;
  const [dose] = visit?.doses ?? [];
  if (!visit || !dose) throw new Error('no dose');
  const refused = yard.zones.filter((zone) => zone.id === 'back');
  return newSoilOverride(yard, visit, dose, refused, { id: 'o', on: '2026-04-20', reason: 'New sod.' });
}

describe('a decision to put out all the same', () => {
  it('logs ground, rate, use and what the soil had', () => {
    expect(decide()).toEqual({
      id: 'o',
      on: '2026-04-20',
      reason: 'New sod.',
      code: SOIL_REFUSAL,
      visitId: 'v',
      doseId: 'v-0',
      productId: 'label',
      zoneIds: ['back'],
      useId: null,
      rateFactor: 1.2,
      soilTests: [{ id: 'soil-1', pMgPerKg: 92 }],
    });
  });

  it('stands with the same or a smaller rate, and with other ground that is not refused', () => {
    for (const rateFactor of [1.2, 0.5])
      expect(plan(yardWith([backSoil, frontSoil], [decide()], { rateFactor }), 'back').doses.length).toBe(1);
    expect(plan(yardWith([backSoil, frontSoil], [decide()]), 'front', 'back').doses.length).toBe(1);
    const less = { ...backSoil, mgPerKg: { P: 90 } };
    expect(plan(yardWith([less], [decide()]), 'back').doses.length).toBe(1);
  });

  it('falls where more ground is refused, and says what it was for', () => {
    const richFront = { ...frontSoil, mgPerKg: { P: 99 } };
    const figures = plan(yardWith([backSoil, richFront], [decide()]), 'front', 'back');
    expect(figures.doses).toEqual([]);
    expect(refusal(figures)).toContain(
      'The decision of 2026-04-20 was for Back at 1.2 times the label rate, by the soil test “Lawn soil”; it does not hold here: Front was no part of it.',
    );
  });

  it('falls with a higher rate or another use of the label', () => {
    const higher = plan(yardWith([backSoil], [decide()], { rateFactor: 1.5 }), 'back');
    expect(higher.doses).toEqual([]);
    expect(refusal(higher)).toContain('the dose is 1.5 times the label rate now');
    const other = plan(yardWith([backSoil], [decide()], { useId: 'u-1' }), 'back');
    expect(other.doses).toEqual([]);
    expect(refusal(other)).toContain('another use of the label');
  });

  it('falls when another test counts, or the test has other figures', () => {
    const again = { ...backSoil, id: 'soil-3', name: 'Spring soil', date: '2026-04-25' };
    expect(refusal(plan(yardWith([backSoil, again], [decide()]), 'back'))).toContain(
      'the soil test that counts now is “Spring soil”',
    );
    // before the new test was sampled the old one counts still
    expect(plan(yardWith([backSoil, again], [decide()], {}, '2026-04-24'), 'back').doses.length).toBe(1);
    const more = { ...backSoil, mgPerKg: { P: 120 } };
    expect(refusal(plan(yardWith([more], [decide()]), 'back'))).toContain('other figures');
  });

  it('given on the lab’s word alone falls once there is a figure', () => {
    const rated: SoilTest = { ...backSoil, mgPerKg: {}, labLevels: { P: 'very-high' } };
    expect(plan(yardWith([rated], [decide([rated])]), 'back').doses.length).toBe(1);
    const measured: SoilTest = { ...rated, mgPerKg: { P: 92 } };
    expect(plan(yardWith([measured], [decide([rated])]), 'back').doses).toEqual([]);
  });

  it('may be given anew: one that holds counts, whatever lapsed before it or after', () => {
    const lapsed = { ...decide(), id: 'old', zoneIds: ['front'] };
    for (const overrides of [
      [lapsed, decide()],
      [decide(), lapsed],
    ])
      expect(plan(yardWith([backSoil], overrides), 'back').doses.length).toBe(1);
  });

  it('of a file that does not tell its ground holds for none', () => {
    const { zoneIds: _zones, useId: _use, rateFactor: _rate, soilTests: _tests, ...old } = decide();
    const read = checkOverrideShape(old);
    const override = 'value' in read ? (read.value as Override) : null;
    expect(override).toMatchObject({ zoneIds: [], useId: null, rateFactor: 1, soilTests: [] });
    if (override) expect(plan(yardWith([backSoil], [override]), 'back').doses).toEqual([]);
  });
});
