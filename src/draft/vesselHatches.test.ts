import { describe, expect, it } from 'vitest';
import { VESSEL_HATCH_IDS, VESSEL_HATCHES, VESSEL_INKS, vesselHatchOf } from './vesselHatches';

/** WCAG 2.2 relative luminance and contrast ratio, section "contrast ratio". */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

describe('hatches of vessels', () => {
  it('tell neighbours apart without colour, however many vessels there are', () => {
    const drawingOf = (index: number) => {
      const { lines, dots, blots } = VESSEL_HATCHES[vesselHatchOf(index)];
      return JSON.stringify([lines, dots, blots]);
    };
    for (let i = 0; i < 12; i++) {
      expect(drawingOf(i)).not.toBe(drawingOf(i + 1));
      expect(drawingOf(i)).not.toBe(drawingOf(i + 2));
    }
  });
  it('have no line that runs through a tile, as passes do', () => {
    for (const id of VESSEL_HATCH_IDS) {
      const { width, height, lines } = VESSEL_HATCHES[id];
      for (const d of lines) {
        const numbers = (d.match(/-?[\d.]+/g) ?? []).map(Number);
        const xs = numbers.filter((_, i) => i % 2 === 0);
        const ys = numbers.filter((_, i) => i % 2 === 1);
        expect(Math.max(...xs) - Math.min(...xs)).toBeLessThan(width / 2);
        expect(Math.max(...ys) - Math.min(...ys)).toBeLessThan(height / 2);
      }
    }
  });
  it('have ink of 3:1 or more on either paper (WCAG 2.2, 1.4.11)', () => {
    for (const id of VESSEL_HATCH_IDS) {
      expect(contrast(VESSEL_INKS[id].light.ink, '#fbf9f3'), id).toBeGreaterThan(3);
      expect(contrast(VESSEL_INKS[id].dark.ink, '#1a2833'), id).toBeGreaterThan(3);
    }
  });
});
