import { describe, expect, it } from 'vitest';
import { parseArea, parseLength, parseMass, parseNumber, parseVolume } from './parse';

const value = (parsed: ReturnType<typeof parseLength>) => (parsed.ok ? parsed.value : parsed.message);

describe('typed quantities', () => {
  it.each([
    ['12\' 6"', 'us', 3.81],
    ['12 ft 6 in', 'us', 3.81],
    ['12.5 ft', 'us', 3.81],
    ['12.5', 'us', 3.81],
    ['6 1/2 in', 'us', 0.1651],
    ['1/2 in', 'us', 0.0127],
    ['12 ft. 6 in.', 'us', 3.81],
    ['12ft2in', 'us', 3.7084],
    ['3.8 m', 'us', 3.8],
    ['3.8', 'metric', 3.8],
    ['350 cm', 'metric', 3.5],
  ] as const)('length %s (%s)', (text, system, expected) => {
    expect(value(parseLength(text, system))).toBeCloseTo(expected, 10);
  });
  it('area, mass and volume', () => {
    expect(value(parseArea('3,200 sq ft', 'us'))).toBeCloseTo(297.289728, 9);
    expect(value(parseMass('40 lb', 'us'))).toBeCloseTo(18.1436948, 9);
    expect(value(parseVolume('5 fl oz', 'us'))).toBeCloseTo(0.1478676478125, 12);
    expect(value(parseVolume('2.5 gal', 'metric'))).toBeCloseTo(9.46352946, 9);
  });
  it('units with a point or a raised digit', () => {
    expect(value(parseVolume('5 fl. oz.', 'us'))).toBeCloseTo(0.1478676478125, 12);
    expect(value(parseArea('10 ft2', 'us'))).toBeCloseTo(0.9290304, 12);
    expect(value(parseArea('300 M2', 'us'))).toBe(300);
    expect(value(parseVolume('2 m3', 'us'))).toBe(2000);
  });
  it.each(['', '1/0', 'ten', '-4', '12 ft 6', '3 parsecs', '4 4'])('refuses “%s” with a sentence', (text) => {
    const parsed = parseLength(text, 'us');
    expect(parsed.ok).toBe(false);
    expect(parsed.ok ? '' : parsed.message).toMatch(/\w.*\.$/);
  });
});

describe('a comma that parts no thousands', () => {
  it.each([
    ['12,5', '12,5: write 12.5; a comma parts thousands here.'],
    ['12,50', '12,50: write 12.50; a comma parts thousands here.'],
    ['1.250,5', '1.250,5: write 1250.5; a comma parts thousands here.'],
    ['0,500', '0,500: write 0.500; a comma parts thousands here.'],
    ['-4,5', '-4,5: write -4.5; a comma parts thousands here.'],
    ['1,25,000', '1,25,000: write 125000; a comma parts thousands here.'],
    ['12,', '12,: write 12; a comma parts thousands here.'],
  ])('is refused in “%s” with what to write', (text, message) => {
    expect(value(parseNumber(text))).toBe(message);
  });
  it('is refused beside a unit too', () => {
    const words = '12,5: write 12.5; a comma parts thousands here.';
    expect(value(parseMass('12,5 lb', 'us'))).toBe(words);
    expect(value(parseLength('3 ft 12,5 in', 'us'))).toBe(words);
    expect(value(parseVolume('12,5', 'metric'))).toBe(words);
    expect(value(parseArea('0,500 acre', 'us'))).toContain('write 0.500');
  });
  it('is read where it parts thousands', () => {
    expect(value(parseNumber('12,500'))).toBe(12_500);
    expect(value(parseNumber('1,234,567.5'))).toBe(1_234_567.5);
  });
});

describe('plain numbers', () => {
  it.each([
    ['4.5', 4.5],
    ['.5', 0.5],
    ['5.', 5],
    ['-3', -3],
    ['−3', -3],
    ['+3', 3],
    ['1/2', 0.5],
    ['6 1/2', 6.5],
    ['2e3', 2000],
  ])('%s', (text, expected) => {
    expect(value(parseNumber(text))).toBe(expected);
  });
  it.each(['', '.', 'e5', '1/0', '1/', 'ten', '1 2', '--3', '5 lb'])('refuses “%s”', (text) => {
    expect(parseNumber(text).ok).toBe(false);
  });
});
