import type { WalkTimeline } from './walkTimeline';

/**
 * Time on each zone and coat, s: laps, passes and turns on it, and standing there to refill. Ways between zones are
 * in none, so that the times and those ways sum to the whole walk.
 * @returns one for each of `dose.walks`, in their order
 */
export function secondsOfWalks({ dose, spans }: Pick<WalkTimeline, 'dose' | 'spans'>): readonly number[] {
  const keyOf = ({ zoneId, coat }: { readonly zoneId: string | null; readonly coat: 1 | 2 }) =>
    `${coat}:${zoneId}`;
  const sums = new Map<string, number>();
  for (const { legIndex, fromS, toS } of spans) {
    const leg = dose.legs[legIndex];
    if (leg) sums.set(keyOf(leg), (sums.get(keyOf(leg)) ?? 0) + toS - fromS);
  }
  return dose.walks.map((walk) => sums.get(keyOf(walk)) ?? 0);
}
