const POINTS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'] as const;
/** One of the eight points of the compass. */
export type CompassPoint = (typeof POINTS)[number];

const WORDS: Readonly<Record<CompassPoint, string>> = {
  N: 'north',
  NE: 'northeast',
  E: 'east',
  SE: 'southeast',
  S: 'south',
  SW: 'southwest',
  W: 'west',
  NW: 'northwest',
};

/** The eight points, clockwise from north, 45° apart. */
export const COMPASS_POINTS: readonly { readonly id: CompassPoint; readonly words: string }[] = POINTS.map(
  (id) => ({ id, words: `${id} (${WORDS[id]})` }),
);

/** Degrees clockwise from true north of a point; null: the empty choice; undefined: no such point. */
export function degreesOfPoint(point: string): number | null | undefined {
  if (point === '') return null;
  const index = (POINTS as readonly string[]).indexOf(point);
  return index < 0 ? undefined : 45 * index;
}

/** The point that a direction is exactly; null: none. @param deg clockwise from true north, 0 to <360 */
export function pointOf(deg: number | null): CompassPoint | null {
  return deg === null ? null : (POINTS[deg / 45] ?? null);
}

/** "northwest": the nearest of the eight winds. @param deg clockwise from true north, any turn */
export function windWords(deg: number): string {
  return WORDS[POINTS[((Math.round(deg / 45) % 8) + 8) % 8] ?? 'N'];
}

/** "falls toward SW", "falls toward 200°". @param deg clockwise from true north, 0 to <360 */
export function fallWords(deg: number): string {
  return `falls toward ${pointOf(deg) ?? `${Math.round(deg)}°`}`;
}
