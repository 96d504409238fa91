import { describe, expect, it } from 'vitest';
import { testSoil } from '../soil/testSoil';
import { newZone } from '../yard/defaults';
import type { Override, Product, SoilTest, Visit, Yard } from '../yard/types';
import { SOIL_REFUSAL } from './soilOverride';
import { ground, testAnalysis, testLabel, turfVisit, turfYard } from './testDose';
import { planVisit } from './visit';
import { productsWithoutPhosphorus } from './withoutPhosphorus';

const rich = testSoil({ mgPerKg: { P: 92, K: 200 }, zones: { classes: [], include: ['back'], exclude: [] } });
const lean = testSoil({
  id: 'lean',
  mgPerKg: { P: 20, K: 50 },
  zones: { classes: [], include: ['front'], exclude: [] },
});

function plan(
  soilTests: readonly SoilTest[],
  options: { product?: Partial<Product>; visit?: Partial<Visit>; overrides?: readonly Override[] } = {},
) {
  const product = testLabel(options.product);
  const visit = { ...turfVisit('v', '2026-05-01', [{}]), ...options.visit };
  const yard: Yard = { ...turfYard([product], [visit]), soilTests, overrides: options.overrides ?? [] };
  const [dose] = visit.doses;
  return planVisit({
    yard,
    visit,
    zonesByDose: new Map([[dose?.id ?? '', ground('front', 'back')]]),
    sigmaByDose: new Map(),
  });
}
const codes = (figures: ReturnType<typeof plan>) => figures.issues.map((issue) => issue.code);
const override: Override = {
  id: 'o',
  on: '2026-04-20',
  code: SOIL_REFUSAL,
  visitId: 'v',
  doseId: 'v-0',
  productId: 'label',
  reason: 'New sod went down last week.',
  zoneIds: ['back'],
  useId: null,
  rateFactor: 1,
  soilTests: [{ id: 'soil-1', pMgPerKg: 92 }],
};

describe('a dose with phosphorus', () => {
  it('is refused where any of its ground has more than enough, naming that ground', () => {
    const figures = plan([rich, lean]);
    expect(figures.doses).toEqual([]);
    const issue = figures.issues.find((each) => each.code === SOIL_REFUSAL);
    expect(issue).toMatchObject({
      severity: 'error',
      place: { visitId: 'v', doseId: 'v-0', productId: 'label' },
    });
    expect(issue?.message.replaceAll('\u00a0', ' ')).toContain(
      'Plain granules: Back has P 92 ppm (very high by Rutgers NJAES, sampled Tue, Mar 10, 2026): no phosphorus is called for.',
    );
    expect(issue?.message).not.toContain('Front');
  });

  it('goes out all the same with an override for this dose and product, which is told', () => {
    const figures = plan([rich, lean], { overrides: [override] });
    expect(figures.doses.length).toBe(1);
    const told = figures.issues.find((each) => each.code === 'soil-phosphorus-overridden');
    expect(told?.severity).toBe('warning');
    expect(told?.message).toContain('New sod went down last week.');
  });

  it.each([['doseId'], ['productId'], ['visitId'], ['code']] as const)(
    'an override of another %s does not count',
    (key) => {
      expect(plan([rich, lean], { overrides: [{ ...override, [key]: 'another' }] }).doses).toEqual([]);
    },
  );

  it('goes by the test that counts on its day, and tells of one sampled after it', () => {
    const before = { ...rich, id: 'before', date: '2025-10-01', mgPerKg: { P: 20 } };
    const on = (date: string | null) => plan([before, rich, lean], { visit: { date } });
    expect(on('2025-12-01').doses.length).toBe(1);
    expect(on('2026-03-10').doses).toEqual([]);
    expect(on(null).doses).toEqual([]);
    expect(codes(on('2026-05-01'))).not.toContain('soil-test-later');
    const early = plan([rich], { visit: { date: '2025-12-01' } });
    expect(early.doses).toEqual([]);
    expect(early.issues.find((each) => each.code === 'soil-test-later')).toMatchObject({
      severity: 'note',
      message: expect.stringContaining('“Lawn soil” of 2026-03-10'),
    });
  });

  it('goes out where the lab names a need, with a warning where the table calls for none', () => {
    const figures = plan([{ ...rich, labLevels: { P: 'low' } }, lean]);
    expect(figures.doses.length).toBe(1);
    const told = figures.issues.find((each) => each.code === 'soil-lab-table');
    expect(told?.severity).toBe('warning');
    expect(told?.message).toMatch(/Back: .*lab’s word is low.*Rutgers NJAES calls for no phosphorus/);
    expect(codes(plan([{ ...rich, mgPerKg: { P: 20 }, labLevels: { P: 'low' } }, lean]))).not.toContain(
      'soil-lab-table',
    );
  });

  it('is refused where the lab finds enough and the table calls for none, and says that the two disagree', () => {
    const figures = plan([{ ...rich, labLevels: { P: 'high' } }, lean]);
    expect(figures.doses).toEqual([]);
    const issue = figures.issues.find((each) => each.code === SOIL_REFUSAL);
    expect(issue?.message).toContain('the lab and the table disagree');
  });

  it('names no more than four of many zones', () => {
    const product = testLabel();
    const visit = turfVisit('v', null, [{}]);
    const yard: Yard = {
      ...turfYard([product], [visit]),
      zones: Array.from({ length: 200 }, (_, i) => newZone(`z-${i}`, 'turf', [], { name: `Lawn ${i}` })),
      soilTests: [testSoil({ mgPerKg: { P: 92 } })],
    };
    const zonesByDose = new Map([['v-0', ground(...yard.zones.map((zone) => zone.id))]]);
    const { issues } = planVisit({ yard, visit, zonesByDose, sigmaByDose: new Map() });
    expect(issues.find((each) => each.code === SOIL_REFUSAL)?.message).toContain(
      'Lawn 0, Lawn 1, Lawn 2 and 197 more have P',
    );
  });

  it('on ground without a test stands as a fallback and asks for one', () => {
    const figures = plan([lean]);
    expect(figures.doses.length).toBe(1);
    const told = figures.issues.filter((each) => each.code === 'soil-no-test');
    expect(told.length).toBe(1);
    expect(told[0]?.message).toMatch(/Back: no soil test on file.*fallback/);
  });

  it('is not judged once it is done, nor where no ground is left to treat', () => {
    expect(plan([rich], { visit: { doneOn: '2026-05-01' } }).doses.length).toBe(1);
    const product = testLabel();
    const visit = turfVisit('v', null, [{}]);
    const yard: Yard = { ...turfYard([product], [visit]), soilTests: [rich] };
    const none = ground('front', 'back').map((zone) => ({
      ...zone,
      areaM2: zone.zoneId === 'back' ? 0 : 10,
    }));
    const zonesByDose = new Map([['v-0', none]]);
    expect(planVisit({ yard, visit, zonesByDose, sigmaByDose: new Map() }).doses.length).toBe(1);
  });

  it('notes a test more than three years old on the day of the visit', () => {
    const aged = { ...lean, date: '2022-01-01' };
    expect(codes(plan([aged, { ...aged, id: 'b', zones: rich.zones }]))).toContain('soil-test-old');
    expect(codes(plan([lean, { ...lean, id: 'b', zones: rich.zones }]))).not.toContain('soil-test-old');
  });
});

describe('a dose without phosphorus', () => {
  it('needs no test, and tells of potassium where there is more than enough', () => {
    const product = { analysis: testAnalysis(20, 0, 10) };
    expect(plan([rich], { product }).doses.length).toBe(1);
    expect(codes(plan([rich], { product })).filter((code) => code.startsWith('soil-'))).toEqual([
      'soil-potassium-high',
    ]);
    expect(codes(plan([rich], { product: { analysis: testAnalysis(20) } })).join()).not.toContain('soil-');
  });
});

describe('what is on the shelf without phosphorus', () => {
  const label = (id: string, fields: Partial<Product>) => testLabel({ id, name: id, ...fields });
  const liquid: Partial<Product> = {
    form: 'liquid-concentrate',
    rate: { basis: 'volume-per-area', rateLPerM2: 0.002 },
    packs: [{ id: 'jug', content: { unit: 'L', value: 9 }, price: null }],
    densityKgPerL: 1.2,
  };
  const shelf = [
    testLabel(),
    label('with-p', { analysis: testAnalysis(10, 1, 1) }),
    label('liquid', { ...liquid, analysis: testAnalysis(20) }),
    label('far', { analysis: testAnalysis(46) }),
    label('near', { analysis: testAnalysis(21, 0, 4) }),
    label('iron', { analysis: testAnalysis(0) }),
    label('faulty', { analysis: testAnalysis(20, 0, 90) }),
  ];
  const offersFor = (products: readonly Product[]) => {
    const visit = turfVisit('v', null, [{}]);
    const [dose] = visit.doses;
    if (!dose) throw new Error('no dose');
    return productsWithoutPhosphorus(turfYard(products, [visit]), dose).map(({ product }) => product.id);
  };

  it('of other forms, what goes out as the refused product does by its use comes first', () => {
    const powder = (id: string, fields: Partial<Product>) =>
      label(id, { form: 'soluble-powder', analysis: testAnalysis(20), ...fields });
    const wet = powder('wet', { applicator: 'tank-sprayer', carrierLPerM2: 0.04 });
    const dry = powder('dry', { applicator: 'broadcast-spreader', analysis: testAnalysis(24) });
    expect(offersFor([testLabel(), wet, dry])).toEqual(['dry', 'wet']);
  });

  it('leaves out what carries phosphorus, feeds nothing or has a faulty label; the same form first', () => {
    expect(offersFor(shelf)).toEqual(['near', 'far', 'liquid']);
  });
});
