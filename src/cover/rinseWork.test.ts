import { describe, expect, it } from 'vitest';
import { type RinseInput, rinseEdges } from './rinse';
import { boxRing, laidGround, laidZone, testPlane } from './testGround';

const plane = testPlane();
const walk = laidZone('walk', 'hardscape', [[boxRing(0, 0, 1.4, 10)]], plane);
const lawn = laidGround('lawn', [[boxRing(1.4, 0, 12, 10)]], plane);

function edges(change: Partial<RinseInput> = {}, spreadM = 0.5): ReturnType<typeof rinseEdges> {
  return rinseEdges({
    treated: [{ zone: lawn, spreadM, treatment: 'rinse-toward-turf', stains: false }],
    hardscapes: [walk],
    sources: [],
    plane,
    ...change,
  });
}
const total = (list: ReturnType<typeof rinseEdges>): number =>
  list.reduce((sum, edge) => sum + edge.lengthM, 0);

describe('a house between', () => {
  const spread = (zone: ReturnType<typeof laidGround>, spreadM: number) => [
    { zone, spreadM, treatment: 'rinse-toward-turf', stains: false } as const,
  ];
  const structure = (...at: [number, number, number, number]) =>
    laidZone('house', 'structure', [[boxRing(...at)]], plane).measured;
  const patio = laidZone('patio', 'hardscape', [[boxRing(0, 0, 4, 10)]], plane);
  // a wall 0.3 m thick between patio and lawn
  const lawn = laidGround('lawn', [[boxRing(4.3, 0, 12, 10)]], plane);
  const lengths = (...structures: ReturnType<typeof structure>[]) =>
    edges({ hardscapes: [patio], treated: spread(lawn, 1), structures }).map((edge) => edge.lengthM);

  it('hides the edge behind it, wholly or as far as it reaches', () => {
    expect(lengths()).toEqual([expect.closeTo(10, 4)]);
    expect(lengths(structure(4, 0, 4.3, 10))).toEqual([]);
    // by hand: with the wall from y = 0 to 6, product flies round its end at (4, 6) from (4.3, 6.0…)
    // only to y = 6 and above
    expect(lengths(structure(4, 0, 4.3, 6))).toEqual([expect.closeTo(4, 3)]);
  });

  it('is looked past: a post throws its shadow from every side, and light comes round it', () => {
    // by hand: a post 0.2 m wide at 0.05 to 0.25 m off hides no point whose treated ground within 1 m shows beside it
    expect(lengths(structure(4.05, 4.9, 4.25, 5.1))).toEqual([expect.closeTo(10, 4)]);
  });

  it('shows the ground past its corner only in a straight line', () => {
    // by hand: wall x 4..4.3, y 0..6, lawn beyond a bed: x from 4.3, y from 6.4; the corner (4.3, 6) is
    // passed by the line from (4, 5.6) to (4.6, 6.4), but the wall's own near corner (4, 6) stops all below y = 6
    const far = laidGround('lawn', [[boxRing(4.3, 6.4, 12, 10)]], plane);
    const list = edges({
      hardscapes: [patio],
      treated: spread(far, 1),
      structures: [structure(4, 0, 4.3, 6)],
    });
    // by hand: seen from y = 6 up, and 1 m from (4.3, 6.4) would reach down to 6.4 - √(1 - 0.09) = 5.446
    expect(total(list)).toBeCloseTo(4, 3);
    const open = edges({ hardscapes: [patio], treated: spread(far, 1) });
    expect(total(open)).toBeCloseTo(10 - 6.4 + Math.sqrt(1 - 0.09), 4);
  });

  it('beside the way hides nothing, and is looked at again when it comes or goes', () => {
    const beside = structure(0, 10, 4, 12);
    expect([lengths(), lengths(beside), lengths(structure(4, 0, 4.3, 10)), lengths()]).toEqual([
      [expect.closeTo(10, 4)],
      [expect.closeTo(10, 4)],
      [],
      [expect.closeTo(10, 4)],
    ]);
  });
});

describe('what rinsing takes', () => {
  it('the splash band is the hardscape within reach, once', () => {
    // by hand: 10 m by 0.5 m; the whole walk, 14 m², where product reaches across
    expect(edges()[0]?.bandM2).toBeCloseTo(5, 3);
    expect(edges({}, 3)[0]?.bandM2).toBeCloseTo(14, 3);
    const both = edges(
      {
        treated: [
          { zone: lawn, spreadM: 1, treatment: 'rinse-toward-turf', stains: false },
          {
            zone: laidGround('west', [[boxRing(-9, 0, 0, 10)]], plane),
            spreadM: 1,
            treatment: 'rinse-toward-turf',
            stains: false,
          },
        ],
      },
      1,
    );
    // by hand: 10 m² and 4 m² or the other way round: the middle counts for the first
    expect(both.map((edge) => edge.bandM2).sort()).toEqual([expect.closeTo(10, 3), expect.closeTo(4, 3)]);
  });

  it('ends round where treated ground ends', () => {
    const part = laidGround('lawn', [[boxRing(1.4, 4, 12, 6)]], plane);
    const list = edges({
      treated: [{ zone: part, spreadM: 1, treatment: 'rinse-toward-turf', stains: false }],
    });
    // by hand: 2 m² and two quarters of a disc of 1 m
    expect(list[0]?.bandM2).toBeCloseTo(2 + Math.PI / 2, 1);
    expect(list[0]?.lengthM).toBeCloseTo(4, 4);
  });

  it('takes the time of the walk, or of 1 mm of water, at the hose’s flow', () => {
    // common practice, no source: 3 m in 10 s, 1 L/m²; by hand: 10 m take 33.3 s, 5 m² take 5 L
    expect(edges({ flowLPerS: 0.3 })[0]?.water).toEqual({
      seconds: expect.closeTo(100 / 3, 3),
      litres: expect.closeTo(10, 3),
    });
    expect(edges({ flowLPerS: 0.1 })[0]?.water).toEqual({
      seconds: expect.closeTo(50, 2),
      litres: expect.closeTo(5, 3),
    });
    expect(edges()[0]?.water).toBeNull();
  });
});

describe('the fall of the ground', () => {
  const falling = (downhillDeg: number | null, slope: number | null, sources: RinseInput['sources'] = []) =>
    edges({
      treated: [
        {
          zone: lawn,
          spreadM: 0.5,
          treatment: 'rinse-toward-turf',
          stains: false,
          fall: { slope, downhillDeg },
        },
      ],
      sources,
    });

  it('marks an edge that treated ground falls toward', () => {
    // the lawn lies east of the walk: it falls on the walk to the west alone
    expect(falling(270, 0.04)[0]?.downhill).toEqual({
      lengthM: expect.closeTo(10, 4),
      slope: 0.04,
      leadsTo: null,
    });
    expect(falling(225, 0.04)[0]?.downhill).not.toBeNull();
    for (const deg of [90, 0, 180, 350]) expect(falling(deg, 0.04)[0]?.downhill).toBeNull();
    expect(falling(270, null)[0]?.downhill).toBeNull();
    expect(falling(270, 0)[0]?.downhill).toBeNull();
    expect(falling(null, 0.04)[0]?.downhill).toBeNull();
  });

  it('tells what lies down the fall within 30 m', () => {
    const drain = (x: number, y: number) => [
      {
        sourceId: 'drain',
        sourceKind: 'storm-drain',
        label: 'drain',
        widthM: 3,
        shape: { point: [x, y] },
      } as const,
    ];
    expect(falling(270, 0.04, drain(-10.6, 5))[0]?.downhill?.leadsTo).toEqual({
      sourceId: 'drain',
      sourceKind: 'storm-drain',
      distanceM: expect.closeTo(12, 1),
    });
    expect(falling(270, 0.04, drain(-40, 5))[0]?.downhill?.leadsTo).toBeNull();
    expect(falling(270, 0.04, drain(-10, 20))[0]?.downhill?.leadsTo).toBeNull();
    expect(falling(90, 0.04, drain(-10, 5))[0]?.downhill).toBeNull();
  });
});
