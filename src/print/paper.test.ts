import { describe, expect, it } from 'vitest';
import { barStep, paperOf, roundRatio, scaleWords } from './paper';

describe('round scales', () => {
  // 100 ft is 5 in at 1 in = 20 ft: 127 mm just holds it, less needs 1 in = 30 ft. Common practice, no source.
  it('takes the largest US scale that fits', () => {
    expect(roundRatio([30.48, 10], [127.001, 100], 'us')).toBe(240);
    expect(roundRatio([30.48, 10], [126.9, 100], 'us')).toBe(360);
    expect(scaleWords(240, 'us')).toBe('1 in = 20 ft (1:240)');
  });
  it('takes the largest metric scale that fits', () => {
    expect(roundRatio([20, 10], [100, 100], 'metric')).toBe(200);
    expect(roundRatio([20.1, 10], [100, 100], 'metric')).toBe(250);
    expect(scaleWords(250, 'metric')).toBe('1:250');
  });
  it('gives a bar of round steps that fits', () => {
    for (const ratio of [60, 120, 240, 720, 6000]) {
      const { step, stepM } = barStep(ratio, 46, 'us');
      expect((4 * stepM * 1000) / ratio).toBeLessThanOrEqual(46);
      expect(String(step)).toMatch(/^(0\.)?[125]0*$/);
    }
  });
  it('knows the papers: ISO 216 A4 and ANSI Y14.1 size A', () => {
    expect(paperOf('a4', true)).toMatchObject({ widthMm: 297, heightMm: 210 });
    expect(paperOf('letter', false)).toMatchObject({ widthMm: 215.9, heightMm: 279.4 });
  });
});
