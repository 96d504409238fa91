import { emptyYard, newZone } from '../yard/defaults';
import type { Position, Ring, Yard, Zone, ZoneKind } from '../yard/types';
import { createPlane } from './plane';

/** Small invented yards for the tests of this folder, in metres east and north of one place. */
export const testPlane = createPlane([-83, 40]);

/** Closed ring in degrees through points in metres. */
export function ringAt(...corners: readonly (readonly [number, number])[]): Ring {
  const ring = corners.map((corner): Position => testPlane.toLonLat(corner));
  return ring[0] ? [...ring, ring[0]] : [];
}

/** Rectangle by its south-west corner and sides, m. */
export function boxAt(x: number, y: number, width: number, height: number): Ring {
  return ringAt([x, y], [x + width, y], [x + width, y + height], [x, y + height]);
}

/** A zone named by its id, corners good to 1 m unless said otherwise. */
export function zoneAt(id: string, kind: ZoneKind, parts: Zone['parts'], vertexSigmaM = 1): Zone {
  return newZone(id, kind, parts, {
    name: id,
    survey: { method: 'walked', vertexSigmaM, scaleSigma: 0, source: '' },
  });
}

export function yardOf(...zones: readonly Zone[]): Yard {
  return { ...emptyYard('y', 'Yard'), zones };
}
