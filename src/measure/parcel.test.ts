import { describe, expect, it } from 'vitest';
import { addZone } from '../yard/edits';
import type { Parcel, Ring, Yard, Zone } from '../yard/types';
import { measureYard } from './measureYard';
import { checkParcel } from './parcel';
import { givePiece, parcelFromZones, zoneFromPiece } from './parcelEdits';
import { boxAt, yardOf, zoneAt } from './testYards';

const parcelOf = (...rings: readonly Ring[]): Parcel => ({
  name: '',
  parts: rings.map((ring) => [ring]),
  curves: [],
  survey: { method: 'plat', vertexSigmaM: 0.05, scaleSigma: 0, source: '' },
  extra: {},
});
const withParcel = (ring: Ring, ...zones: readonly Zone[]): Yard => ({
  ...yardOf(...zones),
  parcel: parcelOf(ring),
});
function check(yard: Yard) {
  const made = checkParcel(yard, measureYard(yard));
  if (!made) throw new Error('The yard has no parcel.');
  return made;
}

/** A lot of 40 m by 30 m: a lawn of 30 by 30 with a house of 10 by 8 on it; 10 m by 30 m are left over. */
const lot = boxAt(0, 0, 40, 30);
const lawn = zoneAt('lawn', 'turf', [[boxAt(0, 0, 30, 30)]], 0.2);
const house = zoneAt('house', 'structure', [[boxAt(5, 5, 10, 8)]], 0.05);

describe('checkParcel', () => {
  it('says nothing of a yard without an outline', () => {
    expect(checkParcel(yardOf(lawn), measureYard(yardOf(lawn)))).toBeNull();
  });

  it('puts every square metre into a kind or on the list', () => {
    const made = check(withParcel(lot, lawn, house));
    expect(made.parcelM2).toBeCloseTo(1200, 1);
    expect(made.kinds.map(({ kind, count }) => [kind, count])).toEqual([
      ['structure', 1],
      ['turf', 1],
    ]);
    expect(made.kinds.map(({ areaM2 }) => Math.round(areaM2))).toEqual([80, 820]);
    expect(made.unassigned).toHaveLength(1);
    expect(made.unassigned[0]?.areaM2).toBeCloseTo(300, 1);
    expect(made.unassigned[0]?.neighbourIds).toEqual(['lawn']);
    expect(made.unassigned[0]?.isSliver).toBe(false);
    expect(made.outside).toEqual([]);
    expect(made.overlapsM2).toBe(0);
    expect(Math.abs(made.balanceM2)).toBeLessThan(1e-6 * made.parcelM2);
  });

  it('lists what lies beyond, and counts ground that two lawns claim once', () => {
    const other = zoneAt('other', 'turf', [[boxAt(25, 0, 20, 30)]]);
    const made = check(withParcel(lot, lawn, house, other));
    expect(made.unassigned).toEqual([]);
    expect(made.outside.map(({ zoneId, areaM2 }) => [zoneId, Math.round(areaM2)])).toEqual([['other', 150]]);
    expect(made.overlapsM2).toBeCloseTo(150, 1);
    expect(made.kinds.find(({ kind }) => kind === 'turf')?.areaM2).toBeCloseTo(1120, 1);
    expect(Math.abs(made.balanceM2)).toBeLessThan(1e-6 * made.parcelM2);
  });

  it('calls a strip narrower than the gap of the settings a sliver', () => {
    const made = check(withParcel(boxAt(0, 0, 30.3, 30), lawn));
    expect(made.unassigned.map(({ isSliver }) => isSliver)).toEqual([true]);
  });

  it('errs by the corners of both: by hand, a strip between them errs by its two long sides', () => {
    const made = check(withParcel(lot, lawn));
    // 10 m by 30 m: the long sides pull 15 m on each of their ends, the lawn's by 0.2, the lot's by 0.05. The
    // short sides are the last quarter of the lot's sides of 40 m: 10·0.875 and 10·0.125 on their ends.
    const byHand = Math.sqrt(2 * 0.05 ** 2 * (15 ** 2 + 8.75 ** 2 + 1.25 ** 2) + 2 * 0.2 ** 2 * 15 ** 2);
    expect(made.unassignedSigmaM2).toBeCloseTo(byHand, 3);
    // a rectangle of 40 by 30 whose corners are good to s: s·sqrt(40² + 30²)
    expect(made.sigmaM2).toBeCloseTo(0.05 * 50, 3);
  });

  it('knows nothing of zones without a place', () => {
    const made = check(
      withParcel(lot, lawn, house, { ...zoneAt('b', 'bed', [[boxAt(1, 1, 5, 5)]]), isPlaced: false }),
    );
    expect(made.kinds.map(({ kind }) => kind)).toEqual(['structure', 'turf']);
  });

  it('says why an outline that crosses itself is not measured', () => {
    const [a, b, c, d] = boxAt(0, 0, 10, 10);
    if (!a || !b || !c || !d) throw new Error('no box');
    const made = check({ ...yardOf(lawn), parcel: parcelOf([a, c, b, d, a]) });
    expect(made.issues[0]?.message).toContain('Outline of the property');
    expect(made.parcelM2).toBe(0);
  });
});

describe('what is done about it', () => {
  it('makes a zone of a piece: nothing is left, corners are the same digit for digit', () => {
    const yard = withParcel(lot, lawn, house);
    const measured = measureYard(yard);
    const piece = check(yard).unassigned[0];
    const made = zoneFromPiece(yard, piece?.parts ?? [], zoneAt('new', 'bed', []), measured.plane);
    if (!made.ok) throw new Error(made.issue.message);
    const after = check(made.yard);
    expect(after.unassignedM2).toBeLessThan(1e-3);
    const corners = new Set(
      made.yard.zones
        .find((zone) => zone.id === 'new')
        ?.parts.flat(2)
        .map(String),
    );
    expect([...corners].sort()).toEqual(
      [lawn.parts[0]?.[0]?.[1], lawn.parts[0]?.[0]?.[2], lot[1], lot[2]].map(String).sort(),
    );
  });

  it('a piece errs by the corners that bound it, and so does the sum with the zone it goes round', () => {
    // A lot of 40 by 30 m good to 0.05 m with a taped bed of 12 by 9 m good to 0.5 m inside it.
    const taped = zoneAt('taped', 'turf', [[boxAt(8, 8, 12, 9)]], 0.5);
    const yard = withParcel(lot, taped);
    const before = measureYard(yard);
    const made = zoneFromPiece(
      yard,
      check(yard).unassigned[0]?.parts ?? [],
      zoneAt('rest', 'turf', [], 0.5),
      before.plane,
    );
    if (!made.ok) throw new Error(made.issue.message);
    const after = measureYard(made.yard);
    // textbook: a rectangle errs by s·sqrt(A² + B²); the corners of both are independent
    const ofLot = 0.05 * Math.hypot(40, 30);
    const ofTaped = 0.5 * Math.hypot(12, 9);
    expect(after.zones.get('rest')?.netSigmaM2).toBeCloseTo(Math.hypot(ofLot, ofTaped), 2);
    expect(after.zones.get('taped')?.netSigmaM2).toBeCloseTo(before.zones.get('taped')?.netSigmaM2 ?? 0, 4);
    // their common border cancels: what is left is the lot's, as well as the one error of the rest can say
    const total = after.totals.find((one) => one.kind === 'turf')?.netSigmaM2 ?? 0;
    expect(total).toBeGreaterThanOrEqual(ofLot);
    expect(total).toBeLessThan(Math.hypot(ofLot, ofTaped) * 1.001);
  });

  it('gives a piece to its longest neighbour that is not locked', () => {
    const bed = zoneAt('bed', 'bed', [[boxAt(30, 0, 10, 5)]]);
    const yard = withParcel(lot, lawn, house, bed);
    const { plane } = measureYard(yard);
    const piece = check(yard).unassigned[0];
    expect(piece?.neighbourIds).toEqual(['lawn', 'bed']);
    const made = givePiece(yard, piece ?? { parts: [], neighbourIds: [] }, plane);
    if (!made.ok) throw new Error(made.issue.message);
    expect(measureYard(made.yard).zones.get('lawn')?.netM2).toBeCloseTo(40 * 30 - 80 - 50, 1);
    const locked = yardWith(yard, 'lawn', { isLocked: true });
    const second = givePiece(locked, piece ?? { parts: [], neighbourIds: [] }, plane);
    if (!second.ok) throw new Error(second.issue.message);
    expect(measureYard(second.yard).zones.get('bed')?.netM2).toBeCloseTo(300, 1);
    const both = yardWith(locked, 'bed', { isLocked: true });
    const third = givePiece(both, piece ?? { parts: [], neighbourIds: [] }, plane);
    expect(third.ok ? '' : third.issue.code).toBe('zone-locked');
  });

  it('takes the outline round chosen zones, with what they enclose', () => {
    const frame: Zone = { ...lawn, parts: [[boxAt(0, 0, 30, 30), boxAt(10, 10, 5, 5)]] };
    const bed = zoneAt('bed', 'bed', [[boxAt(30, 0, 10, 30)]], 0.4);
    const made = parcelFromZones(yardOf(frame, bed), ['lawn', 'bed'], measureYard(yardOf(frame)).plane);
    if (!made.ok) throw new Error(made.issue.message);
    expect(made.yard.parcel?.survey.vertexSigmaM).toBe(0.4);
    expect(check(made.yard).parcelM2).toBeCloseTo(1200, 1);
    expect(
      check(addZone(made.yard, zoneAt('core', 'turf', [[boxAt(10, 10, 5, 5)]]))).unassignedM2,
    ).toBeLessThan(1e-3);
  });
});

function yardWith(yard: Yard, id: string, change: Partial<Zone>): Yard {
  return { ...yard, zones: yard.zones.map((zone) => (zone.id === id ? { ...zone, ...change } : zone)) };
}
