import { dateOfVisit } from '../plan/heldWith';
import type { VisitFigures } from '../plan/types';
import { addDays } from '../yard/calendar';
import type { Yard } from '../yard/types';

/** Longest line of the file in octets, without its end (RFC 5545, 3.1). */
const LINE_OCTETS = 75;
const encoder = new TextEncoder();

/**
 * Visits as an iCalendar file (RFC 5545): an all-day event for each visit with a day, on the day it was done
 * or is planned for. The event's UID stays the same from export to export, so a calendar that takes the file in
 * again changes its entries instead of doubling them.
 *
 * By hand, as no library at hand keeps lines to 75 octets (one counts characters, one 76 octets) without
 * bringing a validator of 40 kB.
 * @param visits figures of the visits to write; those without a day are passed over
 * @param stamp when the file is written, in UTC: YYYYMMDDTHHMMSSZ
 * @param tell what the entry of a visit says, a line each
 * @returns the text, lines ended by CRLF
 */
export function writeCalendar(
  yard: Yard,
  visits: readonly VisitFigures[],
  stamp: string,
  tell: (figures: VisitFigures) => readonly string[],
): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Measured Yard//Season//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    ...visits.flatMap((figures) => eventLines(yard, figures, stamp, tell(figures))),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${foldLine(line)}\r\n`).join('');
}

function eventLines(
  yard: Yard,
  { visit }: VisitFigures,
  stamp: string,
  words: readonly string[],
): readonly string[] {
  const date = dateOfVisit(visit);
  const next = date && addDays(date, 1);
  if (!date || !next) return [];
  const name = visit.name.trim() || 'Visit';
  return [
    'BEGIN:VEVENT',
    `UID:${escapeText(`${visit.id}.${yard.id}@measured-yard`)}`,
    `DTSTAMP:${stamp}`,
    `DTSTART;VALUE=DATE:${date.replaceAll('-', '')}`,
    `DTEND;VALUE=DATE:${next.replaceAll('-', '')}`,
    `SUMMARY:${escapeText(visit.doneOn !== null ? `${name} (done)` : name)}`,
    `DESCRIPTION:${escapeText(words.join('\n').replaceAll('\u00a0', ' '))}`,
    `LOCATION:${escapeText(yard.name)}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** Text as a value of the type TEXT (RFC 5545, 3.3.11): backslash, semicolon, comma and line break escaped, other control characters left out. */
export function escapeText(text: string): string {
  return text
    .replace(/[\\;,]/g, '\\$&')
    .replace(/\r\n|\r|\n/g, '\\n')
    .replace(/\p{Cc}/gu, (char) => (char === '\t' ? char : ''));
}

/** A content line folded so that no line is longer than 75 octets of UTF-8, never within a character (RFC 5545, 3.1). */
export function foldLine(line: string): string {
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const char of line) {
    const size = encoder.encode(char).length;
    if (octets + size > LINE_OCTETS) {
      parts.push(part);
      part = ' ';
      octets = 1;
    }
    part += char;
    octets += size;
  }
  return [...parts, part].join('\r\n');
}
