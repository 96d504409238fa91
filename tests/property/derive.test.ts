import fc from 'fast-check';
import { expect, it } from 'vitest';
import { deriveYard } from '../../src/session/derive';
import '../../src/session/deriveVisit';
import type { Derived } from '../../src/session/types';
import type { Position, Product, Ring, Visit, Yard, Zone, ZoneKind } from '../../src/yard/types';
import { makeBenchYard } from '../bench/benchYard';

/*
 * What is taken over from the last derivation must be what a full one gives, digit for digit. A copy
 * of the yard shares no object with it, so nothing kept can serve the copy. It is derived after an empty
 * yard, which hands on the plane and nothing else.
 */

/**
 * A corner of the bench yard: 20 cells of lawn, hardscape, water and a house, with the beds in them. Two
 * hardscapes adjoin, and the drain stands beside one.
 */
function smallYard(): Yard {
  const yard = makeBenchYard();
  const isNear = ({ id }: Zone): boolean => {
    const n = Number(id.split('-')[1]);
    const cell = id.startsWith('cell') ? n : Math.floor(n * 1.5);
    return cell % 12 < 5 && cell < 48;
  };
  const pave = (zone: Zone): Zone => (zone.id === 'cell-15' ? { ...zone, kind: 'hardscape' } : zone);
  const marks = yard.marks.map((mark) => ({ ...mark, position: shift(mark.position, 14, 5) }));
  return { ...yard, zones: yard.zones.filter(isNear).map(pave), marks };
}

type Edit = (yard: Yard, pick: number, x: number, y: number) => Yard;

const KINDS: readonly ZoneKind[] = ['turf', 'hardscape', 'water', 'bed', 'structure'];
const at = (pick: number, count: number): number => Math.min(count - 1, Math.floor(pick * count));

function editZone(yard: Yard, pick: number, edit: (zone: Zone) => Zone): Yard {
  const index = at(pick, yard.zones.length);
  const zone = yard.zones[index];
  return zone ? { ...yard, zones: yard.zones.with(index, edit(zone)) } : yard;
}

/** Metres to degrees near 40 N, roughly: how far things move does not matter. */
const shift = ([lon, lat]: Position, x: number, y: number): Position => [lon + x / 85_000, lat + y / 111_000];

const EDITS: Readonly<Record<string, Edit>> = {
  moveCorner: (yard, pick, x, y) =>
    editZone(yard, pick, (zone) => {
      const ring = zone.parts[0]?.[0] as Ring;
      const place = 1 + at((pick * 37) % 1, ring.length - 2);
      return { ...zone, parts: [[ring.with(place, shift(ring[place] as Position, x, y))]] };
    }),
  moveZone: (yard, pick, x, y) =>
    editZone(yard, pick, (zone) => ({
      ...zone,
      parts: zone.parts.map((rings) => rings.map((ring) => ring.map((p) => shift(p, x, y)))),
    })),
  changeKind: (yard, pick, x) =>
    editZone(yard, pick, (zone) => ({ ...zone, kind: KINDS[at((x + 2) / 4, KINDS.length)] ?? 'turf' })),
  rename: (yard, pick) => editZone(yard, pick, (zone) => ({ ...zone, name: `${zone.name}′` })),
  remove: (yard, pick) => ({ ...yard, zones: yard.zones.toSpliced(at(pick, yard.zones.length), 1) }),
  toEnd: (yard, pick) => {
    const index = at(pick, yard.zones.length);
    return { ...yard, zones: [...yard.zones.toSpliced(index, 1), ...yard.zones.slice(index, index + 1)] };
  },
  moveDrain: (yard, _, x, y) => ({
    ...yard,
    marks: yard.marks.map((mark) => ({ ...mark, position: shift(mark.position, 4 * x, 4 * y) })),
  }),
  widenStrips: (yard, pick, x) => ({
    ...yard,
    settings: { ...yard.settings, strips: { stormDrainM: 6 * pick, wellM: 5, waterM: x + 2 } },
  }),
  spread: (yard, pick) => ({
    ...yard,
    products: yard.products.map((one): Product => ({ ...one, spreadDistanceM: 2 * pick })),
  }),
  raise: (yard, pick) => ({ ...yard, settings: { ...yard.settings, elevationM: 3000 * pick } }),
  units: (yard, pick) => ({
    ...yard,
    settings: { ...yard.settings, units: pick < 0.5 ? 'us' : 'metric' },
  }),
  renameYard: (yard) => ({ ...yard, name: `${yard.name}′` }),
  leaveOut: (yard, pick) => ({
    ...yard,
    visits: yard.visits.map((visit): Visit => {
      const exclude = yard.zones.slice(at(pick, yard.zones.length)).slice(0, 3);
      return { ...visit, zones: { ...visit.zones, exclude: exclude.map((zone) => zone.id) } };
    }),
  }),
};

const metres = fc.double({ min: -2, max: 2, noNaN: true });
const step = fc.record({
  edit: fc.constantFrom(...Object.keys(EDITS), 'undo', 'moveCorner', 'moveCorner'),
  pick: fc.double({ min: 0, max: 1, noNaN: true }),
  x: metres,
  y: metres,
  isLooked: fc.boolean(),
});

/** A step aimed at one zone. */
function one(edit: string, zoneId: string, x: number) {
  const { zones } = smallYard();
  const pick = (zones.findIndex((zone) => zone.id === zoneId) + 0.5) / zones.length;
  return { edit, pick, x, y: 0, isLooked: true };
}

function expectSame(derived: Derived): number {
  const own = derived.visit('visit');
  const bare = deriveYard({ ...derived.yard, zones: [], visits: [] }, derived);
  const full = deriveYard(structuredClone(derived.yard), bare).visit('visit');
  expect(own?.rinseEdges).toEqual(full?.rinseEdges);
  expect(own?.treated).toEqual(full?.treated);
  expect(own?.figures).toEqual(full?.figures);
  expect(own?.issues).toEqual(full?.issues);
  return own?.rinseEdges.length ?? 0;
}

it('a visit derived step by step is the visit derived anew', () => {
  let edges = 0;
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 8 }), (steps) => {
      const history = [smallYard()];
      let derived = deriveYard(history[0] as Yard);
      derived.visit('visit');
      for (const { edit, pick, x, y, isLooked } of steps) {
        const next = edit === 'undo' ? history.at(-2) : EDITS[edit]?.(derived.yard, pick, x, y);
        if (!next) continue;
        history.push(next);
        derived = deriveYard(next, derived);
        if (isLooked) edges += expectSame(derived);
      }
      edges += expectSame(derived);
    }),
    { numRuns: 25, examples: [[[one('changeKind', 'cell-15', 1)]], [[one('moveDrain', '', 0.5)]]] },
  );
  expect(edges).toBeGreaterThan(25);
}, 60_000);
