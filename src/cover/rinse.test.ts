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

  it('names the nearest source whose strip reaches the stretch', () => {
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
