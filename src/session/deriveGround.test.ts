import { describe, expect, it } from 'vitest';
import { granules, liquid, visit } from '../../tests/fixtures/testYard';
import { boxAt, testPlane, yardOf, zoneAt } from '../measure/testYards';
import { newEquipment } from '../yard/defaults';
import type { Mark, PassChoice, Position, Visit, Yard, Zone } from '../yard/types';
import { deriveYard } from './derive';
import './deriveVisit';
import type { DerivedVisit } from './types';

/* Visits derived by all parts together, none of them stood in for. */

const every: Visit = {
  ...visit,
  zones: { classes: ['turf-regular', 'turf-low-cut'], include: [], exclude: [] },
};
const dosed = (...zones: readonly Zone[]): Yard => ({
  ...yardOf(...zones),
  products: [granules, liquid],
  visits: [every],
});
const derive = (yard: Yard): DerivedVisit => {
  const derived = deriveYard(yard).visit(every.id);
  if (!derived) throw new Error('The visit was not derived.');
  return derived;
};
const withStrips = (yard: Yard, stormDrainM: number, ...marks: Mark[]): Yard => ({
  ...yard,
  marks,
  settings: { ...yard.settings, strips: { ...yard.settings.strips, stormDrainM } },
});
const drainAt = (x: number, y: number): Mark => ({
  id: 'drain',
  name: 'Drain',
  kind: 'storm-drain',
  position: testPlane.toLonLat([x, y]),
  extra: {},
});

describe('lawns that overlap', () => {
  const lawns = dosed(
    zoneAt('a', 'turf', [[boxAt(0, 0, 10, 10)]]),
    zoneAt('b', 'turf', [[boxAt(8, 0, 10, 10)]]),
  );
  const overlapOf = (yard: Yard) =>
    derive(yard).figures.issues.filter((issue) => issue.code === 'zones-overlap');

  it('warn that their common ground would be treated twice', () => {
    const metric = { ...lawns, settings: { ...lawns.settings, units: 'metric' as const } };
    expect(overlapOf(metric).map((issue) => issue.message)).toEqual([
      expect.stringContaining('20\u00a0m² is counted twice'),
    ]);
  });

  it('say so in the units chosen last', () => {
    const before = deriveYard({ ...lawns, settings: { ...lawns.settings, units: 'metric' } });
    before.visit(every.id);
    const after = deriveYard({ ...lawns, settings: { ...lawns.settings, units: 'us' } }, before);
    const issues = after.visit(every.id)?.figures.issues ?? [];
    expect(issues.find((issue) => issue.code === 'zones-overlap')?.message).toMatch(/215\s+sq\s+ft/);
  });

  it('do not where a strip takes all of their common ground', () => {
    expect(overlapOf(withStrips(lawns, 5.5, drainAt(9, 5)))).toEqual([]);
    expect(overlapOf(withStrips(lawns, 3, drainAt(9, 5)))).toHaveLength(1);
  });
});

describe('the sigma of a dose', () => {
  it('of two lawns that share a border: the border cancels, the corners on the sides stay', () => {
    const yard = dosed(
      zoneAt('a', 'turf', [[boxAt(0, 0, 20, 20)]], 0.2),
      zoneAt('b', 'turf', [[boxAt(20, 0, 20, 20)]], 0.2),
    );
    // by hand: four corners (10, 10), two at the border (0, 20)
    const whole = 0.2 * Math.sqrt(4 * 200 + 2 * 400);
    expect(derive(yard).figures.doses[0]?.areaSigmaM2).toBeCloseTo(whole, 2);
    // a drain in the midst of each takes no side away
    const drained = { ...drainAt(10, 10) };
    const strips = withStrips(yard, 9, drained, { ...drainAt(30, 10), id: 'other' });
    expect(derive(strips).figures.doses[0]?.areaSigmaM2).toBeCloseTo(whole, 2);
    expect(derive(strips).figures.doses[0]?.stripM2).toBeGreaterThan(2 * Math.PI * 81);
  });

  it('keeps the elevation’s scale', () => {
    const lawn = zoneAt('a', 'turf', [[boxAt(0, 0, 20, 20)]], 0.2);
    const far = zoneAt('b', 'turf', [[boxAt(60, 0, 20, 20)]], 0.2);
    const at = (elevationM: number) => {
      const yard = withStrips(dosed(lawn, far), 3, drainAt(10, 10));
      return (
        derive({ ...yard, settings: { ...yard.settings, elevationM } }).figures.doses[0]?.areaSigmaM2 ?? 0
      );
    };
    // by hand: areas grow by (1 + h/R)², and corners are as sure on the ground, so sigma by 1 + h/R, R = 6371 km
    expect(at(6371) / at(0)).toBeCloseTo(1.001, 5);
  });
});

it('an edge at a drain is never rinsed, though no strip is asked for', () => {
  const yard = dosed(
    zoneAt('lawn', 'turf', [[boxAt(0, 0, 20, 20)]]),
    zoneAt('drive', 'hardscape', [[boxAt(20, 0, 3, 20)]]),
  );
  const edge = derive(withStrips(yard, 0, drainAt(20, 10))).rinseEdges.find((one) => one.near !== null);
  expect(edge?.near).toMatchObject({ sourceId: 'drain', distanceM: expect.closeTo(0, 3) });
});

describe('the rinse edges of a drive 20 m along a lawn, spread 1 m', () => {
  const lawn = zoneAt('lawn', 'turf', [[boxAt(3, 0, 20, 20)]]);
  const drive = zoneAt('drive', 'hardscape', [[boxAt(0, 0, 3, 20)]]);
  const edgesM = (...hard: readonly Zone[]): number => {
    const yard = dosed(lawn, ...hard);
    const products = yard.products.map((one) => ({ ...one, spreadDistanceM: 1 }));
    return derive({ ...yard, products }).rinseEdges.reduce((sum, edge) => sum + edge.lengthM, 0);
  };

  // by hand: 20 m and neither end; however the drive is drawn, its outer edge stays the same
  it.each([
    ['alone', [drive]],
    ['drawn twice', [drive, { ...drive, id: 'again' }]],
    ['with an apron in its end', [drive, zoneAt('apron', 'hardscape', [[boxAt(0, 0, 3, 5)]])]],
    ['with a second one on its middle', [drive, zoneAt('middle', 'hardscape', [[boxAt(0, 5, 3, 10)]])]],
    ['with an edging of 1.5 cm', [drive, zoneAt('edging', 'hardscape', [[boxAt(2.985, 0, 0.015, 20)]])]],
    [
      'whose edging cuts it',
      [drive, { ...zoneAt('edging', 'hardscape', [[boxAt(2.985, 0, 0.015, 20)]]), cutsSameKind: true }],
    ],
  ])('%s: 20 m', (_, hard) => {
    expect(edgesM(...hard)).toBeCloseTo(20, 2);
  });
});

describe('what puts a dose out decides how far it lands beyond an edge', () => {
  const lawn = zoneAt('lawn', 'turf', [[boxAt(3, 0, 20, 20)]]);
  const drive = zoneAt('drive', 'hardscape', [[boxAt(0, 0, 3, 20)]]);
  const spreader = newEquipment('own', 'broadcast-spreader', { spreadDistanceM: 2, hasEdgeGuard: true });
  const bandOf = (passes: Partial<PassChoice>, change: Partial<Yard> = {}): number => {
    const yard = { ...dosed(lawn, drive), equipment: [spreader], ...change };
    const visits = [
      { ...every, doses: every.doses.map((dose) => ({ ...dose, passes: { ...dose.passes, ...passes } })) },
    ];
    return derive({ ...yard, visits }).rinseEdges.reduce((sum, edge) => sum + edge.bandM2, 0);
  };

  // by hand: 20 m by 2 m; with the guard a quarter of 2 m
  it('as it was measured, less with the guard down', () => {
    expect(bandOf({ equipmentId: 'own' })).toBeCloseTo(40, 1);
    expect(bandOf({ equipmentId: 'own', isGuarded: true })).toBeCloseTo(10, 1);
  });

  it('as the label has it with other equipment', () => {
    expect(
      bandOf(
        {},
        {
          products: [granules, liquid].map((one) => ({ ...one, spreadDistanceM: 1, applicator: 'by-hand' })),
        },
      ),
    ).toBeCloseTo(20, 1);
  });
});

it('water to rinse with, and the walk begins at the hose bib', () => {
  const yard = dosed(
    zoneAt('lawn', 'turf', [[boxAt(3, 0, 20, 20)]]),
    zoneAt('drive', 'hardscape', [[boxAt(0, 0, 3, 20)]]),
  );
  const bib: Mark = { ...drainAt(0, 21), id: 'bib', kind: 'hose-bib' };
  const settings = { ...yard.settings, hose: { lengthM: null, flowLPerS: 0.25 } };
  const [edge] = derive({ ...yard, settings, marks: [bib] }).rinseEdges;
  // common practice, no source: 3 m in 10 s; by hand: 20 m in 66.7 s
  expect(edge?.water?.seconds).toBeCloseTo(66.7, 1);
  const beginsAt = (one?: { readonly line: readonly Position[] }) =>
    one?.line[0] && testPlane.toPlane(one.line[0])[1];
  expect(beginsAt(edge)).toBeCloseTo(20, 2);
  const [south] = derive({
    ...yard,
    settings,
    marks: [{ ...bib, position: drainAt(0, -1).position }],
  }).rinseEdges;
  expect(beginsAt(south)).toBeCloseTo(0, 2);
  expect(derive(yard).rinseEdges[0]?.water).toBeNull();
});

describe('a zone without a place on the map', () => {
  const placed = zoneAt('placed', 'turf', [[boxAt(0, 0, 20, 10)]]);
  // its degrees lie round [0, 0]; a rectangle of 10 m by 5 m there
  const sketch: Zone = {
    ...zoneAt('sketch', 'turf', [
      [
        [
          [0, 0],
          [10 / 111319.49, 0],
          [10 / 111319.49, 5 / 110574.28],
          [0, 5 / 110574.28],
          [0, 0],
        ],
      ],
    ]),
    isPlaced: false,
  };

  it('is dosed by its area, keeps no strip and reaches no hardscape', () => {
    const walk = zoneAt('walk', 'hardscape', [[boxAt(20, 0, 2, 10)]]);
    const flagstones: Zone = { ...sketch, id: 'flags', kind: 'hardscape', mowing: null, material: 'stone' };
    const pool: Zone = { ...sketch, id: 'pool', kind: 'water', mowing: null };
    const made = derive(withStrips(dosed(placed, sketch, walk, flagstones, pool), 3, drainAt(10, 12)));
    expect(made.treated.get('sketch')?.areaM2).toBeCloseTo(50, 2);
    expect(made.treated.get('sketch')?.strips).toEqual([]);
    expect(made.treated.get('placed')?.strips.map((strip) => strip.sourceId)).toEqual(['drain']);
    expect(new Set(made.rinseEdges.map((edge) => edge.hardscapeId))).toEqual(new Set(['walk']));
    expect(new Set(made.rinseEdges.flatMap((edge) => edge.zoneIds))).toEqual(new Set(['placed']));
    const dose = made.figures.doses[0];
    expect(dose?.zones.map(({ zoneId }) => zoneId)).toEqual(['placed', 'sketch']);
    // by hand: 0.0016 L a square metre (the label of the fixture) over both
    const ground = (made.treated.get('placed')?.areaM2 ?? 0) + 50;
    expect(dose?.amount.value).toBeCloseTo(0.0016 * ground, 4);
  });
});

describe('doses on a slope', () => {
  // by hand: 3 up on 4 along makes 5 on the ground: a quarter more
  const steep: Zone = { ...zoneAt('bank', 'turf', [[boxAt(0, 0, 20, 10)]]), slope: 0.75 };
  const bySurface = (doseBySurface: boolean): Yard => {
    const yard = withStrips(dosed(steep), 3, drainAt(10, 0));
    return { ...yard, settings: { ...yard.settings, doseBySurface } };
  };

  it('go by the flat area unless the yard asks for the ground along the slope', () => {
    const [flat, along] = [derive(bySurface(false)), derive(bySurface(true))];
    const [a, b] = [flat.figures.doses[0], along.figures.doses[0]];
    expect((b?.areaM2 ?? 0) / (a?.areaM2 ?? 1)).toBeCloseTo(1.25, 9);
    expect((b?.amount.value ?? 0) / (a?.amount.value ?? 1)).toBeCloseTo(1.25, 9);
    expect((b?.areaSigmaM2 ?? 0) / (a?.areaSigmaM2 ?? 1)).toBeCloseTo(1.25, 9);
    expect((b?.stripM2 ?? 0) / (a?.stripM2 ?? 1)).toBeCloseTo(1.25, 9);
    expect(a?.zones[0]?.areaM2).toBeCloseTo(200 - 4.5 * Math.PI, 0);
  });

  it('follow the setting when it is changed', () => {
    const before = deriveYard(bySurface(false));
    const was = before.visit(every.id)?.figures.doses[0]?.areaM2 ?? 0;
    const after = deriveYard(bySurface(true), before);
    expect(after.visit(every.id)?.figures.doses[0]?.areaM2).toBeCloseTo(1.25 * was, 6);
  });
});
