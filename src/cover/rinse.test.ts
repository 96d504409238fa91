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
  it('takes the side on the lawn and as much of both ends as the spread reaches', () => {
    const list = edges();
    expect(list).toHaveLength(1);
    expect(total(list)).toBeCloseTo(10 + 2 * 0.5, 4);
    expect(list[0]?.zoneIds).toEqual(['lawn']);
    expect(list[0]?.planeLine).toHaveLength(4);
  });

  it('lists the far side of a narrow walk only when product reaches across', () => {
    expect(total(edges({}, 1.39))).toBeCloseTo(10 + 2 * 1.39, 4);
    expect(total(edges({}, 1.5))).toBeCloseTo(2 * 10 + 2 * 1.4, 4);
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
    // walk: its side y 5..10 and 0.5 of its end; drive: its top x 1.4..5 and 0.5 m down its far side
    const lengthOf = (id: string): number => total(list.filter((edge) => edge.hardscapeId === id));
    expect(lengthOf('walk')).toBeCloseTo(5.5, 4);
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

  it('sweeps first as soon as one zone in reach got loose product, and names every zone', () => {
    const other = laidGround('bed', [[boxRing(-3, 0, 0, 4)]], plane);
    const list = edges({
      treated: [
        { zone: lawn, spreadM: 0.8, treatment: 'rinse-toward-turf', stains: true },
        { zone: other, spreadM: 0.8, treatment: 'sweep-then-rinse', stains: false },
      ],
    });
    const joint = list.find((edge) => edge.zoneIds.length === 2);
    expect(joint?.treatment).toBe('sweep-then-rinse');
    expect(joint?.stains).toBe(true);
    expect(list.map((edge) => edge.number)).toEqual(list.map((_, i) => i + 1));
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
    })[0]?.near;
    expect(near?.sourceId).toBe('on-walk');
    expect(near?.distanceM).toBeCloseTo(1, 9);
  });

  it.each([0, 0.5, 3])('warns of a drain on the edge whatever its strip: %s m wide', (widthM) => {
    const drain = { sourceId: 'drain', sourceKind: 'storm-drain', label: 'drain', widthM } as const;
    const nearM = (x: number): number | undefined =>
      edges({ sources: [{ ...drain, shape: { point: [x, 5] } }] })[0]?.near?.distanceM;
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
    const nearM = (sources: RinseInput['sources']) => edges({ sources })[0]?.near?.distanceM ?? null;
    expect([nearM([]), nearM([drainAt(2.4)]), nearM([drainAt(3.4)]), nearM([])]).toEqual([
      null,
      expect.closeTo(1, 9),
      expect.closeTo(2, 9),
      null,
    ]);
    // a terrace along the whole south end takes the 0.5 m that was reached there
    const terrace = laidZone('terrace', 'hardscape', [[boxRing(0, -4, 1.4, 0)]], plane);
    const ofWalk = (hardscapes: RinseInput['hardscapes']) =>
      total(edges({ hardscapes }).filter((edge) => edge.hardscapeId === 'walk'));
    expect(ofWalk([walk])).toBeCloseTo(11, 4);
    expect(ofWalk([walk, terrace])).toBeCloseTo(10.5, 4);
    expect(ofWalk([walk])).toBeCloseTo(11, 4);
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

  // by hand: 20 m beside the lawn and 1 m of either end
  it('a drive beside a lawn', () => expect(all([drive])).toBeCloseTo(22, 4));

  it('a drive that is there twice counts once, for the first', () => {
    expect(lengths([drive, box('again', 0, 0, 3, 20)])).toEqual({ drive: expect.closeTo(22, 4) });
    expect(lengths([box('again', 0, 0, 3, 20), drive])).toEqual({ again: expect.closeTo(22, 4) });
  });

  it('an apron inside the end of the drive takes no edge away', () => {
    const apron = box('apron', 0, 0, 3, 5);
    expect(lengths([drive, apron])).toEqual({ drive: expect.closeTo(22, 4) });
    // named first it has the edges that it shares: 5 m and 1 m
    expect(lengths([apron, drive])).toEqual({
      apron: expect.closeTo(6, 4),
      drive: expect.closeTo(16, 4),
    });
  });

  it('a second one on its middle takes no edge away', () => {
    expect(all([drive, box('middle', 0, 5, 3, 15)])).toBeCloseTo(22, 4);
    expect(all([box('middle', 0, 5, 3, 15), drive])).toBeCloseTo(22, 4);
  });

  it('a narrow edging keeps its edge on the lawn, the drive behind it has a seam', () => {
    const edging = box('edging', 2.985, 0, 3, 20);
    const sums = lengths([box('drive', 0, 0, 2.985, 20), edging]);
    // by hand: 20 m and 1.5 cm of either end; the drive has the rest of 1 m of either end
    expect(sums.edging).toBeCloseTo(20.03, 4);
    expect(sums.drive).toBeCloseTo(2 * 0.985, 4);
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
    expect(of('drive')).toBeCloseTo(22 - 2, 4);
    expect(of('walk')).toBeCloseTo(2 + 2 + 2, 4);
  });
});
