import { describe, expect, it } from 'vitest';
import { applyMistake } from './applyMistake';
import { findMistakes } from './mistakes';
import { readCalls } from './readCalls';

const options = { foot: 'international', bareUnit: 'ft' } as const;
/** The text with the likely mistake of a kind put right, in one call when several may be wrong. */
function mend(text: string, kind: string, index?: number): string | null {
  const found = findMistakes(readCalls(text, options).calls).find(
    (each) => each.kind === kind && (index ?? each.index) === each.index,
  );
  if (!found) throw new Error(`no ${kind} is found`);
  return applyMistake(text, found, options);
}

describe('applyMistake', () => {
  it('writes the wrong length anew and leaves the other lines', () => {
    expect(mend('N 80 ft\nE 120 ft\nS 80 ft\nW 102 ft', 'length', 3)).toBe(
      'N 80 ft\nE 120 ft\nS 80 ft\ndue west 120.00 ft',
    );
  });

  it('turns a call round', () => {
    const text = 'N 12 E 141.20\nS 81 30 W 205.00\nS 5 W 168.40\nS 89 49 38 W 217.43';
    expect(mend(text, 'reversed')?.split('\n')[1]).toBe(`N 81°30'00" E 205.00 ft`);
  });

  it('adds a call left out at the end', () => {
    expect(mend('N 80\nE 120\nS 30 E 60', 'missing')?.split('\n')).toHaveLength(4);
  });

  it('turns a curve the other way', () => {
    const text = `due north 100'\ncurve left R=20 delta 90°\nE 40 ft\nS 120\nW 60`;
    expect(mend(text, 'turn')).toBe(text.replace('left', 'right'));
  });

  it('mends running text in place', () => {
    const text =
      'Beginning at the iron pin; thence North 80 feet; thence East 120 feet;\nthence South 80 feet; thence West 102 feet to the point of beginning.';
    const mended = mend(text, 'length', 3);
    expect(mended).toContain('thence due west 120.00 ft');
    expect(mended).toContain('thence South 80 feet');
  });
});
