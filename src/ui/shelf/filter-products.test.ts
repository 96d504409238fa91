import { describe, expect, it } from 'vitest';
import { granules, liquid } from '../../../tests/fixtures/testYard';
import type { Product } from '../../yard/types';
import { filterProducts } from './filter-products';

const iron: Product = {
  ...liquid,
  name: 'Iron bottle',
  applicator: 'hose-end',
  analysis: { ...liquid.analysis, elementsPct: { Fe: 6 } },
  ingredients: [{ name: 'Kelp extract', pct: 1 }],
};
const shelf = [granules, liquid, iron];
const found = (typed: string) => filterProducts(shelf, typed).map((one) => one.name);

describe('finding on the shelf', () => {
  it.each([
    ['', ['Granular 20-0-10', 'Liquid 12-0-6', 'Iron bottle']],
    ['20-0 granular', ['Granular 20-0-10']],
    ['LIQUID', ['Liquid 12-0-6', 'Iron bottle']],
    ['bottle hose', ['Iron bottle']],
    ['fe', ['Iron bottle']],
    ['kelp  iron', ['Iron bottle']],
    ['kelp granular', []],
  ])('“%s”', (typed, names) => {
    expect(found(typed)).toEqual(names);
  });
});
