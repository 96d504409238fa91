/** The eight winds, from north round by east. */
const WINDS = ['north', 'northeast', 'east', 'southeast', 'south', 'southwest', 'west', 'northwest'] as const;

/** "northwest": the wind of a direction. @param degrees clockwise from north */
export function windWords(degrees: number): string {
  return WINDS[((Math.round(degrees / 45) % 8) + 8) % 8] ?? 'north';
}
