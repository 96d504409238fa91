import { describe, expect, it } from 'vitest';
import { L_PER_GAL, M_PER_MILE } from './factors';
import { formatClock, formatFlow, formatReading, formatSpeed } from './formatPace';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('paces as text', () => {
  it('speeds by mile and kilometre an hour, two decimals under one', () => {
    expect(plain(formatSpeed((2.5 * M_PER_MILE) / 3600, 'us'))).toBe('2.5 mph');
    expect(plain(formatSpeed((0.42 * M_PER_MILE) / 3600, 'us'))).toBe('0.42 mph');
    expect(plain(formatSpeed((0.998 * M_PER_MILE) / 3600, 'us'))).toBe('1.0 mph');
    expect(plain(formatSpeed(1, 'metric'))).toBe('3.6 km/h');
    expect(formatSpeed(Number.NaN, 'us')).toBe('–');
  });
  it('flows in the unit that reads best', () => {
    expect(plain(formatFlow((5 * L_PER_GAL) / 60, 'us'))).toBe('5 gal/min');
    expect(plain(formatFlow((0.125 * L_PER_GAL) / 60, 'us'))).toBe('16 fl oz/min');
    expect(plain(formatFlow(1.01 / 60, 'metric'))).toBe('1.01 L/min');
    expect(plain(formatFlow(0.4 / 60, 'metric'))).toBe('400 mL/min');
  });
  it('times carry to the next unit when they are rounded', () => {
    expect(plain(formatReading(17.04))).toBe('17.0 s');
    expect(plain(formatClock(8.5))).toBe('8.5 s');
    expect(plain(formatClock(9.97))).toBe('10 s');
    expect(plain(formatClock(59.7))).toBe('1 min 00 s');
    expect(plain(formatClock(125))).toBe('2 min 05 s');
    expect(plain(formatClock(3599.6))).toBe('1 h 00 min');
    expect(plain(formatClock(4350))).toBe('1 h 13 min');
  });
});
