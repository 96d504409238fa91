import { describe, expect, it } from 'vitest';
import { testYard, visit } from '../../tests/fixtures/testYard';
import * as edits from './edits';
import type { Product, Zone } from './types';

const yard = testYard();
const lawn = yard.zones[0] as Zone;

describe('edits', () => {
  it('return the very same document when nothing changes', () => {
    expect(edits.replaceZone(yard, lawn)).toBe(yard);
    expect(edits.replaceZone(yard, { ...lawn, id: 'gone' })).toBe(yard);
    expect(edits.removeZones(yard, ['gone'])).toBe(yard);
    expect(edits.removeProduct(yard, 'gone')).toBe(yard);
    expect(edits.rename(yard, yard.name)).toBe(yard);
    expect(edits.changeSettings(yard, { units: yard.settings.units })).toBe(yard);
    expect(edits.reorderZone(yard, 'z-lawn', -3)).toBe(yard);
  });

  it('share what they do not touch', () => {
    const next = edits.replaceZone(yard, { ...lawn, name: 'Front' });
    expect(next.zones[1]).toBe(yard.zones[1]);
    expect(next.products).toBe(yard.products);
    expect(yard.zones[0]?.name).toBe('Lawn');
  });

  it('refuse a second zone of one id as a mistake of the program', () => {
    expect(() => edits.addZone(yard, lawn)).toThrow('z-lawn');
  });

  it('move a zone within the order', () => {
    expect(edits.reorderZone(yard, 'z-lawn', 2).zones.map((zone) => zone.id)).toEqual([
      'z-bed',
      'z-walk',
      'z-lawn',
      'z-strip',
    ]);
  });

  it('take a removed zone out of the visits, and a removed product’s doses with it', () => {
    const named = {
      ...visit,
      id: 'v-2',
      zones: { classes: [], include: ['z-lawn', 'z-bed'], exclude: ['z-lawn'] },
    };
    const more = edits.addVisit(yard, named);
    const less = edits.removeZones(more, ['z-lawn']);
    expect(less.visits[1]?.zones).toEqual({ classes: [], include: ['z-bed'], exclude: [] });
    expect(less.visits[0]).toBe(more.visits[0]);
    const bare = edits.removeProduct(yard, 'p-liquid');
    expect(bare.visits[0]?.doses).toEqual([]);
    expect(bare.products.map((product: Product) => product.id)).toEqual(['p-granules']);
  });

  it('leave the doses of a visit that is done, though their product goes', () => {
    const done = edits.replaceVisit(yard, { ...visit, doneOn: '2026-05-01' });
    const bare = edits.removeProduct(done, 'p-liquid');
    expect(bare.products.map((product: Product) => product.id)).toEqual(['p-granules']);
    expect(bare.visits).toBe(done.visits);
  });
});
