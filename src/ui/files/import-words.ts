import type { DeskCounts, DeskOverview } from '../../io/deskTypes';
import { formatArea } from '../../units/format';
import type { UnitSystem } from '../../yard/types';

/** "1 zone", "12 zones". */
export function countOf(count: number, word: string, words = `${word}s`): string {
  return `${count.toLocaleString('en-US')} ${count === 1 ? word : words}`;
}

/** What a file holds, in a sentence or two. */
export function describeOverview({ features, byOutcome }: DeskOverview): string {
  if (features === 0) return 'Nothing in it can come in.';
  const { zone, parcel, mark, offered, kept, refused } = byOutcome;
  const parts = [
    zone > 0 ? countOf(zone, 'zone') : '',
    mark > 0 ? countOf(mark, 'mark') : '',
    parcel > 0 ? countOf(parcel, 'outline of a property', 'outlines of properties') : '',
    offered > 0 ? `${countOf(offered, 'shape')} if you tick ${offered === 1 ? 'it' : 'them'}` : '',
  ].filter((part) => part !== '');
  const not = [
    kept > 0 ? `${countOf(kept, 'line or point', 'lines and points')} that are no zones` : '',
    refused > 0 ? `${refused.toLocaleString('en-US')} that cannot` : '',
  ].filter((part) => part !== '');
  const can = parts.length > 0 ? `can come in: ${parts.join(', ')}` : 'none can come in';
  return `${countOf(features, 'feature')}; ${can}.${not.length > 0 ? ` Besides: ${not.join(', ')}.` : ''}`;
}

/** What is ticked. */
export function describeCounts(counts: DeskCounts, units: UnitSystem): string {
  const parts = [
    `${countOf(counts.zones, 'zone')}${counts.zones > 0 ? ` (${formatArea(counts.areaM2, units)} as drawn, ${countOf(counts.corners, 'corner')})` : ''}`,
    ...(counts.marks > 0 ? [countOf(counts.marks, 'mark')] : []),
    ...(counts.hasParcel ? ['the outline of the property'] : []),
  ];
  return `Ticked: ${parts.join(', ')}.`;
}

/** What came in. */
export function describeDone(zones: number, marks: number, hasParcel: boolean): string {
  const parts = [
    countOf(zones, 'zone'),
    ...(marks > 0 ? [countOf(marks, 'mark')] : []),
    ...(hasParcel ? ['the outline of the property'] : []),
  ];
  return `Brought in: ${parts.join(', ')}.`;
}
