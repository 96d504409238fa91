import { describe, expect, it } from 'vitest';
import { readCoordinates } from './read-coordinates';

function place(text: string): readonly [number, number] {
  const read = readCoordinates(text);
  if (!read.ok) throw new Error(`${text}: ${read.message}`);
  return read.position;
}

describe('readCoordinates', () => {
  // One place in three notations, printed side by side in the encyclopedia article
  // "Geographic coordinate conversion" (from memory): 40.446 N 79.982 W.
  it.each([
    '40.446, -79.982',
    '40.446 -79.982',
    '40.446° N 79.982° W',
    'N 40.446 W 79.982',
    '40° 26.767′ N 79° 58.933′ W',
    '40° 26′ 46″ N 79° 58′ 56″ W',
    '40°26\'46"N 79°58\'56"W',
    '40°26\'46"N, 79°58\'56"W',
    '79°58\'56"W 40°26\'46"N',
    '40 26 46 N 79 58 56 W',
    '40 26 46, -79 58 56',
    '40:26:46N 79:58:56W',
  ])('reads %s', (text) => {
    const [lon, lat] = place(text);
    expect(lat).toBeCloseTo(40.446, 3);
    expect(lon).toBeCloseTo(-79.982, 3);
  });
  it('keeps every decimal', () => {
    expect(place('-33.85678901234, 151.21512345678')).toEqual([151.21512345678, -33.85678901234]);
  });
  it('keeps the sign of zero degrees', () => {
    expect(place('-0 30 0, 10')[1]).toBe(-0.5);
  });
  it.each(['', 'here', '40', '91, 10', '10, 181', '40 61 0, 20', '40 N 20 N', '1, 2, 3', 'N 40 S, 20'])(
    'refuses “%s” with words',
    (text) => {
      const read = readCoordinates(text);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.message).toMatch(/atitude|ongitude/);
    },
  );
});
