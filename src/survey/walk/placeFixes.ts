import { createPlane } from '../../measure/plane';
import type { LocalPlane } from '../../measure/types';
import type { Position } from '../../yard/types';
import type { PlaneFix } from './fixNoise';
import { sigmaOfAccuracyM } from './sigmaOfAccuracy';
import type { Fix } from './types';

/** Fixes in a plane of their own, with sigma and time. */
export interface PlacedFixes {
  readonly plane: LocalPlane;
  readonly fixes: readonly PlaneFix[];
  /** every fix has a time of its own; without, fixes are taken as a second apart. */
  readonly isTimed: boolean;
}

/**
 * @param fixes one or more, in order; each a sound place
 * @param assumedAccuracyM for fixes that tell none, metres
 */
export function placeFixes(fixes: readonly Fix[], assumedAccuracyM: number): PlacedFixes {
  const origin: Position = fixes[0]?.position ?? [0, 0];
  const plane = createPlane(origin);
  const startMs = fixes[0]?.timeMs ?? 0;
  const isTimed = fixes.every(({ timeMs }) => timeMs !== null);
  const placed = fixes.map(
    ({ position, accuracyM, timeMs }, index): PlaneFix => ({
      at: plane.toPlane(position),
      sigmaM: sigmaOfAccuracyM(accuracyM ?? assumedAccuracyM),
      timeS: isTimed && timeMs !== null ? (timeMs - startMs) / 1000 : index,
    }),
  );
  return { plane, fixes: placed, isTimed };
}

/** The same fixes with every sigma multiplied. */
export function scaleSigmas(fixes: readonly PlaneFix[], scale: number): PlaneFix[] {
  return fixes.map((fix) => ({ ...fix, sigmaM: fix.sigmaM * scale }));
}
