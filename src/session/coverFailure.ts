import type { CoverInput } from '../cover/passTypes';

/** Said after “The passes could not be laid: ”, where what works them out cannot be had at all. */
export const NOT_STARTED =
  'what works them out did not start. Load the page again; nothing of the yard is lost.';

/** So many zones are named. */
const MOST_NAMED = 3;

/**
 * What a person is told, after “The passes could not be laid: ”, when working them out broke down.
 * @param doseIndex the dose that it broke down at
 */
export function explainFailure({ doses }: CoverInput, doseIndex: number): string {
  const names = (doses[doseIndex]?.zones ?? []).map(({ name }) => `“${name}”`);
  const more = names.length > MOST_NAMED ? ' and more' : '';
  const where = names.length > 0 ? ` of ${names.slice(0, MOST_NAMED).join(', ')}${more}` : '';
  return `working out the walk${where} broke down. Nothing of the yard is lost. Change the outline, the heading or the laps there, or undo the last change: the passes are then tried again.`;
}
