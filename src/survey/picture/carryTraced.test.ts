import { describe, expect, it } from 'vitest';
import { findAllCurves } from '../../measure/curves';
import { flattenCurve } from '../../measure/flattenCurve';
import { measureYard } from '../../measure/measureYard';
import { boxAt, testPlane, yardOf, zoneAt } from '../../measure/testYards';
import type { Curve, Zone } from '../../yard/types';
import { carryTraced, cornerMoveM, isPictureMoved, isTracedOn } from './carryTraced';
import type { OwnPicture } from './ownPicture';

/** 0.1 m a pixel, north up, upper left corner 20 m north of the plane's origin. */
const BEFORE: OwnPicture = {
  kind: 'own-picture',
  id: 'p',
  name: 'Scan',
  attribution: '',
  pictureId: 'p1',
  widthPx: 400,
  heightPx: 200,
  origin: testPlane.origin,
  toGround: [0.1, 0, 0, 0, -0.1, 20],
  opacity: 1,
  sigmaM: 0.03,
  scaleSigma: 0.5,
  fit: null,
};
/** Half the size, a quarter turn to the right about the upper left corner, which goes to the origin. */
const NOW: OwnPicture = { ...BEFORE, toGround: [0, -0.05, 0, -0.05, 0, 0], sigmaM: 0.06, scaleSigma: 0.01 };

const lawn = (over: Partial<Zone> = {}): Zone => ({
  ...zoneAt('lawn', 'turf', [[boxAt(2, 8, 20, 10)]]),
  survey: { method: 'traced', vertexSigmaM: 0.05, scaleSigma: 0.5, source: 'Scan' },
  ...over,
});
const areaOf = (zone: Zone) => measureYard(yardOf(zone)).zones.get(zone.id)?.netM2 ?? Number.NaN;

describe('carryTraced', () => {
  it('puts every corner where its pixel went', () => {
    const carried = carryTraced(lawn(), BEFORE, NOW);
    // pixel of [2, 8] is (20, 120); -0.05·120 = -6 east, -0.05·20 = -1 north
    const [x, y] = testPlane.toPlane(carried?.parts[0]?.[0]?.[0] ?? [0, 0]);
    expect(x).toBeCloseTo(-6, 3);
    expect(y).toBeCloseTo(-1, 3);
    // a quarter of the area, which was 200 m²
    expect(areaOf(carried ?? lawn())).toBeCloseTo(50, 2);
  });

  it('takes the errors of the new fit', () => {
    const survey = carryTraced(lawn(), BEFORE, NOW)?.survey;
    // without the old fit 0.04 m, half of it 0.02 m, with the new fit √(0.02² + 0.06²)
    expect(survey?.vertexSigmaM).toBeCloseTo(0.063, 6);
    expect(survey?.scaleSigma).toBe(0.01);
    const typed = lawn({ survey: { ...lawn().survey, scaleSigma: 0.002 } });
    expect(carryTraced(typed, BEFORE, NOW)?.survey.scaleSigma).toBe(0.002);
  });

  it('keeps curves over a change of size, bigger and smaller', () => {
    const at = (x: number, y: number) => testPlane.toLonLat([x, y]);
    const curve: Curve = { kind: 'arc', points: [at(22, 8), at(27, 13), at(22, 18)] };
    const ring = [at(2, 8), ...flattenCurve(curve), at(2, 18), at(2, 8)];
    const round = lawn({ parts: [[ring]], curves: [curve] });
    const half = Math.PI * 5 ** 2 * 0.5;
    for (const [now, share] of [
      [NOW, 0.25],
      [{ ...BEFORE, toGround: [0.5, 0, 0, 0, -0.5, 20] } as OwnPicture, 25],
    ] as const) {
      const carried = carryTraced(round, BEFORE, now) ?? round;
      const list = findAllCurves(carried);
      expect(list.found).toHaveLength(1);
      // chords lie inside the arc
      expect(areaOf(carried) / ((200 + half) * share)).toBeGreaterThan(0.995);
      expect(areaOf(carried) / ((200 + half) * share)).toBeLessThan(1.0005);
    }
  });

  it('leaves locked zones, and knows its own', () => {
    expect(carryTraced(lawn({ isLocked: true }), BEFORE, NOW)).toBeNull();
    expect(isTracedOn(lawn(), BEFORE)).toBe(true);
    expect(isTracedOn(lawn({ isPlaced: false }), BEFORE)).toBe(false);
    expect(isTracedOn(lawn(), { ...BEFORE, name: 'Other' })).toBe(false);
    const unnamed = lawn({ survey: { ...lawn().survey, source: '' } });
    expect(isTracedOn(unnamed, { ...BEFORE, name: '' })).toBe(false);
  });
});

describe('isPictureMoved', () => {
  it('tells a move from another strength or another error', () => {
    expect(isPictureMoved(BEFORE, { ...BEFORE, opacity: 0.4, sigmaM: 1 })).toBe(false);
    expect(isPictureMoved(BEFORE, { ...BEFORE, toGround: [...BEFORE.toGround] })).toBe(false);
    expect(isPictureMoved(BEFORE, NOW)).toBe(true);
    expect(cornerMoveM(BEFORE, { ...BEFORE, toGround: [0.1, 0, 3, 0, -0.1, 24] })).toBeCloseTo(5, 3);
  });
});
