import { describe, expect, it } from 'vitest';
import { parseArea, parseLength, parseMass, parseVolume } from './parse';

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
