const LAPS: readonly (readonly [string, string])[] = [
  ['', 'As many as make the shortest walk'],
  ['0', 'None'],
  ['1', 'One'],
  ['2', 'Two'],
  ['3', 'Three'],
];

/** Values and words of the list of laps. One that a file brought and that is none of the usual has a line of its own. */
export function lapChoices(headerLaps: number | null): readonly (readonly [string, string])[] {
  const value = headerLaps === null ? '' : String(headerLaps);
  return LAPS.some(([known]) => known === value) ? LAPS : [...LAPS, [value, value]];
}
