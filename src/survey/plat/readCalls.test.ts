import { describe, expect, it } from 'vitest';
import { formatBearing, formatDms } from './bearing';
import type { Foot } from './lengths';
import { type ReadCallsOptions, readCalls } from './readCalls';

const OPTIONS: ReadCallsOptions = { foot: 'international', bareUnit: 'ft' };

/** Calls in short: "N 45°30′15″ E 120.5" in feet, "R50 30°00′00″ right from due north" for an arc. */
function short(text: string, options = OPTIONS): string[] {
  return readCalls(text, options).entries.map(({ call }) => {
    if (!call) return 'none';
    if (call.kind === 'line') return `${formatBearing(call.bearingDeg)} ${ft(call.lengthM)}`;
    return `R${ft(call.radiusM)} ${formatDms(call.deltaDeg)} ${call.turn} from ${formatBearing(call.entryBearingDeg)}`;
  });
}
const ft = (m: number) => Number((m / 0.3048).toFixed(3));
const messages = (text: string) => readCalls(text, OPTIONS).issues.map(({ message }) => message);

describe('straight calls', () => {
  // the notations are those of plats and deeds (common practice, no source)
  it.each([
    [`N 45°30'15" E 120.5 ft`, 'N 45°30′15″ E 120.5'],
    [`N45-30-15E 120.50'`, 'N 45°30′15″ E 120.5'],
    [`N45°-30'-15"E   120.50'`, 'N 45°30′15″ E 120.5'],
    ['n. 45º 30’ 15” e., 120.5 feet', 'N 45°30′15″ E 120.5'],
    ['120.5, N 45 30 15 E', 'N 45°30′15″ E 120.5'],
    ['North 45 degrees 30 minutes East a distance of 120.5 feet', 'N 45°30′00″ E 120.5'],
    [`S 0°12' W, 33.2 m`, 'S 0°12′00″ W 108.924'],
    [`due north 100'`, 'due north 100'],
    [`North 100'`, 'due north 100'],
    ['1,200 ft E', 'due east 1200'],
    ['10, sw', 'S 45°00′00″ W 10'],
    ['135.5° 40 ft', 'S 44°30′00″ E 40'],
    ['Az 135-30-00 40', 'S 44°30′00″ E 40'],
    ['az 135.5 40', 'S 44°30′00″ E 40'],
    [`135° 40'`, 'S 45°00′00″ E 40'],
    [`135°30' 40'`, 'S 44°30′00″ E 40'],
    ['135° 40 m', 'S 45°00′00″ E 131.234'],
    ['40, 135.5', 'S 44°30′00″ E 40'],
    ['10, bearing 12.5°', 'N 12°30′00″ E 10'],
    [`12' 6" W`, 'due west 12.5'],
    ['12 1/2 ft W', 'due west 12.5'],
    ['N 45 E 100 to an iron pin', 'N 45°00′00″ E 100'],
  ])('%s', (text, expected) => {
    expect(short(text)).toEqual([expected]);
    expect(messages(text)).toEqual([]);
  });

  it('takes chains, links and rods by their feet: 66 ft, 0.66 ft, 16.5 ft', () => {
    // BLM, Manual of Surveying Instructions 1973, sect. 2-1: a chain is 66 feet and 100 links, a rod 25 links
    expect(short('3 chains 25 links S 40 E\n2 rods West\n50 lks N\n2 ch E\n3 poles 5 links N')).toEqual([
      'S 40°00′00″ E 214.5',
      'due west 33',
      'due north 33',
      'due east 132',
      'due north 52.8',
    ]);
    expect(short('2.5 N', { ...OPTIONS, bareUnit: 'chain' })).toEqual(['due north 165']);
  });

  it('tells the US survey foot, 1200/3937 m, from the international', () => {
    // Federal Register notice 2020-21902
    const read = (text: string, foot: Foot) => {
      const [call] = readCalls(text, { ...OPTIONS, foot }).calls;
      return call?.kind === 'line' ? call.lengthM : 0;
    };
    expect(read('1000 ft N', 'us-survey')).toBeCloseTo(1200000 / 3937, 9);
    expect(read('1000 US survey feet N', 'international')).toBeCloseTo(1200000 / 3937, 9);
    expect(read('10 chains N', 'us-survey')).toBeCloseTo((660 * 1200) / 3937, 9);
  });

  it('takes turns against the call before; a length alone in a list turns right', () => {
    expect(short('10, N\n10, right\n10, right 45\n10 left\nleft 30 10 ft')).toEqual([
      'due north 10',
      'due east 10',
      'S 45°00′00″ E 10',
      'N 45°00′00″ E 10',
      'N 15°00′00″ E 10',
    ]);
    expect(short('10\n20\n10\n20')).toEqual(['due north 10', 'due east 20', 'due south 10', 'due west 20']);
    expect(messages('10\n20')[1]).toMatch(/Line 2: “20” has no direction: turned right by 90°/);
  });

  it('finds several calls on one line, with and without words between', () => {
    expect(short('N 10 E 50, S 40 E 100; S 50 W 30 to N 40 W 20')).toEqual([
      'N 10°00′00″ E 50',
      'S 40°00′00″ E 100',
      'S 50°00′00″ W 30',
      'N 40°00′00″ W 20',
    ]);
  });
});

describe('curves', () => {
  it.each([
    ['curve right R=50 delta 30°', 'R50 30°00′00″ right from due north'],
    ['R 50 L 26.18 left', 'R50 30°00′00″ left from due north'],
    ["R=50' Δ=30°00'00\" RT", 'R50 30°00′00″ right from due north'],
    ['arc 26.18 ft radius 50 ft to the left, chord N 30 E 25.88', 'R50 30°00′00″ left from N 45°00′00″ E'],
    ['curve right R 50 delta 90 radial bearing N 80 W', 'R50 90°00′00″ right from N 10°00′00″ E'],
    ['curve concave to the southeast R=50 delta 30 CB N 15 E', 'R50 30°00′00″ right from due north'],
    ['curve left, center bears N 80 W, R 50, L 26.18', 'R50 30°00′00″ left from N 10°00′00″ E'],
  ])('%s', (text, expected) => {
    expect(short(`N 0 E 40\n${text}`)[1]).toBe(expected);
    expect(readCalls(`N 0 E 40\n${text}`, OPTIONS).issues.every((i) => i.severity === 'note')).toBe(true);
  });

  it('is tangent to the call before, and the next may be tangent to it', () => {
    expect(short('N 10 E 50, curve right R=50 delta 30°; tangent 20; S 40 E 100')).toEqual([
      'N 10°00′00″ E 50',
      'R50 30°00′00″ right from N 10°00′00″ E',
      'N 40°00′00″ E 20',
      'S 40°00′00″ E 100',
    ]);
  });

  it('tells figures that do not agree, with both', () => {
    expect(messages('N 40\ncurve left R 50 delta 30 L 29')).toEqual([
      'Line 2: the arc is written as 29.00 ft, but radius and central angle make it 26.18 ft; radius and central angle are used.',
    ]);
    expect(messages('N 40\ntangent curve right R 50 delta 30 chord N 18 E')[0]).toMatch(
      /called tangent, but the curve sets out N 3°00′00″ E, the call before it ends due north: 3°00′00″ apart/,
    );
  });

  it.each([
    ['N 40\ncurve right radius 50', /Line 2.*needs two of/],
    ['curve right R 50 delta 90', /Line 1.*direction of its chord or of its radius/],
    ['N 40\ncurve R 50 delta 90', /Line 2.*right or left/],
    ['N 40\nnon-tangent curve right R 50 delta 90', /Line 2.*not tangent needs/],
    ['N 40\ncurve right R 50 C 120', /Line 2.*chord is longer/],
    ['N 40\ncurve right R 50 L 400', /Line 2.*whole circle/],
    ['N 40\ncurve right L 20 C 30', /Line 2.*shorter than the arc/],
  ])('refuses %j', (text, message) => {
    expect(messages(text).join()).toMatch(message);
    expect(readCalls(text, OPTIONS).entries.at(-1)?.call).toBeNull();
  });
});

describe('running text', () => {
  const DEED = `Commencing at the north quarter corner of Section 12, Township 3; thence South 500 feet to the
Point of Beginning; thence East along the north line of Lot 5, Block 2, a distance of 100.00 feet to a 5/8 inch iron
rod; thence South 0 degrees 30 minutes
West 80 feet to the beginning of a curve to the right having a radius of 20.00 feet; thence along said curve
through a central angle of 90°00'00", an arc distance of 31.42 feet to a point of tangency on the northerly right-of-way line of a 60 foot road;
thence N 89°30'00" W 79.30 feet; thence North 99.5 feet to the point of beginning, containing 0.229 acres, more or less.`;

  it('is read over line ends; ties, lots, pins and roads are no calls', () => {
    const read = readCalls(DEED, OPTIONS);
    expect(read.issues).toEqual([]);
    expect(short(DEED)).toEqual([
      'due south 500',
      'due east 100',
      'S 0°30′00″ W 80',
      'R20 90°00′00″ right from S 0°30′00″ W',
      'N 89°30′00″ W 79.3',
      'due north 99.5',
    ]);
    expect(read.entries.map(({ role }) => role)).toEqual(['tie', ...Array(5).fill('boundary')]);
    expect(read.calls).toHaveLength(5);
    expect(read.entries.map(({ line }) => line)).toEqual([1, 2, 3, 4, 6, 6]);
  });

  it('keeps the area the text states', () => {
    // an acre of 43,560 sq ft of 0.3048 m: NIST Handbook 44 app. C
    expect(readCalls(DEED, OPTIONS).statedAreaM2).toBeCloseTo(0.229 * 4046.8564224, 6);
    expect(readCalls('thence N 1 E 5 ft, area of 9,975 sq. ft.', OPTIONS).statedAreaM2).toBeCloseTo(
      9975 * 0.09290304,
      6,
    );
  });

  it('makes no call of a length without a direction', () => {
    expect(messages('thence southeasterly 40 feet; thence 50 feet')).toEqual([
      expect.stringMatching(/gives no exact direction/),
      expect.stringMatching(/length but no direction/),
    ]);
  });
});

describe('what is not understood is told with its line and words', () => {
  it.each([
    ['10, N\n1000000000000, E', /Line 2.*10 km/],
    ['100 up\n10, N', /Line 1: “up” is no unit/],
    ['10, N\nlong, right', /Line 2.*no length.*/],
    ['10, right\n10, N', /Line 1.*a turn needs a call before it/],
    ['10, N\n10, up', /Line 2.*no direction.*Not understood: “up”/],
    ['10, N\n10, N 95 E', /Line 2: “N 95 E” is more than 90°/],
    ['10, N\n0, E', /Line 2.*longer than nothing/],
    ["N 45°30' 100", /Line 1: “N 45°30'” lacks its E or W/],
    ['N 45 100', /Line 1: “N 45” lacks its E or W/],
    ["N 12°60' E 5", /60 minutes/],
    ['N 12 10 75 E 5', /75 seconds/],
    ['N 45.5 30 E 10', /decimals of a degree and minutes/],
    ['N 45 E 100 fet', /“fet” is no unit/],
    ['N 1 E 5 6', /“6” has a length but no direction/],
    ['N 10 E S 20 E 50', /second direction/],
    ['Az 400 20', /more than a full turn/],
    ['100 varas N', /“varas” is no unit/],
  ])('%j', (text, message) => {
    expect(messages(text).join('\n')).toMatch(message);
  });

  it('gives nothing for nothing', () => {
    expect(readCalls('', OPTIONS).entries).toEqual([]);
    expect(readCalls(' \n\n', OPTIONS).entries).toEqual([]);
  });
});
