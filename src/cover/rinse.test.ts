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

describe('rinseEdges', () => {
  it('takes the side on the lawn alone, and neither end', () => {
    const list = edges();
    expect(list).toHaveLength(1);
    expect(total(list)).toBeCloseTo(10, 4);
    expect(list[0]?.zoneIds).toEqual(['lawn']);
    expect(list[0]?.planeLine).toHaveLength(2);
  });

  it('a narrow walk keeps its edge on the treated side, however far product reaches', () => {
    expect(total(edges({}, 1.39))).toBeCloseTo(10, 4);
    expect(total(edges({}, 3))).toBeCloseTo(10, 4);
  });

  it('takes as much of an end as the spread reaches where the lawn goes round it', () => {
    // by hand: 10 m beside the lawn, and 0.5 m of the south end from the lawn below it
    const round = laidGround('lawn', [[boxRing(1.4, -4, 12, 10)]], plane);
    const list = edges({
      treated: [{ zone: round, spreadM: 0.5, treatment: 'rinse-toward-turf', stains: false }],
    });
    expect(list.map((edge) => edge.lengthM)).toEqual([expect.closeTo(10.5, 4)]);
  });

  it('reaches an edge across ground between that is not treated', () => {
    const beyond = laidGround('lawn', [[boxRing(1.7, 2, 12, 8)]], plane);
    const list = (spreadM: number) =>
      edges({ treated: [{ zone: beyond, spreadM, treatment: 'rinse-toward-turf', stains: false }] });
    expect(list(0.29)).toEqual([]);
    // by hand: 6 m, and 0.4 m past either end, for 0.3² + 0.4² = 0.5²
    expect(total(list(0.5))).toBeCloseTo(6.8, 4);
  });

  it('lists nothing without spread or without treated ground', () => {
    expect(edges({}, 0)).toEqual([]);
    expect(edges({ treated: [] })).toEqual([]);
  });

  it('leaves out the seam of two hardscapes', () => {
    // the drive adjoins the walk's lower half on the lawn side; lawn lies beyond
    const drive = laidZone('drive', 'hardscape', [[boxRing(1.4, 0, 5, 5)]], plane);
    const upper = laidGround('lawn', [[boxRing(1.4, 5, 12, 10)]], plane);
    const list = edges({
      hardscapes: [walk, drive],
      treated: [{ zone: upper, spreadM: 0.5, treatment: 'rinse-toward-turf', stains: false }],
    });
    // walk: its side y 5..10; drive: its top x 1.4..5 and 0.5 m down its far side
    const lengthOf = (id: string): number => total(list.filter((edge) => edge.hardscapeId === id));
    expect(lengthOf('walk')).toBeCloseTo(5, 4);
    expect(lengthOf('drive')).toBeCloseTo(3.6 + 0.5, 4);
  });

  it('walks holes and closed runs as one stretch', () => {
    const ring = laidZone('loop', 'hardscape', [[boxRing(0, 0, 10, 10), boxRing(3, 3, 7, 7)]], plane);
    const bed = laidGround('bed', [[boxRing(3, 3, 7, 7)]], plane);
    const list = edges({
      hardscapes: [ring],
      treated: [{ zone: bed, spreadM: 1, treatment: 'rinse-toward-turf', stains: true }],
    });
    expect(list).toHaveLength(1);
    expect(total(list)).toBeCloseTo(16, 4);
    expect(list[0]?.stains).toBe(true);
  });

  it('parts a stretch where loose product begins, and where one that stains does', () => {
    const upper = laidGround('upper', [[boxRing(1.4, 4, 12, 10)]], plane);
    const lower = laidGround('lower', [[boxRing(1.4, 0, 12, 4)]], plane);
    const list = edges({
      treated: [
        { zone: upper, spreadM: 0.8, treatment: 'rinse-toward-turf', stains: true },
        { zone: lower, spreadM: 0.8, treatment: 'sweep-then-rinse', stains: false },
      ],
    });
    // by hand: each reaches 0.8 m past y = 4
    const told = list.map((edge) => [
      edge.zoneIds,
      edge.treatment,
      edge.stains,
      Math.round(edge.lengthM * 1e4),
    ]);
    expect(told).toHaveLength(3);
    expect(told).toContainEqual([['lower'], 'sweep-then-rinse', false, 32_000]);
    expect(told).toContainEqual([['upper', 'lower'], 'sweep-then-rinse', true, 16_000]);
    expect(told).toContainEqual([['upper'], 'rinse-toward-turf', true, 52_000]);
    expect(list.map((edge) => edge.number)).toEqual([1, 2, 3]);
  });

  it('a bit under half a metre is done with the neighbour that asks for no less', () => {
    const upper = laidGround('upper', [[boxRing(1.4, 4, 12, 10)]], plane);
    const lower = laidGround('lower', [[boxRing(1.4, 0, 12, 4)]], plane);
    const list = edges({
      treated: [
        { zone: upper, spreadM: 0.2, treatment: 'rinse-toward-turf', stains: false },
        { zone: lower, spreadM: 0.2, treatment: 'sweep-then-rinse', stains: true },
      ],
    });
    expect(list.map((edge) => [edge.treatment, edge.stains, Math.round(edge.lengthM * 1e4)]).sort()).toEqual([
      ['rinse-toward-turf', false, 58_000],
      ['sweep-then-rinse', true, 42_000],
    ]);
  });

  it('joins what a gap under half a metre parts', () => {
    const along = (gapM: number) => {
      const south = boxRing(1.4, 0, 12, 4);
      const north = boxRing(1.4, 4 + gapM, 12, 10);
      const both = laidGround('lawn', [[south], [north]], plane);
      return edges({
        treated: [{ zone: both, spreadM: 0.01, treatment: 'rinse-toward-turf', stains: false }],
      }).map((edge) => edge.lengthM);
    };
    expect(along(0.4)).toEqual([expect.closeTo(10, 4)]);
    // by hand: 1 cm into the gap from either side
    expect(along(0.7)).toHaveLength(2);
    expect(along(0.7).reduce((sum, one) => sum + one, 0)).toBeCloseTo(10 - 0.7 + 0.02, 4);
  });

  it('names the nearest source within its strip or 3 m of the stretch', () => {
    const drain = { sourceKind: 'storm-drain', label: 'drain', widthM: 3 } as const;
    const near = edges({
      sources: [
        { ...drain, sourceId: 'far', shape: { point: [1.4, 13.5] } },
        { ...drain, sourceId: 'on-walk', shape: { point: [0.4, 5] } },
        {
          sourceId: 'pond',
          sourceKind: 'water',
          label: 'pond',
          widthM: 5,
          shape: { parts: [[boxRing(2, -4, 4, -2)]] },
        },
      ],
    });
    // by hand: y 5 ± √(3² - 1²) by the drain on the walk, from y 5 - 8 to 3 by the pond, √8 round it
    const told = near.map((edge) => [edge.near?.sourceId ?? null, edge.near?.distanceM ?? 0, edge.lengthM]);
    expect(told).toContainEqual(['on-walk', expect.closeTo(1, 9), expect.any(Number)]);
    expect(total(near)).toBeCloseTo(10, 4);
  });

  it('keeps water off only where a drain is near, and rinses the rest', () => {
    const drain = { sourceKind: 'storm-drain', label: 'drain', widthM: 3, sourceId: 'd' } as const;
    const list = edges({ sources: [{ ...drain, shape: { point: [0.4, 5] } }], flowLPerS: 0.2 });
    // by hand: the middle √8 m to either side of y = 5
    const near = list.filter((edge) => edge.near !== null);
    expect(near.map((edge) => edge.lengthM)).toEqual([expect.closeTo(2 * Math.sqrt(8), 4)]);
    expect(near[0]?.water).toBeNull();
    // by hand: within 0.5 m of the middle, by the walk's own 1.4 m: its length by 0.5 m and two quarters of a disc
    expect(near[0]?.bandM2).toBeCloseTo(Math.sqrt(8) + (Math.PI * 0.25) / 2, 1);
    expect(list.reduce((sum, edge) => sum + edge.bandM2, 0)).toBeCloseTo(5, 2);
    expect(list.filter((edge) => edge.near === null).map((edge) => edge.lengthM)).toEqual([
      expect.closeTo(5 - Math.sqrt(8), 4),
      expect.closeTo(5 - Math.sqrt(8), 4),
    ]);
    expect(list.every((edge) => edge.near !== null || edge.water !== null)).toBe(true);
  });

  it.each([0, 0.5, 3])('warns of a drain on the edge whatever its strip: %s m wide', (widthM) => {
    const drain = { sourceId: 'drain', sourceKind: 'storm-drain', label: 'drain', widthM } as const;
    const nearM = (x: number): number | undefined =>
      edges({ sources: [{ ...drain, shape: { point: [x, 5] } }] }).flatMap((edge) => edge.near ?? [])[0]
        ?.distanceM;
    expect(nearM(1.4)).toBeCloseTo(0, 9);
    expect(nearM(1.4 + 2.9)).toBeCloseTo(2.9, 9);
    expect(nearM(1.4 + 3.1)).toBeUndefined();
  });

  it('warns of water as far as its strip where that is wider than 3 m', () => {
    const at = (x: number): RinseInput['sources'] => [
      {
        sourceId: 'pond',
        sourceKind: 'water',
        label: 'pond',
        widthM: 5,
        shape: { parts: [[boxRing(x, 0, x + 9, 10)]] },
      },
    ];
    expect(edges({ sources: at(1.4 + 4.9) })[0]?.near?.distanceM).toBeCloseTo(4.9, 9);
    expect(edges({ sources: at(1.4 + 5.1) })[0]?.near).toBeNull();
  });

  it('drops what is shorter than 5 cm', () => {
    const corner = laidGround('far', [[boxRing(1.4 + 0.3, 10 + 0.3, 5, 12)]], plane);
    const reach = (spreadM: number): number =>
      edges({ treated: [{ zone: corner, spreadM, treatment: 'rinse-toward-turf', stains: false }] }).length;
    expect(reach(Math.hypot(0.3, 0.3) + 0.005)).toBe(0);
    expect(reach(Math.hypot(0.3, 0.3) + 0.1)).toBe(1);
  });

  it('looks again at a kept hardscape when a source or a neighbour comes, moves or goes', () => {
    const drainAt = (x: number) => ({
      sourceId: 'drain',
      sourceKind: 'storm-drain' as const,
      label: 'the storm drain',
      widthM: 3,
      shape: { point: [x, 5] as const },
    });
    const nearM = (sources: RinseInput['sources']) =>
      edges({ sources }).flatMap((edge) => edge.near ?? [])[0]?.distanceM ?? null;
    expect([nearM([]), nearM([drainAt(2.4)]), nearM([drainAt(3.4)]), nearM([])]).toEqual([
      null,
      expect.closeTo(1, 9),
      expect.closeTo(2, 9),
      null,
    ]);
    // a terrace along its lower end takes 4 m that were reached there
    const terrace = laidZone('terrace', 'hardscape', [[boxRing(1.4, 0, 3, 4)]], plane);
    const ofWalk = (hardscapes: RinseInput['hardscapes']) =>
      total(edges({ hardscapes }).filter((edge) => edge.hardscapeId === 'walk'));
    expect(ofWalk([walk])).toBeCloseTo(10, 4);
    expect(ofWalk([walk, terrace])).toBeCloseTo(6, 4);
    expect(ofWalk([walk])).toBeCloseTo(10, 4);
  });
});

describe('hardscapes that overlap, adjoin or lie in each other have the edges of their union', () => {
  const east = laidGround('lawn', [[boxRing(3, 0, 23, 20)]], plane);
  const box = (id: string, ...at: [number, number, number, number]) =>
    laidZone(id, 'hardscape', [[boxRing(...at)]], plane);
  const drive = box('drive', 0, 0, 3, 20);
  const lengths = (hardscapes: RinseInput['hardscapes']): Record<string, number> => {
    const list = rinseEdges({
      treated: [{ zone: east, spreadM: 1, treatment: 'rinse-toward-turf', stains: false }],
      hardscapes,
      sources: [],
      plane,
    });
    const sums: Record<string, number> = {};
    for (const { hardscapeId, lengthM } of list) sums[hardscapeId] = (sums[hardscapeId] ?? 0) + lengthM;
    return sums;
  };
  const all = (hardscapes: RinseInput['hardscapes']) =>
    Object.values(lengths(hardscapes)).reduce((sum, one) => sum + one, 0);

  // by hand: 20 m beside the lawn, neither end
  it('a drive beside a lawn', () => expect(all([drive])).toBeCloseTo(20, 4));

  it('a drive that is there twice counts once, for the first', () => {
    expect(lengths([drive, box('again', 0, 0, 3, 20)])).toEqual({ drive: expect.closeTo(20, 4) });
    expect(lengths([box('again', 0, 0, 3, 20), drive])).toEqual({ again: expect.closeTo(20, 4) });
  });

  it('an apron inside the end of the drive takes no edge away', () => {
    const apron = box('apron', 0, 0, 3, 5);
    expect(lengths([drive, apron])).toEqual({ drive: expect.closeTo(20, 4) });
    // named first it has the edge that it shares: 5 m
    expect(lengths([apron, drive])).toEqual({
      apron: expect.closeTo(5, 4),
      drive: expect.closeTo(15, 4),
    });
  });

  it('a second one on its middle takes no edge away', () => {
    expect(all([drive, box('middle', 0, 5, 3, 15)])).toBeCloseTo(20, 4);
    expect(all([box('middle', 0, 5, 3, 15), drive])).toBeCloseTo(20, 4);
  });

  it('a narrow edging keeps its edge on the lawn, the drive behind it has a seam', () => {
    const edging = box('edging', 2.985, 0, 3, 20);
    const sums = lengths([box('drive', 0, 0, 2.985, 20), edging]);
    expect(sums).toEqual({ edging: expect.closeTo(20, 4) });
  });

  it('one that crosses it: each has an edge where it is the outer one', () => {
    // walk 2..6 across the drive and into the lawn's ground, which it takes
    const walkOver = box('walk', -2, 8, 5, 10);
    const lawn = laidGround(
      'lawn',
      [
        [
          [
            [3, 0],
            [23, 0],
            [23, 20],
            [3, 20],
            [3, 10],
            [5, 10],
            [5, 8],
            [3, 8],
            [3, 0],
          ],
        ],
      ],
      plane,
    );
    const list = edges({
      hardscapes: [drive, walkOver],
      treated: [{ zone: lawn, spreadM: 1, treatment: 'rinse-toward-turf', stains: false }],
    });
    const of = (id: string): number => total(list.filter((edge) => edge.hardscapeId === id));
    expect(of('drive')).toBeCloseTo(20 - 2, 4);
    expect(of('walk')).toBeCloseTo(2 + 2 + 2, 4);
  });
});
