import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { escapeText, foldLine, writeCalendar } from '../../src/io/writeCalendar';
import { programDates } from '../../src/season/programDates';
import { weeksOfYear } from '../../src/season/weeksOfYear';
import { deriveYard } from '../../src/session/derive';
import { loadPlanner } from '../../src/session/planner';
import { eventWords } from '../../src/words/eventWords';
import { addDays, dayNumber, dayOfNumber, weekdayOf } from '../../src/yard/calendar';
import { newDose, newVisit } from '../../src/yard/defaults';
import type { Program, Visit, Yard } from '../../src/yard/types';
import { testYard } from '../fixtures/testYard';

await loadPlanner();

const every = (from: string, to: string, days: number): Program => ({
  id: 'p',
  name: 'P',
  from,
  to,
  pace: { kind: 'every', days },
  zones: { classes: [], include: [], exclude: [] },
  doses: [],
  tankL: null,
});
const datesOf = (program: Program) => programDates(program, [program]).dates;

// RFC 5545 (iCalendar), 3.8.5.3, examples of recurrence rules from 2 September 1997
describe('the days of a program are those of the published recurrence examples', () => {
  it('every 10 days, 5 occurrences: September 2, 12, 22; October 2, 12', () => {
    expect(datesOf(every('1997-09-02', '1997-10-12', 10))).toEqual([
      '1997-09-02',
      '1997-09-12',
      '1997-09-22',
      '1997-10-02',
      '1997-10-12',
    ]);
  });

  it('every other week: from September 2, 1997 to February 17, 1998', () => {
    expect(datesOf(every('1997-09-02', '1998-02-20', 14))).toEqual([
      '1997-09-02',
      '1997-09-16',
      '1997-09-30',
      '1997-10-14',
      '1997-10-28',
      '1997-11-11',
      '1997-11-25',
      '1997-12-09',
      '1997-12-23',
      '1998-01-06',
      '1998-01-20',
      '1998-02-03',
      '1998-02-17',
    ]);
  });

  it('daily until December 24, 1997: 113 days to December 23', () => {
    const dates = datesOf(every('1997-09-02', '1997-12-23', 1));
    expect(dates).toHaveLength(113);
    expect(dates.at(-1)).toBe('1997-12-23');
  });

  // ical.js as an independent expansion of the same rule, over leap days and year ends
  it.each([
    ['2027-11-03', 9, 40],
    ['2028-02-20', 3, 12],
    ['2099-12-20', 14, 9],
  ])('from %s every %i days, %i times', (from, days, count) => {
    const rule = ICAL.Recur.fromString(`FREQ=DAILY;INTERVAL=${days};COUNT=${count}`);
    const iterator = rule.iterator(ICAL.Time.fromDateString(from));
    const expected: string[] = [];
    for (let next = iterator.next(); next; next = iterator.next()) expected.push(next.toString());
    expect(datesOf(every(from, expected.at(-1) ?? '', days))).toEqual(expected);
  });
});

describe('days and weeks', () => {
  // RFC 5545 3.8.5.3: "Weekly on Tuesday and Thursday" begins on September 2, 1997, a Tuesday
  it('2 September 1997 is a Tuesday', () => {
    expect(weekdayOf(dayNumber('1997-09-02') ?? 0)).toBe(2);
  });

  // ISO 8601: week 1 holds the first Thursday; 2026 has 53 weeks, 2027 begins on a Friday (ISO 8601 week rule)
  it('2026-01-01 is a Thursday, and 2026 touches 53 weeks from Monday', () => {
    expect(weekdayOf(dayNumber('2026-01-01') ?? 0)).toBe(4);
    const weeks = weeksOfYear(2026, 1);
    expect(weeks).toHaveLength(53);
    expect(weeks[0]?.[0]).toBe('2025-12-29');
    expect(weeks[52]?.[6]).toBe('2027-01-03');
  });

  // Gregorian rule of 1582: 1900 and 2100 are common years, 2000 a leap year
  it.each([
    ['1900-02-28', '1900-03-01'],
    ['2000-02-28', '2000-02-29'],
    ['2100-02-28', '2100-03-01'],
  ])('the day after %s is %s', (day, next) => {
    expect(addDays(day, 1)).toBe(next);
  });

  // RFC 5545 has no epoch; POSIX.1-2017, 4.16: 1970-01-01 is day 0. 10,000 days later: May 19, 1997 (from memory)
  it('day 10,000 of the POSIX epoch is 1997-05-19', () => {
    expect(dayOfNumber(10_000)).toBe('1997-05-19');
  });
});

describe('text of an iCalendar file', () => {
  // RFC 5545, 3.3.11, its own example of a multiple-line value
  it('escapes as the standard prints it', () => {
    expect(escapeText('Project XYZ Final Review\nConference Room - 3B\nCome Prepared.')).toBe(
      String.raw`Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`,
    );
    // 3.3.11: backslash, semicolon and comma are escaped by a backslash; a colon is not
    expect(escapeText('a\\b;c,d:e\r\nf\u0007')).toBe(String.raw`a\\b\;c\,d:e\nf`);
  });

  // RFC 5545, 3.1: no line longer than 75 octets without its end; unfolding takes CRLF and one space away
  it.each([
    'DESCRIPTION:This is a long description that exists on a long line.',
    `SUMMARY:${'Ä'.repeat(200)}`,
    `SUMMARY:${'a€b😀'.repeat(80)}`,
    'X'.repeat(75),
    'X'.repeat(76),
  ])('folds %#', (line) => {
    const folded = foldLine(line);
    for (const part of folded.split('\r\n')) {
      expect(new TextEncoder().encode(part).length).toBeLessThanOrEqual(75);
      // never within a character: half of one throws here
      expect(encodeURIComponent(part)).toBeTruthy();
    }
    expect(folded.replaceAll('\r\n ', '')).toBe(line);
    expect(new TextEncoder().encode(line).length <= 75).toBe(folded === line);
  });
});

describe('a season written and read by another reader (ical.js)', () => {
  const ground = { classes: ['turf-regular' as const], include: [], exclude: [] };
  const visits: readonly Visit[] = [
    newVisit('v-plan', {
      name: 'Light liquid 1; low, then high',
      date: '2028-02-29',
      zones: ground,
      doses: [newDose('d-1', 'p-liquid')],
      note: 'Gate code: ask.\nLeave the key, please\\thanks',
    }),
    newVisit('v-done', {
      name: 'Granules',
      date: '2028-05-01',
      doneOn: '2028-05-03',
      zones: ground,
      doses: [newDose('d-2', 'p-granules', { actual: { unit: 'kg', value: 4.536 } })],
    }),
    newVisit('v-none', { name: 'Some day', zones: ground }),
  ];
  const yard: Yard = { ...testYard(), name: 'Höfle, rear', visits };
  const write = (of: Yard) => {
    const derived = deriveYard(of);
    const figures = of.visits.flatMap((visit) => derived.visit(visit.id)?.figures ?? []);
    return writeCalendar(of, figures, '20280101T120000Z', (each) =>
      eventWords(each, derived.season().issues, 'us'),
    );
  };
  const text = write(yard);
  const root = new ICAL.Component(ICAL.parse(text));
  const events = root.getAllSubcomponents('vevent').map((component) => new ICAL.Event(component));

  it('has the members the standard asks for, and ends every line by CRLF', () => {
    expect(root.getFirstPropertyValue('version')).toBe('2.0');
    expect(root.getFirstPropertyValue('prodid')).toBeTruthy();
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of text.split('\r\n'))
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
    for (const { component } of events)
      for (const name of ['uid', 'dtstamp', 'dtstart', 'summary'])
        expect(component.getAllProperties(name), name).toHaveLength(1);
  });

  // RFC 5545, 3.6.1: an all-day event takes dates, and its end is the first day no longer in it
  it('gives all-day events by the day done, else planned; those without a day are passed over', () => {
    expect(
      events.map((event) => [event.startDate.toString(), event.endDate.toString(), event.startDate.isDate]),
    ).toEqual([
      ['2028-02-29', '2028-03-01', true],
      ['2028-05-03', '2028-05-04', true],
    ]);
  });

  it('brings names and notes through as they were', () => {
    expect(events[0]?.summary).toBe('Light liquid 1; low, then high');
    expect(events[0]?.description).toContain('Gate code: ask.\nLeave the key, please\\thanks');
    expect(events[0]?.description).toContain('Liquid 12-0-6: ');
    expect(events[0]?.location).toBe('Höfle, rear');
    expect(events[1]?.summary).toBe('Granules (done)');
    // 4.536 kg are 10 lb (NIST: 1 lb = 0.45359237 kg): what was really used, not what was planned
    expect(events[1]?.description).toContain('Granular 20-0-10: 10 lb on ');
  });

  it('tells use, rate and water of each dose, and what speaks against the visit', () => {
    const products = yard.products.map((one) =>
      one.id === 'p-liquid'
        ? { ...one, useName: 'Light rate', applicator: 'tank-sprayer' as const, carrierLPerM2: 0.04 }
        : one,
    );
    const derived = deriveYard({ ...yard, products });
    const [figures] = yard.visits.slice(0, 1).flatMap((one) => derived.visit(one.id)?.figures ?? []);
    if (!figures) throw new Error('no figures');
    const issue = { code: 'x', message: 'Too soon.', place: {} };
    const lines = eventWords(
      figures,
      [
        { ...issue, severity: 'warning' },
        { ...issue, severity: 'error', message: 'Barred.' },
        { ...issue, severity: 'note', message: 'Aside.' },
      ],
      'us',
    ).map((line) => line.replaceAll('\u00a0', ' '));
    // 1.6 mL/m² over 92.90304 m² (1,000 sq ft) are 148.6 mL, by 29.5735 mL 5.03 US fl oz (NIST)
    expect(lines[1]).toMatch(
      /^Liquid 12-0-6: .* on .* sq ft, 5\.03 fl oz per 1,000 sq ft, Light rate \(backpack or tank sprayer\), .* gal of water to mix in; water in/,
    );
    expect(lines.slice(2, 4)).toEqual(['Not right: Barred.', 'Check: Too soon.']);
    expect(lines).not.toContain('Aside.');
  });

  it('keeps the UID of a visit that is moved, and tells visits apart', () => {
    const moved = write({
      ...yard,
      visits: yard.visits.map((visit) => (visit.id === 'v-plan' ? { ...visit, date: '2028-03-07' } : visit)),
    });
    const uids = (of: string) =>
      new ICAL.Component(ICAL.parse(of))
        .getAllSubcomponents('vevent')
        .map((component) => component.getFirstPropertyValue('uid'));
    expect(uids(moved)).toEqual(uids(text));
    expect(new Set(uids(text)).size).toBe(2);
  });
});
