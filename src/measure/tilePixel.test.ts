import { expect, it } from 'vitest';
import { tilePixelM, zoomOfPixel } from './tilePixel';

it('a pixel of a web map on the ground', () => {
  // OGC 17-083r4, table of WebMercatorQuad: zoom 0 has 156543.0339280410 m a pixel, zoom 18 0.597164283 (from memory)
  expect(tilePixelM(0, 0)).toBeCloseTo(156543.033928041, 6);
  expect(tilePixelM(0, 18)).toBeCloseTo(0.597164283, 8);
  // cos 60° is a half
  expect(tilePixelM(60, 0)).toBeCloseTo(156543.033928041 / 2, 6);
  expect(zoomOfPixel(60, 156543.033928041 / 8)).toBeCloseTo(2, 9);
});
