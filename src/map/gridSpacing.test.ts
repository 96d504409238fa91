import { describe, expect, it } from 'vitest';
import { gridSpacing } from './gridSpacing';

describe('gridSpacing', () => {
  it('keeps lines at least 14 px apart, on round figures, at every zoom', () => {
    for (let zoom = 8; zoom <= 22; zoom++) {
      const metresPerPx = (Math.cos((40 * Math.PI) / 180) * 156543.03392) / 2 ** zoom;
      for (const units of ['us', 'metric'] as const) {
        const { minorM, unitM } = gridSpacing(metresPerPx, units);
        expect(minorM / metresPerPx).toBeGreaterThanOrEqual(14);
        expect([1, 2, 5]).toContain(Number((minorM / unitM).toExponential(6).slice(0, 1)));
      }
    }
  });
  it('speaks feet to US and metres to metric', () => {
    expect(gridSpacing(0.1, 'us')).toMatchObject({ unitName: 'ft', unitM: 0.3048 });
    expect(gridSpacing(0.1, 'metric')).toMatchObject({ unitName: 'm', minorM: 2, majorEvery: 5 });
  });
});
