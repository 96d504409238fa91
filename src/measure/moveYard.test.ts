import { describe, expect, it } from 'vitest';
import { emptyYard, newZone } from '../yard/defaults';
import type { BaseLayer, Curve, Position, Ring, Yard } from '../yard/types';
import { findAllCurves } from './curves';
import { countSides, flattenCurve } from './flattenCurve';
import { areaOfRingsM2 } from './geodesic';
import { moveYard } from './moveYard';
import { createPlane } from './plane';

const HERE: Position = [0, 0];
const THERE: Position = [-96.5432, 41.2345];

const local = createPlane(HERE);
const at = (x: number, y: number): Position => local.toLonLat([x, y]);
const rectangle: Ring = [at(-20, -10), at(20, -10), at(20, 10), at(-20, 10), at(-20, -10)];

function yardOf(zones: Yard['zones'], layers: readonly BaseLayer[] = []): Yard {
  const yard = emptyYard('y', 'Drawing');
  return { ...yard, zones, settings: { ...yard.settings, isLocal: true, ownLayers: layers } };
}

describe('moveYard', () => {
  it('keeps the area of a 40 m by 20 m rectangle at 41° north, turned by 30°', () => {
    const moved = moveYard(yardOf([newZone('a', 'turf', [[rectangle]])]), HERE, THERE, 30);
    // 40 m × 20 m by plain arithmetic
    expect(areaOfRingsM2(moved.zones[0]?.parts[0] ?? [])).toBeCloseTo(800, 1);
  });

  it('turns clockwise: what lay north lies east after 90°', () => {
    const mark = { id: 'm', name: '', kind: 'gate', position: at(0, 100), extra: {} } as const;
    const moved = moveYard({ ...yardOf([]), marks: [mark] }, HERE, THERE, 90);
    const [x, y] = createPlane(THERE).toPlane(moved.marks[0]?.position ?? HERE);
    expect(x).toBeCloseTo(100, 3);
    expect(y).toBeCloseTo(0, 3);
  });

  it('moves a picture with its points, so that a pixel stays on its place', () => {
    const picture: BaseLayer = {
      kind: 'own-picture',
      id: 'p',
      name: 'Scan',
      attribution: '',
      pictureId: 'p1',
      widthPx: 400,
      heightPx: 200,
      origin: HERE,
      toGround: [0.1, 0, -20, 0, -0.1, 10],
      opacity: 1,
      sigmaM: 0.1,
      scaleSigma: 0.01,
      fit: {
        kind: 'similarity',
        points: [{ pixel: [0, 0], ground: at(-20, 10) }],
        distances: [],
        northDeg: null,
      },
    };
    const [moved] = moveYard(yardOf([], [picture]), HERE, THERE, 30).settings.ownLayers;
    if (moved?.kind !== 'own-picture') throw new Error('the picture is gone');
    const [, , c, , , f] = moved.toGround;
    const corner = createPlane(moved.origin).toLonLat([c, f]);
    const ground = moved.fit?.points[0]?.ground ?? HERE;
    expect(Math.hypot(...createPlane(ground).toPlane(corner))).toBeLessThan(0.002);
  });

  it('keeps curves editable and leaves unplaced zones alone', () => {
    const arc: Curve = { kind: 'arc', points: [at(-40, -30), at(0, 50), at(40, -30)] };
    const ring: Ring = [...flattenCurve(arc), at(-40, -30)];
    const zones = [
      newZone('a', 'turf', [[ring]], { curves: [arc] }),
      newZone('b', 'turf', [[rectangle]], { isPlaced: false }),
    ];
    const moved = moveYard(yardOf(zones), HERE, THERE, 77);
    const [curved, unplaced] = moved.zones;
    if (!curved) throw new Error('no zone');
    expect(findAllCurves(curved).stale).toEqual([]);
    expect(unplaced).toBe(zones[1]);
  });

  it('there and back is the same yard to a tenth of a millimetre', () => {
    const yard = yardOf([newZone('a', 'turf', [[rectangle]])]);
    const back = moveYard(moveYard(yard, HERE, THERE, 30), THERE, HERE, -30);
    const plane = createPlane(HERE);
    back.zones[0]?.parts[0]?.[0]?.forEach((p, i) => {
      const [x0, y0] = plane.toPlane(rectangle[i] ?? HERE);
      const [x1, y1] = plane.toPlane(p);
      expect(Math.hypot(x1 - x0, y1 - y0)).toBeLessThan(1e-4);
    });
  });

  it('lays a curve over the start of its ring right, also where another gets more sides', () => {
    const east: Curve = { kind: 'arc', points: [at(20, -10), at(26, 0), at(20, 10)] };
    const west: Curve = { kind: 'arc', points: [at(-20, 10), at(-26, 0), at(-20, -10)] };
    const sides = (countSides(east)[0] ?? 0) - 1;
    const open = [...flattenCurve(east, [sides]), ...flattenCurve(west)];
    // the ring begins in the middle of the western arc
    const from = open.length - 4;
    const ring: Ring = [...open.slice(from), ...open.slice(0, from), open[from] ?? HERE];
    const zone = newZone('a', 'turf', [[ring]], { curves: [east, west] });
    expect(findAllCurves(zone).found).toHaveLength(2);
    const moved = moveYard(yardOf([zone]), HERE, THERE, 30).zones[0];
    expect(moved && findAllCurves(moved).stale).toEqual([]);
    // two circular segments of chord 20 m and rise 6 m beside 40 m by 20 m: r = c²/8h + h/2, t = 4 atan(2h/c)
    const [r, t] = [400 / 48 + 3, 4 * Math.atan(12 / 20)];
    expect(areaOfRingsM2(moved?.parts[0] ?? [])).toBeCloseTo(800 + r * r * (t - Math.sin(t)), 1);
  });
});
