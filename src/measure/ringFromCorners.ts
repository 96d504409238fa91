import type { Position, Ring } from '../yard/types';
import { roundPosition } from './corners';
import { createPlane } from './plane';
import type { XY } from './types';

/** Closes corners to a ring; a closing corner already there stays one. Empty for none. */
export function ringFromCorners(corners: readonly Position[]): Ring {
  const [first, last] = [corners[0], corners.at(-1)];
  if (!first || !last) return [];
  const isClosed = corners.length > 1 && first[0] === last[0] && first[1] === last[1];
  return isClosed ? corners : [...corners, first];
}

/** Ring in degrees through corners in metres east and north of an origin; closed. */
export function ringFromOffsets(origin: Position, corners: readonly XY[]): Ring {
  const plane = createPlane(origin);
  return ringFromCorners(corners.map((corner) => roundPosition(plane.toLonLat(corner))));
}
