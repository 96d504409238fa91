import { describe, expect, it } from 'vitest';
import type { BaseLayer } from '../yard/types';
import { pictureBasis, suggestSigma } from './suggestSigma';

const aerial: BaseLayer = {
  kind: 'xyz',
  id: 'a',
  name: 'Aerial',
  url: 'https://tiles.invalid/{z}/{x}/{y}',
  attribution: '',
  maxNativeZoom: 19,
};

describe('pictureBasis', () => {
  it('knows the ground width of a tile pixel: 0.298582 m at zoom 19 on the equator (published zoom tables of web maps, from memory)', () => {
    expect(pictureBasis(aerial, 0)?.pixelM).toBeCloseTo(0.298582, 5);
    expect(pictureBasis(aerial, 60)?.pixelM).toBeCloseTo(0.298582 / 2, 5);
  });

  it('takes pixel, fit and scale of a picture of one’s own from how it was set', () => {
    const own: BaseLayer = {
      kind: 'own-picture',
      id: 'p',
      name: 'Roof photo',
      attribution: '',
      pictureId: 'x',
      widthPx: 100,
      heightPx: 100,
      origin: [0, 0],
      // turned by 30 degrees, 4 cm a pixel, rows downward
      toGround: [
        0.04 * Math.cos(0.5),
        -0.04 * Math.sin(0.5),
        0,
        -0.04 * Math.sin(0.5),
        -0.04 * Math.cos(0.5),
        0,
      ],
      opacity: 1,
      sigmaM: 0.12,
      scaleSigma: 0.004,
      fit: null,
    };
    expect(pictureBasis(own, 40)).toMatchObject({ name: 'Roof photo', fitSigmaM: 0.12, scaleSigma: 0.004 });
    expect(pictureBasis(own, 40)?.pixelM).toBeCloseTo(0.04, 12);
  });

  it('has nothing to say of the plain grid', () => {
    expect(pictureBasis({ kind: 'grid' }, 40)).toBeNull();
  });
});

describe('suggestSigma', () => {
  const picture = { name: 'Roof photo', pixelM: 0.1, fitSigmaM: 0.12, scaleSigma: 0.004 };

  it('adds pointing, grain and fit as squares', () => {
    // by hand: 2.5 px of 0.04 m are 0.1 m; half of 0.1 m; 0.12 m
    const made = suggestSigma({ method: 'traced', screenPixelM: 0.04, isTouch: false, picture });
    expect(made.survey).toMatchObject({ method: 'traced', scaleSigma: 0.004, source: 'Roof photo' });
    expect(made.survey.vertexSigmaM).toBeCloseTo(Math.sqrt(0.1 ** 2 + 0.05 ** 2 + 0.12 ** 2), 2);
    expect(made.terms.map((term) => term.what)).toEqual(['pointing', 'resolution', 'fit']);
  });

  it('is larger by finger and farther out, and says when the grain is not known', () => {
    const at = (screenPixelM: number, isTouch: boolean) =>
      suggestSigma({ method: 'traced', screenPixelM, isTouch, picture }).survey.vertexSigmaM;
    expect(at(0.04, true)).toBeGreaterThan(at(0.04, false));
    expect(at(0.4, false)).toBeGreaterThan(5 * at(0.04, false));
    const blind = suggestSigma({
      method: 'traced',
      screenPixelM: null,
      isTouch: false,
      picture: { ...picture, pixelM: null, fitSigmaM: 0 },
    });
    expect(blind.terms).toEqual([{ what: 'unknown-resolution', sigmaM: 0.15 }]);
  });

  it('takes a drawing on the plain grid as typed lengths, and other ways by their usual values', () => {
    const of = (method: 'traced' | 'tape') =>
      suggestSigma({ method, screenPixelM: 1, isTouch: false, picture: null }).survey;
    expect(of('traced')).toMatchObject({ method: 'typed', vertexSigmaM: 0.03 });
    expect(of('tape')).toMatchObject({ method: 'tape', vertexSigmaM: 0.05, scaleSigma: 0 });
  });
});
