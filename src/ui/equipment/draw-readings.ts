import type { Readings } from '../../pace/calibrate/readings';

/** Ways of finding the share of product that a bottle draws, by the readings they need. */
export const DRAWS = {
  none: { words: 'Not now', keys: [] },
  ratio: { words: 'By the ratio on bottle or dial', keys: ['waterParts'] },
  neat: { words: 'Undiluted: all of it is product', keys: ['waterParts'] },
  emptied: { words: 'By how long a full bottle lasts', keys: ['emptiedL', 'emptiedS'] },
  gone: { words: 'By what is gone after a time', keys: ['goneL', 'goneS'] },
} as const;
export type Draw = keyof typeof DRAWS;
const DRAW_KEYS = Object.values(DRAWS).flatMap((each): readonly string[] => each.keys);

/** The way of the draw that has been read. */
export function drawRead(readings: Readings): Draw {
  if (readings.waterParts === 0) return 'neat';
  const ways = Object.keys(DRAWS) as Draw[];
  return ways.find((way) => DRAWS[way].keys.some((key) => readings[key] !== undefined)) ?? 'none';
}

/**
 * The readings with another way of the draw: what was read for the others goes, and what is known before comes in.
 * @param holdsL what a full bottle of the equipment holds; null: not told
 */
export function withDraw(readings: Readings, draw: Draw, holdsL: number | null): Readings {
  const keep: readonly string[] = draw === drawRead(readings) ? DRAWS[draw].keys : [];
  const kept = Object.entries(readings).filter(([key]) => !DRAW_KEYS.includes(key) || keep.includes(key));
  const known: Readings =
    draw === 'neat' ? { waterParts: 0 } : draw === 'emptied' && holdsL !== null ? { emptiedL: holdsL } : {};
  return { ...known, ...Object.fromEntries(kept) };
}
