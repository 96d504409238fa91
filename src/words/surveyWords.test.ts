import { describe, expect, it } from 'vitest';
import { slopeWords, surfaceWords } from './slopeWords';
import { suggestionWords, surveyWords } from './surveyWords';

const survey = { method: 'traced', vertexSigmaM: 0.16, scaleSigma: 0.004, source: 'Roof photo' } as const;

describe('survey words', () => {
  it('say how a suggestion comes about', () => {
    const terms = [
      { what: 'pointing', sigmaM: 0.1 },
      { what: 'fit', sigmaM: 0.125 },
    ] as const;
    expect(suggestionWords({ survey, terms }, 'metric').replaceAll('\u00a0', ' ')).toBe(
      '16 cm: 10 cm from pointing at this zoom, 13 cm from how the picture lies on the ground',
    );
    expect(suggestionWords({ survey, terms: [{ what: 'usual', sigmaM: 0.16 }] }, 'metric')).toContain(
      'usual',
    );
  });

  it('say how a zone was measured', () => {
    expect(surveyWords(survey, 'metric').replaceAll('\u00a0', ' ')).toBe(
      'Traced over a picture (Roof photo), corners good to 16 cm, scale to 0.4 %',
    );
  });
});

describe('slope words', () => {
  it('give percent and degrees, and the ground along the slope', () => {
    // by hand: arctan 0.12 = 6.84 degrees; 3-4-5: 0.75 makes a quarter more
    expect(slopeWords(0.12)).toBe('12 % (6.8°)');
    expect(surfaceWords(100, 1, 0.75, 'metric').replaceAll('\u00a0', ' ')).toBe(
      '125.0 ± 2.5 m² along the slope, 25 % more',
    );
  });
});
