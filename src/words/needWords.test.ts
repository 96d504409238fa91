import { describe, expect, it } from 'vitest';
import { findGuide } from '../need/nitrogenGuides';
import { testNeed } from '../need/testNeed';
import {
  guidePlaceWords,
  guideSourceWords,
  holdWords,
  needWords,
  rangeWords,
  splitWords,
  yearDayWords,
} from './needWords';

const LB = 0.45359237 / 92.90304;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('words of a need', () => {
  it('says a range, or the one number', () => {
    expect(plain(rangeWords(2 * LB, 3.5 * LB, 'us'))).toBe('2 to 3.5 lb per 1,000 sq ft');
    expect(plain(rangeWords(0.01, 0.01, 'metric'))).toBe('10 g/m²');
  });
  it('says source, year, how it was come by and what is printed', () => {
    const guide = findGuide('illinois/zoysiagrass');
    expect(guide && guideSourceWords(guide)).toMatch(
      /1995; from a copy.*Printed as 2 to 4 lb per 1,000 sq ft/,
    );
  });
  it('marks a trial as one', () => {
    const guide = findGuide('schlossberg-2006/creeping-bentgrass/putting-green');
    expect(guide && guidePlaceWords(guide)).toBe('Pennsylvania, putting green (a trial)');
    expect(guide && guideSourceWords(guide)).toMatch(/99:99-106.*2007.*A trial, no advice/);
  });
  it('says how the year is shared out', () => {
    expect(splitWords({ kind: 'even', fromMonth: 11, toMonth: 2 })).toBe('alike from November to February');
    expect(splitWords({ kind: 'even', fromMonth: 6, toMonth: 6 })).toBe('all in June');
    expect(splitWords({ kind: 'even', fromMonth: 1, toMonth: 12 })).toBe('alike over the year');
  });
  it('says a need and a hold', () => {
    const need = testNeed({ speciesId: 'tall-fescue', nKgPerM2: 3 * LB, split: { kind: 'growth' } });
    expect(plain(needWords(need, 'us'))).toBe('Tall fescue; 3 lb per 1,000 sq ft of N a year, by growth');
    expect(plain(holdWords({ from: '03-01', to: '05-10', maxNKgPerM2: 0 }, 'us'))).toBe(
      'From 1 March to 10 May: no nitrogen.',
    );
  });
  it('leaves alone what is no day', () => expect(yearDayWords('soon')).toBe('soon'));
});
