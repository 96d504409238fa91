import { describe, expect, it } from 'vitest';
import type { PaceFigures } from '../pace/paceFigures';
import type { DosePace } from '../pace/types';
import { M_PER_MILE, M2_PER_1000_SQFT } from '../units/factors';
import { lotWords, paceLines, passPaceWords, speedWords, stepWords, usualPassM } from './paceWords';

const plain = (text: string | null) => text?.replaceAll('\u00a0', ' ') ?? null;
const pace: DosePace = {
  speedMPerS: M_PER_MILE / 3600,
  source: 'flow',
  shutSpeedMPerS: 1,
  turnS: 2,
  stepsPerM: 1 / 0.75,
  productPerS: null,
  issues: [],
};
const figures: PaceFigures = {
  speedMPerS: pace.speedMPerS,
  source: 'flow',
  coats: 1,
  zones: [
    { zoneId: 'a', name: 'Front lawn', seconds: 375 },
    { zoneId: 'b', name: '', seconds: 48 },
  ],
  seconds: 423,
  secondsPerM2: 90 / M2_PER_1000_SQFT,
  stepM: 0.75,
  stepsPerMin: 35.76,
  productPerMin: null,
};

describe('words of a pace', () => {
  it('speed, time of a round area, steps, one pass', () => {
    expect(plain(speedWords(pace, 'us'))).toBe('1.0 mph');
    expect(plain(lotWords(figures, 'us'))).toBe('1 min 30 s per 1,000 sq ft');
    expect(plain(lotWords(figures, 'metric'))).toBe('1 min 37 s per 100 m²');
    expect(plain(stepWords(figures, 'metric'))).toBe('36 steps a minute, each 75 cm');
    expect(plain(passPaceWords(pace, 15, 'metric'))).toBe('a pass of 15.00 m: 34 s, 20 steps');
  });

  it('what is only usual says so, what is not known says nothing', () => {
    expect(plain(speedWords({ ...pace, source: 'usual' }, 'us'))).toBe('about 1.0 mph');
    expect(speedWords({ ...pace, speedMPerS: null }, 'us')).toBeNull();
    expect(stepWords({ stepM: null, stepsPerMin: null }, 'us')).toBeNull();
    expect(plain(passPaceWords({ ...pace, stepsPerM: null }, 15, 'metric'))).toBe('a pass of 15.00 m: 34 s');
    expect(paceLines({ ...figures, speedMPerS: null, secondsPerM2: null }, 'us')).toEqual([]);
  });

  it('the usual pass is that in the middle by length, laps and turns aside', () => {
    const legs = [12, 3, 15].map((lengthM) => ({ kind: 'pass', lengthM }));
    expect(usualPassM([...legs, { kind: 'lap', lengthM: 90 }, { kind: 'turn', lengthM: 1 }])).toBe(12);
    expect(usualPassM([])).toBeNull();
  });

  it('lines for panel and sheet, coats told', () => {
    const lines = paceLines({ ...figures, coats: 2 }, 'us').map(
      (line) => `${line.label}: ${plain(line.words)}`,
    );
    expect(lines).toEqual([
      'Walk: 1.0 mph (from what comes out of it)',
      'Time, each coat: 1 min 30 s per 1,000 sq ft',
      'Steps: 36 steps a minute, each 2.5 ft',
      'Front lawn: 6 min 15 s, both coats',
      'Zone: 48 s, both coats',
    ]);
  });
});
