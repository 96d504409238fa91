import { describe, expect, it } from 'vitest';
import { granules, liquid, testYard } from '../../tests/fixtures/testYard';
import { readLabels } from './readLabels';
import { yardToText } from './writeGeoJson';
import { labelsFileName, writeLabels } from './writeLabels';

const text = writeLabels([granules, liquid], true);

describe('a file of labels', () => {
  it('comes back as it went, with and without prices and stock', () => {
    expect(readLabels(text)).toEqual({ products: [granules, liquid], issues: [] });
    const [bare] = readLabels(writeLabels([granules], false)).products;
    expect(bare?.packs[0]?.price).toBeNull();
    expect(bare?.onHand).toEqual({});
    expect(bare?.limits).toEqual(granules.limits);
  });
  it('a bad label is left out and told by its path; the others come', () => {
    const bad = text.replace('"rateKgPerM2":0.0024', '"rateKgPerM2":"much"');
    const { products, issues } = readLabels(bad);
    expect(products.map((one) => one.name)).toEqual(['Liquid 12-0-6']);
    expect(issues).toHaveLength(1);
    expect(issues[0]?.place.path).toBe('products[0].rate.rateKgPerM2');
    expect(issues[0]?.message).toContain('Granular 20-0-10');
  });
  it('JSON that is broken is told by its line', () => {
    expect(readLabels(text.replace('"name":"Liquid', '"name:"Liquid')).issues[0]?.place.line).toBe(5);
  });
  it('labels of version 2, before there were several uses, are filled up', () => {
    const { otherUses: _, applicator: __, packIds: ___, ...old } = granules;
    const before = JSON.stringify({ 'measured-yard-labels': { version: 2 }, products: [old] });
    expect(readLabels(before)).toEqual({ products: [granules], issues: [] });
  });
  it('takes the shelf of a whole yard', () => {
    expect(readLabels(yardToText(testYard())).products.map((one) => one.name)).toEqual([
      'Granular 20-0-10',
      'Liquid 12-0-6',
    ]);
  });
  it.each([
    ['{}', /no labels/],
    ['[1]', /no labels/],
    ['{"measured-yard-labels": {"version": 9}, "products": []}', /newer version/],
    ['{"measured-yard-labels": {"version": "1"}, "products": []}', /not a whole number/],
    ['{"measured-yard-labels": {"version": 3}}', /no list of products/],
    ['{"measured-yard-labels": {"version": 3}, "products": []}', /no product/],
  ])('%s', (file, words) => {
    const { products, issues } = readLabels(file);
    expect(products).toEqual([]);
    expect(issues[0]?.message).toMatch(words);
  });
  it('names its file by the product where it is one', () => {
    expect(labelsFileName([granules], '.json')).toBe('label-granular-20-0-10.json');
    expect(labelsFileName([granules, liquid], '.csv')).toBe('labels.csv');
  });
});
