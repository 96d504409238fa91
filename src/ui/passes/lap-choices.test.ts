import { expect, it } from 'vitest';
import { lapChoices } from './lap-choices';

it('offers none to three laps, and the number in hand where a file brought another', () => {
  const values = (laps: number | null) => lapChoices(laps).map(([value]) => value);
  for (const laps of [null, 0, 1, 2, 3]) expect(values(laps)).toEqual(['', '0', '1', '2', '3']);
  expect(values(4)).toEqual(['', '0', '1', '2', '3', '4']);
});
