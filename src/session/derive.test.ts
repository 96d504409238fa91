import { beforeEach, describe, expect, it, vi } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import type { RinseInput } from '../cover/rinse';
import type { MeasuredYard, MeasuredZone } from '../measure/types';
import type { VisitFigures } from '../plan/types';
import type { VisitInput } from '../plan/visit';
import { newDose } from '../yard/defaults';
import { rename, replaceProduct, replaceVisit, replaceZone } from '../yard/edits';
import type { Product, Visit, Yard, Zone } from '../yard/types';
import { deriveYard } from './derive';
import './deriveVisit';

/*
 * Stand-ins for the parts that are composed here (each has its own tests): every zone measures
 * 100 m² net, 20 m² of it strip. Held here: what is handed on to which part, and what is reused.
 */
const called = vi.hoisted(() => ({
  treat: vi.fn(),
  rinse: vi.fn(),
  plan: vi.fn(),
  hold: vi.fn(),
  slips: vi.fn(),
  clashes: vi.fn(),
  sigma: vi.fn(),
}));
const plane = vi.hoisted(() => ({ origin: [10, 50] }));

vi.mock('../measure/measureYard', () => ({
  measureYard: (yard: Yard, previous?: MeasuredYard) => ({
    plane,
    zones: new Map(
      yard.zones.map((zone) => {
        const before = previous?.zones.get(zone.id) as (MeasuredZone & { of: unknown }) | undefined;
        return [
          zone.id,
          before?.of === zone.parts ? before : { zoneId: zone.id, netM2: 100, of: zone.parts },
        ];
      }),
    ),
    totals: [],
    issues: [],
  }),
}));
vi.mock('../measure/slips', () => ({ findSlips: called.slips, LEAST_SLIP_M2: 0.01 }));
vi.mock('../measure/totals', () => ({ clashesOf: called.clashes }));
vi.mock('../measure/uncertainty', () => ({ sigmaOfGradients: called.sigma }));
vi.mock('../plan/visit', () => ({ planVisit: called.plan }));
vi.mock('../plan/holdVisit', () => ({ holdVisit: called.hold }));
vi.mock('../cover/sources', () => ({
  stripSources: (yard: Yard) => [yard.settings.strips],
  sourcesNear: (sources: readonly unknown[]) => sources,
}));
vi.mock('../cover/strips', () => ({ treatZone: called.treat }));
vi.mock('../cover/rinse', () => ({ rinseEdges: called.rinse }));

beforeEach(() => {
  vi.resetAllMocks();
  called.treat.mockImplementation((measured: MeasuredZone) => ({
    treated: {
      zoneId: measured.zoneId,
      areaM2: 80,
      areaSigmaM2: 3,
      gradient: `of ${measured.zoneId}`,
      stripM2: 20,
      strips: [],
    },
    issues: [{ code: `strip-${measured.zoneId}` }],
  }));
  called.rinse.mockImplementation(() => []);
  called.plan.mockImplementation((input: VisitInput) => ({
    ...input,
    laid: [],
    issues: [],
    doses: input.visit.doses.flatMap((dose) => {
      const product = input.yard.products.find((each) => each.id === dose.productId);
      return product ? { dose, product, zones: input.zonesByDose.get(dose.id) } : [];
    }),
  }));
  called.hold.mockImplementation((_yard: Yard, own: VisitFigures) => own);
  called.slips.mockImplementation(() => []);
  called.clashes.mockImplementation(() => []);
  called.sigma.mockImplementation((gradients: readonly unknown[]) => 5 * gradients.length);
});

/** The test yard with a second dose, of granules, on the low strip and the island bed only. */
function twoDoses(): Yard {
  const yard = testYard();
  const visit = yard.visits[0] as Visit;
  const own = { classes: [], include: ['z-strip', 'z-bed'], exclude: [] };
  const second = newDose('d-2', 'p-granules', { zones: own });
  return replaceVisit(yard, { ...visit, doses: [...visit.doses, second] });
}
const rinseInput = () => called.rinse.mock.lastCall?.[0] as RinseInput;

describe('a visit derived', () => {
  it('plans each dose on its own zones less their strips', () => {
    deriveYard(twoDoses()).visit('v-1');
    const { zonesByDose, sigmaByDose } = called.plan.mock.lastCall?.[0] ?? {};
    expect(zonesByDose.get('d-1')).toEqual([
      { zoneId: 'z-lawn', name: 'Lawn', areaM2: 80, stripM2: 20, isPlaced: true },
      { zoneId: 'z-strip', name: 'Low strip', areaM2: 80, stripM2: 20, isPlaced: true },
    ]);
    expect(zonesByDose.get('d-2').map((row: { zoneId: string }) => row.zoneId)).toEqual(['z-bed', 'z-strip']);
    expect(called.sigma.mock.calls[0]?.[0]).toEqual(['of z-lawn', 'of z-strip']);
    expect(sigmaByDose.get('d-1')).toBe(10);
  });

  it('leaves what cannot go out away from the ground treated and from the hardscape', () => {
    called.plan.mockImplementation((input: VisitInput) => ({ ...input, doses: [] }));
    const visit = deriveYard(twoDoses()).visit('v-1');
    expect(rinseInput().treated).toEqual([]);
    expect([...(visit?.treated.keys() ?? [])]).toEqual([]);
    expect([...(visit?.asked.keys() ?? [])]).toEqual(['z-lawn', 'z-strip', 'z-bed']);
  });

  it('the sigma of a dose on one zone is that zone’s own', () => {
    const yard = testYard();
    const visit = yard.visits[0] as Visit;
    const zones = { classes: [], include: ['z-lawn'], exclude: [] };
    deriveYard(replaceVisit(yard, { ...visit, zones })).visit('v-1');
    expect(called.plan.mock.lastCall?.[0].sigmaByDose.get('d-1')).toBe(3);
  });

  it('hands on the ground that two treated zones both claim', () => {
    const clash = (a: string, b: string) => ({
      a: { zoneId: a },
      b: { zoneId: b },
      overlap: { parts: [], planeAreaM2: 12 },
    });
    called.clashes.mockImplementation(() => [clash('z-lawn', 'z-strip'), clash('z-lawn', 'z-walk')]);
    deriveYard({ ...testYard(), settings: { ...testYard().settings, elevationM: 0 } }).visit('v-1');
    expect(called.plan.mock.lastCall?.[0].clashes).toEqual([['z-lawn', 'z-strip', 12]]);
  });

  it('gives each zone the widest spread of its products, sweeping first where any lies loose', () => {
    deriveYard(twoDoses()).visit('v-1');
    const rows = rinseInput().treated.map(({ zone, spreadM, treatment, stains }) => [
      zone.zoneId,
      spreadM,
      treatment,
      stains,
    ]);
    expect(rows).toEqual([
      ['z-lawn', 0.3, 'rinse-toward-turf', false],
      ['z-strip', 1.5, 'sweep-then-rinse', true],
      ['z-bed', 1.5, 'sweep-then-rinse', true],
    ]);
    expect(rinseInput().hardscapes.map(({ zone }) => zone.id)).toEqual(['z-walk']);
    expect(rinseInput().sources).toEqual([testYard().settings.strips]);
  });

  it.each([
    ['volume-per-area', 'rinse-toward-turf'],
    ['depth', 'sweep-then-rinse'],
  ] as const)('a soil amendment in litres with a rate by %s: %s', (basis, treatment) => {
    const yard = testYard();
    const humic: Product = {
      ...(yard.products.find((one) => one.id === 'p-liquid') as Product),
      form: 'soil-amendment',
      rate: basis === 'depth' ? { basis, depthM: 0.006 } : { basis, rateLPerM2: 0.003 },
    };
    deriveYard(replaceProduct(yard, humic)).visit('v-1');
    expect(rinseInput().treated.map((row) => row.treatment)).toEqual([treatment, treatment]);
  });

  it('treats a zone once though two doses go on it, and tells its issues once', () => {
    const visit = deriveYard(twoDoses()).visit('v-1');
    expect(called.treat).toHaveBeenCalledTimes(3);
    expect(visit?.issues.map((issue) => issue.code)).toEqual([
      'strip-z-lawn',
      'strip-z-strip',
      'strip-z-bed',
    ]);
    expect([...(visit?.treated.keys() ?? [])]).toEqual(['z-lawn', 'z-strip', 'z-bed']);
  });

  it('reaches no hardscape with a dose whose product is gone', () => {
    const yard = { ...testYard(), products: [] };
    deriveYard(yard).visit('v-1');
    expect(rinseInput().treated).toEqual([]);
    expect(called.plan.mock.lastCall?.[0].zonesByDose.get('d-1').length).toBe(2);
  });

  it('is null for an unknown visit', () => {
    expect(deriveYard(testYard()).visit('gone')).toBeNull();
  });
});

describe('what is reused', () => {
  it('nothing is derived before it is asked for, and once only', () => {
    const derived = deriveYard(testYard());
    expect(called.slips).not.toHaveBeenCalled();
    expect(called.plan).not.toHaveBeenCalled();
    expect(derived.visit('v-1')).toBe(derived.visit('v-1'));
    expect(derived.slips()).toBe(derived.slips());
    expect(called.slips).toHaveBeenCalledTimes(1);
    expect(called.plan).toHaveBeenCalledTimes(1);
    expect(deriveYard(derived.yard, derived)).toBe(derived);
  });

  it('a moved corner treats again only the zone it belongs to', () => {
    const yard = testYard();
    const before = deriveYard(yard);
    before.visit('v-1');
    called.treat.mockClear();
    const lawn = yard.zones[0] as Zone;
    const after = deriveYard(replaceZone(yard, { ...lawn, parts: [...lawn.parts] }), before);
    const visit = after.visit('v-1');
    expect(called.treat.mock.calls.map(([measured]) => measured.zoneId)).toEqual(['z-lawn']);
    expect(visit?.treated.get('z-strip')).toBe(before.visit('v-1')?.treated.get('z-strip'));
  });

  it('a changed price plans again and walks the edges no more; a wider spread walks them', () => {
    const yard = testYard();
    const before = deriveYard(yard);
    before.visit('v-1');
    const liquid = yard.products[1] as Product;
    const dearer = deriveYard(replaceProduct(yard, { ...liquid, note: 'dearer' }), before);
    dearer.visit('v-1');
    expect([called.plan.mock.calls.length, called.rinse.mock.calls.length]).toEqual([2, 1]);
    deriveYard(replaceProduct(yard, { ...liquid, spreadDistanceM: 2 }), dearer).visit('v-1');
    expect(called.rinse).toHaveBeenCalledTimes(2);
    expect(rinseInput().treated.map((ground) => ground.spreadM)).toEqual([2, 2]);
  });

  it('wider strips treat every zone again', () => {
    const yard = testYard();
    const before = deriveYard(yard);
    before.visit('v-1');
    const strips = { ...yard.settings.strips, wellM: 20 };
    deriveYard({ ...yard, settings: { ...yard.settings, strips } }, before).visit('v-1');
    expect(called.treat).toHaveBeenCalledTimes(4);
  });
});

describe('visits held together', () => {
  /** Visits of one dose each: product and day. */
  const visitsOf = (...list: readonly (readonly [productId: string, date: string | null])[]): Yard => {
    const yard = testYard();
    const visits = list.map(([productId, date], i) => ({
      ...(yard.visits[0] as Visit),
      id: `v-${i}`,
      date,
      doses: [newDose(`d-${i}`, productId)],
    }));
    return { ...yard, visits };
  };
  const limited = (yard: Yard, limits: Partial<Product['limits']>): Yard => ({
    ...yard,
    products: yard.products.map((product) => ({
      ...product,
      limits: {
        maxPerDose: null,
        maxPerYear: null,
        minIntervalDays: null,
        maxDosesPerYear: null,
        maxAirTempC: null,
        ...limits,
      },
    })),
  });
  const heldWith = (yard: Yard, id: string): readonly string[] => {
    called.hold.mockClear();
    deriveYard(yard).visit(id);
    return called.hold.mock.lastCall?.[2].map((other: VisitFigures) => other.visit.id);
  };

  it('are those of a day, and those that the limits of a shared label reach', () => {
    const yard = visitsOf(
      ['p-liquid', '2026-05-01'],
      ['p-granules', '2026-05-01'],
      ['p-liquid', '2026-05-10'],
      ['p-liquid', '2026-03-01'],
      ['p-liquid', null],
    );
    expect(heldWith(limited(yard, {}), 'v-0')).toEqual(['v-1']);
    expect(heldWith(limited(yard, { minIntervalDays: 14 }), 'v-0')).toEqual(['v-1', 'v-2', 'v-4']);
    expect(heldWith(limited(yard, { maxDosesPerYear: 4 }), 'v-0')).toEqual(['v-1', 'v-3', 'v-4']);
  });
  it('an edit of one plans that one alone, and holds again only those it bears on', () => {
    const yard = limited(
      visitsOf(['p-liquid', '2026-05-01'], ['p-liquid', '2026-05-10'], ['p-granules', '2026-05-10']),
      { minIntervalDays: 14 },
    );
    const before = deriveYard(yard);
    before.season();
    for (const one of [called.plan, called.hold, called.clashes]) one.mockClear();
    const first = yard.visits[0] as Visit;
    const after = deriveYard(replaceVisit(yard, { ...first, tankL: 10 }), before);
    after.season();
    expect(called.plan.mock.calls.map(([input]) => input.visit.id)).toEqual(['v-0']);
    expect(called.hold.mock.calls.map(([, own]) => own.visit.id)).toEqual(['v-0', 'v-1']);
    expect(after.visit('v-2')).toBe(before.visit('v-2'));
  });
  it('look for overlaps once for all', () => {
    deriveYard(visitsOf(['p-liquid', '2026-05-01'], ['p-granules', '2026-05-10'])).season();
    expect(called.clashes).toHaveBeenCalledTimes(1);
  });
});

it('a new name of the yard derives nothing anew when nothing else changed', () => {
  const before = deriveYard(testYard());
  const [visit, slips] = [before.visit('v-1'), before.slips()];
  const after = deriveYard(rename(before.yard, 'Other'), before);
  expect(after.measured).toBe(before.measured);
  expect(after.visit('v-1')).toBe(visit);
  expect(after.slips()).toBe(slips);
  expect([called.plan, called.slips, called.rinse].map((one) => one.mock.calls.length)).toEqual([1, 1, 1]);
  expect(called.treat).toHaveBeenCalledTimes(2);
});

it('a new name of a zone looks for no slips anew, a new outline does', () => {
  const before = deriveYard(testYard());
  const slips = before.slips();
  const lawn = before.yard.zones[0] as Zone;
  const renamed = deriveYard(replaceZone(before.yard, { ...lawn, name: 'Front' }), before);
  expect(renamed.slips()).toBe(slips);
  deriveYard(replaceZone(renamed.yard, { ...lawn, parts: [...lawn.parts] }), renamed).slips();
  expect(called.slips).toHaveBeenCalledTimes(2);
});

it('other units plan again, as messages hold amounts in them', () => {
  const before = deriveYard(testYard());
  before.visit('v-1');
  const { settings } = before.yard;
  const units = settings.units === 'us' ? 'metric' : 'us';
  deriveYard({ ...before.yard, settings: { ...settings, units } }, before).visit('v-1');
  expect([called.plan.mock.calls.length, called.rinse.mock.calls.length]).toEqual([2, 1]);
});

it('what is on hand of another product plans again once the shelf tells its stock at all', () => {
  const yard = testYard();
  const bare = { ...yard, products: yard.products.map((product) => ({ ...product, onHand: {} })) };
  const other: Product = { ...(bare.products[0] as Product), id: 'other' };
  const before = deriveYard({ ...bare, products: [...bare.products, other] });
  before.visit('v-1');
  const stocked = (count: number) => ({
    ...before.yard,
    products: [...bare.products, { ...other, onHand: { a: count } }],
  });
  const after = deriveYard(stocked(1), before);
  after.visit('v-1');
  expect(called.plan).toHaveBeenCalledTimes(2);
  deriveYard(stocked(2), after).visit('v-1');
  expect(called.plan).toHaveBeenCalledTimes(2);
});
