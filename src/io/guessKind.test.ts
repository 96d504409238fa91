import { describe, expect, it } from 'vitest';
import { guessKind } from './guessKind';

describe('the kind by plain words', () => {
  it.each([
    ['Front lawn', 'turf'],
    ['House lawn', 'turf'],
    ['Pool house', 'structure'],
    ['Garden path', 'hardscape'],
    ['Lawn by the house', 'turf'],
    ['Putting green', 'turf'],
    ['Rose beds', 'bed'],
    ['Gravel driveway', 'hardscape'],
    ['Duck pond', 'water'],
    ['Lot 12', 'parcel'],
    ['Area 51', null],
    ['Grassland museum', null],
  ])('%s is %s', (name, kind) => {
    expect(guessKind(name, {}, '', false).kind).toBe(kind);
  });

  it('by properties and layers after the name, points apart from areas', () => {
    expect(guessKind('', { surface: 'grass' }, '', false).kind).toBe('turf');
    expect(guessKind('', { building: 'yes' }, '', false).kind).toBe('structure');
    expect(guessKind('A1', {}, 'Plan / Patios', false).kind).toBe('hardscape');
    expect(guessKind('Fence', {}, 'Side lots', false).kind).toBeNull();
    expect(guessKind('Open line', {}, 'yard.geojson', false).kind).toBeNull();
    expect(guessKind('Strip', { KIND: 'other ' }, 'files-yard', false).kind).toBe('other');
    expect(guessKind('Strip', {}, 'Front yard', false).kind).toBeNull();
    expect(guessKind('Front yard', {}, '', false).kind).toBe('turf');
    expect(guessKind('House', { kind: 'bed' }, '', false).kind).toBe('bed');
    expect(guessKind('Storm drain', {}, '', true).kind).toBe('storm-drain');
    expect(guessKind('Storm drain', {}, '', false).kind).toBeNull();
    expect(guessKind('Putting green', {}, '', false).mowing).toBe('low-cut');
    expect(guessKind('Brick patio', {}, '', false).material).toBe('pavers');
  });
});
