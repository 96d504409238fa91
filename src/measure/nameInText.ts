import type { Zone } from '../yard/types';

/** What a zone is called in a message: its name in quotes, or words for a zone without one. */
export function nameInText(zone: Zone, place: 'start' | 'within' = 'within'): string {
  const name = zone.name.trim();
  if (name !== '') return `“${name}”`;
  return place === 'start' ? 'A zone without a name' : 'the zone without a name';
}
