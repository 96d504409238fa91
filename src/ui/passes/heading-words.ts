/** Words of the eight winds, from north round by east. */
const WINDS = ['north', 'northeast', 'east', 'southeast', 'south', 'southwest', 'west', 'northwest'] as const;

/** "87°": where passes lie, clockwise from north; they are walked both ways. @param degrees 0 to <180 */
export function headingWords(degrees: number): string {
  const whole = Math.round(degrees);
  return `${whole === 180 ? 0 : whole}°`;
}

/** "northwest": the wind of a direction. @param degrees clockwise from north */
export function windWords(degrees: number): string {
  return WINDS[((Math.round(degrees / 45) % 8) + 8) % 8] ?? 'north';
}

/** "north and south", "northeast and southwest": both ways along a heading. */
export function bothWaysWords(degrees: number): string {
  return `${windWords(degrees)} and ${windWords(degrees + 180)}`;
}
