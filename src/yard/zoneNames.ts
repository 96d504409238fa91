import type { Yard } from './types';

/** Most names in one sentence. */
const MOST_NAMES = 4;

/** What ground without a name is called in a sentence. */
const NO_NAME = 'unnamed zone';

/** What is said for ground that was treated once and is no zone any more. */
const GONE = 'ground that is gone';

/** Names of zones in a sentence, at most four: "Front, Back, Strip and 3 more". Zones of one name count each. */
export function zoneNames(yard: Pick<Yard, 'zones'>, zoneIds: readonly string[]): string {
  const ids = [...new Set(zoneIds)];
  const shown = ids.length <= MOST_NAMES ? ids : ids.slice(0, MOST_NAMES - 1);
  const names = shown
    .map((id) => {
      const zone = yard.zones.find((each) => each.id === id);
      return zone ? zone.name.trim() || NO_NAME : GONE;
    })
    .join(', ');
  return shown.length === ids.length ? names : `${names} and ${ids.length - shown.length} more`;
}
