import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createHistory } from '../../src/session/history';
import { yardFromGeoJson, yardToGeoJson } from '../../src/yard/codec';
import { newZone } from '../../src/yard/defaults';
import * as edits from '../../src/yard/edits';
import { MATERIALS, MOWING_CLASSES, type Position, type Yard, ZONE_KINDS } from '../../src/yard/types';
import { granules, rectangle, testYard, visit } from '../fixtures/testYard';

/** Freezes a value to its leaves: writing to it throws in strict mode. */
function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const member of Object.values(value)) deepFreeze(member);
  }
  return value;
}

const name = fc.string({ maxLength: 12 });
/** degrees on a grid of 1e-11, as stored. */
const degrees = (least: number, most: number) =>
  fc.double({ min: least, max: most, noNaN: true }).map((d) => Number(d.toFixed(11)) + 0);
const members = (known: readonly string[]) =>
  fc
    .dictionary(
      fc.string({ minLength: 1, maxLength: 8 }).filter((key) => !known.includes(key)),
      // JSON has no -0: what JSON.parse can give is what a file can hold.
      fc.jsonValue({ maxDepth: 2 }).map((value) => JSON.parse(JSON.stringify(value))),
      { maxKeys: 3 },
    )
    .map((found) =>
      Object.keys(found).length === 0 ? undefined : Object.fromEntries(Object.entries(found)),
    );
const ZONE_KNOWN = [
  'name',
  'kind',
  'mowing',
  'material',
  'note',
  'surveyMethod',
  'vertexSigmaM',
  'cutsSameKind',
];
const FEATURE_KNOWN = ['type', 'id', 'geometry', 'properties', 'bbox'];

const zone = fc
  .record({
    id: fc.string({ minLength: 1, maxLength: 6 }),
    kind: fc.constantFrom(...ZONE_KINDS),
    west: degrees(-179, 178),
    south: degrees(-89, 88),
    wide: degrees(1e-6, 0.01),
    high: degrees(1e-6, 0.01),
    hole: fc.boolean(),
    two: fc.boolean(),
    fields: fc.record({
      name,
      note: name,
      mowing: fc.constantFrom(...MOWING_CLASSES),
      material: fc.constantFrom(...MATERIALS),
      cutsSameKind: fc.boolean(),
      survey: fc.record({
        method: fc.constantFrom('traced' as const, 'tape' as const),
        vertexSigmaM: fc.double({ min: 0, max: 5, noNaN: true }).map((v) => v + 0),
        scaleSigma: fc.double({ min: 0, max: 0.1, noNaN: true }).map((v) => v + 0),
        source: fc.string(),
      }),
      isPlaced: fc.boolean(),
      isLocked: fc.boolean(),
      slope: fc.option(fc.double({ min: 0, max: 2, noNaN: true }).map((v) => v + 0)),
    }),
    feature: members(FEATURE_KNOWN),
    properties: members(ZONE_KNOWN),
  })
  .map(({ id, kind, west, south, wide, high, hole, two, fields, feature, properties }) => {
    const at = (share: number, from: number, span: number) => Number((from + share * span).toFixed(11));
    const ring = (a: number, b: number) =>
      rectangle(at(a, west, wide), at(a, south, high), at(b, west, wide), at(b, south, high));
    const first = hole ? [ring(0, 1), ring(0.3, 0.6).toReversed()] : [ring(0, 1)];
    const parts = two ? [first, [ring(1.5, 2)]] : [first];
    const extra = { ...(feature && { feature }), ...(properties && { properties }) };
    return newZone(id, kind, parts, { ...fields, extra });
  });

const yards = fc
  .record({
    name,
    zones: fc.uniqueArray(zone, { maxLength: 5, selector: (one) => one.id }),
    collection: members(['type', 'features', 'bbox', 'measuredYard']),
    member: members(['schemaVersion', 'id', 'name', 'settings', 'products', 'visits']),
  })
  .map(({ name: own, zones, collection, member }): Yard => {
    const base = testYard();
    const taken = zones.map((one) => one.id);
    return {
      ...base,
      name: own,
      zones,
      marks: base.marks.filter((mark) => !taken.includes(mark.id)),
      extra: {
        ...(collection && { collection }),
        ...(member && { member }),
        features: base.extra.features,
      },
    };
  });

/** One random command on a yard, by a number that picks what it works on. */
const commands = fc.array(fc.record({ verb: fc.nat(11), pick: fc.nat(), text: name }), { maxLength: 25 });
function apply(yard: Yard, command: { verb: number; pick: number; text: string }, step: number): Yard {
  const { verb, pick, text } = command;
  const one = yard.zones[pick % Math.max(1, yard.zones.length)];
  const dose = visit.doses[0];
  switch (verb) {
    case 0:
      return edits.addZone(yard, newZone(`new-${step}`, 'bed', [[rectangle(1, 1, 2, 2)]], { name: text }));
    case 1:
      return one ? edits.replaceZone(yard, { ...one, name: text }) : yard;
    case 2:
      return one ? edits.removeZones(yard, [one.id]) : yard;
    case 3:
      return one ? edits.reorderZone(yard, one.id, pick % 7) : yard;
    case 4: {
      const position: Position = [pick % 180, pick % 90];
      return edits.addMark(yard, { id: `mark-${step}`, name: text, kind: 'gate', position, extra: {} });
    }
    case 5:
      return edits.removeMark(yard, yard.marks[0]?.id ?? '');
    case 6:
      return edits.addProduct(yard, { ...granules, id: `product-${step}`, name: text });
    case 7:
      return edits.removeProduct(yard, yard.products[pick % Math.max(1, yard.products.length)]?.id ?? '');
    case 8:
      return edits.addVisit(yard, {
        ...visit,
        id: `visit-${step}`,
        zones: { classes: [], include: one ? [one.id] : [], exclude: [] },
        doses: dose ? [{ ...dose, zones: { classes: [], include: [], exclude: one ? [one.id] : [] } }] : [],
      });
    case 9:
      return edits.removeVisit(yard, yard.visits[0]?.id ?? '');
    case 10:
      return edits.changeSettings(yard, { units: pick % 2 ? 'us' : 'metric' });
    default:
      return edits.rename(yard, text);
  }
}

describe('the document', () => {
  it('undo after any commands gives the earlier documents, redo the later ones; frozen input stays', () => {
    fc.assert(
      fc.property(yards, commands, (first, list) => {
        const history = createHistory(deepFreeze(first));
        const seen: Yard[] = [first];
        list.forEach((command, step) => {
          const next = deepFreeze(apply(history.present, command, step));
          if (next === history.present) return;
          history.push('Step', next, undefined, step);
          seen.push(next);
        });
        for (const earlier of seen.slice(0, -1).toReversed()) {
          expect(history.undo()).toBe(true);
          expect(history.present).toBe(earlier);
        }
        expect(history.undo()).toBe(false);
        for (const later of seen.slice(1)) {
          expect(history.redo()).toBe(true);
          expect(history.present).toBe(later);
        }
      }),
    );
  });

  it('save then load is identity, members unknown to the program included; frozen input stays', () => {
    fc.assert(
      fc.property(yards, commands, (first, list) => {
        const yard = deepFreeze(list.reduce(apply, deepFreeze(first)));
        const file = deepFreeze(JSON.parse(JSON.stringify(yardToGeoJson(yard))));
        expect(yardFromGeoJson(file)).toEqual({ yard, issues: [] });
      }),
    );
  });

  it('any JSON value is read or refused without a throw', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), fc.array(fc.jsonValue()), (value, member, features) => {
        yardFromGeoJson(value);
        const file = { type: 'FeatureCollection', measuredYard: member, features };
        const { yard, issues } = yardFromGeoJson(file);
        if (yard === null) expect(issues.length).toBeGreaterThan(0);
      }),
    );
  });
});
