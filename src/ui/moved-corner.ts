import type { Position, Rings } from '../yard/types';

/**
 * The one corner in which two versions of a zone differ, whatever the winding or first corner.
 * @returns where it was and where it is; null when none or more than one corner moved, or one came or went.
 */
export function movedCorner(
  before: readonly Rings[],
  after: readonly Rings[],
): { readonly from: Position; readonly to: Position } | null {
  const old = cornersOf(before);
  const now = cornersOf(after);
  const gone = [...old].filter(([key]) => !now.has(key));
  const come = [...now].filter(([key]) => !old.has(key));
  const [from, to] = [gone[0]?.[1], come[0]?.[1]];
  return gone.length === 1 && come.length === 1 && from && to ? { from, to } : null;
}

function cornersOf(parts: readonly Rings[]): Map<string, Position> {
  return new Map(parts.flat(2).map((position) => [position.join(','), position]));
}
