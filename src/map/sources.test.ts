import { describe, expect, it } from 'vitest';
import type { BaseLayer } from '../yard/types';
import { checkBaseLayer, READY_LAYERS } from './sources';

const xyz = (url: string): BaseLayer => ({
  kind: 'xyz',
  id: 'a',
  name: 'Mine',
  url,
  attribution: '',
  maxNativeZoom: 18,
});

describe('checkBaseLayer', () => {
  it('accepts every ready layer', () => {
    for (const layer of READY_LAYERS) expect(checkBaseLayer(layer)).toEqual([]);
  });
  it('wants z, x and y in a tile address', () => {
    expect(checkBaseLayer(xyz('https://tiles.example/{z}/{x}.png'))[0]?.code).toBe('base-layer-place');
    expect(checkBaseLayer(xyz('https://tiles.example/{z}/{x}/{-y}.png'))).toEqual([]);
  });
  it('names an unknown place holder', () => {
    expect(checkBaseLayer(xyz('https://tiles.example/{z}/{x}/{y}?k={key}'))[0]?.message).toContain('{key}');
  });
  it('refuses addresses that are not web addresses', () => {
    expect(checkBaseLayer(xyz('javascript:{z}{x}{y}'))[0]?.code).toBe('base-layer-url');
  });
  it('refuses pictures whose edges are the wrong way round', () => {
    const picture: BaseLayer = {
      kind: 'picture',
      id: 'p',
      name: 'P',
      url: 'p.png',
      west: 2,
      east: 1,
      south: 0,
      north: 1,
      attribution: '',
    };
    expect(checkBaseLayer(picture)[0]?.code).toBe('base-layer-edges');
    expect(checkBaseLayer({ ...picture, east: 3 })).toEqual([]);
  });
  it('wants a layer name for WMS', () => {
    const wms: BaseLayer = {
      kind: 'wms',
      id: 'w',
      name: 'W',
      url: 'https://wms.example/',
      layers: ' ',
      version: '1.3.0',
      attribution: '',
    };
    expect(checkBaseLayer(wms)[0]?.code).toBe('base-layer-wms');
  });
});
