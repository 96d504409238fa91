import { formatLength } from '../../units/format';
import type { Issue, UnitSystem } from '../../yard/types';

/** An issue about one dimension of a shape. @param key of its field */
export function dimensionIssue(code: string, key: string, message: string): Issue {
  return { code, severity: 'error', message, place: { path: key } };
}

/** Why three lengths make no triangle: the longest is not shorter than the other two together. Null when they do. */
export function triangleIssue(
  sides: readonly (readonly [key: string, lengthM: number])[],
  system: UnitSystem,
): Issue | null {
  const [longest, ...others] = [...sides].sort((p, q) => q[1] - p[1]);
  if (!longest) return null;
  const sum = others.reduce((total, side) => total + side[1], 0);
  const overM = longest[1] - sum;
  if (overM < 0) return null;
  const names = others
    .map(([key]) => key)
    .sort()
    .join(' and ');
  const how =
    overM > 0
      ? `is ${formatLength(overM, system)} longer than ${names} together (${formatLength(sum, system)})`
      : `is as long as ${names} together, so the three lie in one line`;
  const message = `${longest[0]} (${formatLength(longest[1], system)}) ${how}: ${sides.map(([key]) => key).join(', ')} make no triangle. Tape them again.`;
  return dimensionIssue('triangle-impossible', longest[0], message);
}

/** Why one length must be shorter than another. Null when it is. */
export function shorterIssue(
  [key, lengthM]: readonly [string, number],
  [thanWords, thanM]: readonly [string, number],
  why: string,
  system: UnitSystem,
): Issue | null {
  if (lengthM < thanM) return null;
  const by = lengthM > thanM ? `, by ${formatLength(lengthM - thanM, system)} too long` : '';
  const message = `${key} (${formatLength(lengthM, system)}) must be shorter than ${thanWords} (${formatLength(thanM, system)})${by}: ${why}`;
  return dimensionIssue('dimension-too-long', key, message);
}
