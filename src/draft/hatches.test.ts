import { describe, expect, it } from 'vitest';
import { MATERIALS, MOWING_CLASSES, ZONE_KINDS } from '../yard/types';
import {
  EDGE_PATTERN_IDS,
  EDGE_PATTERNS,
  edgePatternOf,
  HATCH_IDS,
  HATCHES,
  hatchIdOfZone,
  ZONE_INKS,
} from './hatches';

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

describe('hatches', () => {
  it('tells apart, without colour, all that a zone can be', () => {
    const ids = ZONE_KINDS.flatMap((kind) => {
      if (kind === 'turf')
        return MOWING_CLASSES.map((mowing) => hatchIdOfZone({ kind, mowing, material: null }));
      if (kind === 'hardscape')
        return MATERIALS.map((material) => hatchIdOfZone({ kind, mowing: null, material }));
      return [hatchIdOfZone({ kind, mowing: null, material: null })];
    });
    expect(new Set(ids).size).toBe(ids.length);
    const drawings = HATCH_IDS.map((id) =>
      JSON.stringify([HATCHES[id].lines, HATCHES[id].dots, HATCHES[id].blots]),
    );
    expect(new Set(drawings).size).toBe(drawings.length);
  });
  it('keeps dots whole inside the tile, so that none is cut at the seam', () => {
    for (const id of HATCH_IDS) {
      const { width, height, dots } = HATCHES[id];
      for (const [x, y, r] of dots) {
        expect(x - r >= 0 && x + r <= width && y - r >= 0 && y + r <= height, `${id} ${x},${y}`).toBe(true);
      }
    }
  });
  it('has ink of 3:1 or more on either paper (WCAG 2.2, 1.4.11)', () => {
    for (const kind of ZONE_KINDS) {
      expect(contrast(ZONE_INKS[kind].light.ink, '#f4f1e8'), kind).toBeGreaterThan(3);
      expect(contrast(ZONE_INKS[kind].dark.ink, '#14202a'), kind).toBeGreaterThan(3);
    }
  });
});

describe('edge patterns', () => {
  it('lets a drain nearby outrank the way of cleaning', () => {
    expect(edgePatternOf({ near: { sourceId: 'd' }, treatment: 'sweep-then-rinse' })).toBe('near-drain');
    expect(edgePatternOf({ near: null, treatment: 'sweep-then-rinse' })).toBe('sweep');
    expect(edgePatternOf({ near: null, treatment: 'rinse-toward-turf' })).toBe('rinse');
  });
  it('differs by dash', () => {
    expect(new Set(EDGE_PATTERN_IDS.map((id) => EDGE_PATTERNS[id].dash.join())).size).toBe(
      EDGE_PATTERN_IDS.length,
    );
  });
});
