import { bufferOf, planeAreaOf } from '../../measure/clip';
import type { PlaneRings } from '../../measure/types';
import { lengthOfLine } from './frame';
import { isLap } from './laps';
import { makeWork, type Work } from './work';

/** A ring this much narrower than the spacing on the mean is walked in one loop. */
const NARROW_SHARE = 0.95;

/**
 * One loop along the middle of ground that goes round a hole and is narrower than a swath: its outer outline moved in by half
 * its mean width (area over half the length of its outlines).
 * @returns nothing for other ground, and where the loop would be too short for a lap
 */
export function middleLoop(part: PlaneRings, spacingM: number, swathM: number): Work[] {
  const [outer, ...holes] = part;
  if (!outer || holes.length !== 1) return [];
  const areaM2 = planeAreaOf([part]);
  const widthM = (2 * areaM2) / part.reduce((sum, ring) => sum + lengthOfLine(ring), 0);
  if (widthM > NARROW_SHARE * spacingM) return [];
  // no lap where the ground is wide on one side and narrow on the other
  const isWide = bufferOf({ parts: [part] }, -spacingM / 2).length > 0;
  const lines = isWide
    ? []
    : bufferOf({ parts: [[outer]] }, -widthM / 2).flatMap((rings) => rings.slice(0, 1));
  if (!lines.every((line) => isLap(line, swathM))) return [];
  const lengthM = lines.reduce((sum, line) => sum + lengthOfLine(line), 0);
  return lines.map((line) => {
    const atM = lengthOfLine(line);
    return makeWork('lap', line, [{ atM, areaM2: (areaM2 * atM) / lengthM }]);
  });
}
