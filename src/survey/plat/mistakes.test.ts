import { describe, expect, it } from 'vitest';
import { findMistakes, mistakeWords } from './mistakes';
import { readCalls } from './readCalls';

const OPTIONS = { foot: 'international', bareUnit: 'ft' } as const;
const sayFt = (m: number) => `${(m / 0.3048).toFixed(2)} ft`;

function words(text: string): string[] {
  const { calls } = readCalls(text, OPTIONS);
  return findMistakes(calls).map((mistake) => mistakeWords(mistake, mistake.index + 1, sayFt));
}

// a closed lot with no two calls alike; each mistake is made in it by hand
const LOT = ['N 12 E 141.20', 'N 81 30 E 205.00', 'S 5 W 168.40', 'S 89 49 38 W 217.43'];
const lotWith = (index: number, call: string) => LOT.with(index, call).join('\n');

describe('findMistakes', () => {
  it('says nothing of calls that close', () => {
    expect(words(LOT.join('\n'))).toEqual([]);
  });

  it.each([
    [
      lotWith(1, 'S 81 30 W 205.00'),
      /^Call 2 the other way round \(N 81°30′00″ E\) would close it to 0\.0\d ft\.$/,
    ],
    [lotWith(0, 'N 12 W 141.20'), /^Call 1 with east and west exchanged \(N 12°00′00″ E\)/],
    [lotWith(1, 'S 81 30 E 205.00'), /^Call 2 with north and south exchanged/],
    [lotWith(2, 'S 5 W 186.40'), /^Call 3 with a length of 168\.\d\d ft would close it/],
    [lotWith(2, 'S 15 W 168.40'), /^Call 3 in the direction (S 5°0\d′|S 4°5\d′)\d\d″ W would close it/],
    [
      LOT.slice(0, 3).join('\n'),
      /^No single call explains it\. A call may be missing: S 89°49′38″ W 217\.\d\d ft/,
    ],
  ])('%j', (text, expected) => {
    expect(words(text)[0]).toMatch(expected);
  });

  it('finds a curve that turns the other way', () => {
    const right = 'N 100\ncurve right R=20 delta 90°\nE 40\nS 120\nW 60';
    expect(words(right)).toEqual([]);
    expect(words(right.replace('right', 'left'))[0]).toMatch(
      /^Call 2 turning right would close it to 0\.00 ft/,
    );
  });
});
