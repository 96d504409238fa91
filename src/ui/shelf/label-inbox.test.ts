import { describe, expect, it } from 'vitest';
import { granules, testYard } from '../../../tests/fixtures/testYard';
import { yardToText } from '../../io/writeGeoJson';
import { writeLabels } from '../../io/writeLabels';
import { writeLabelsCsv } from '../../io/writeLabelsCsv';
import { isLabelFile } from './label-inbox';

const isOne = (text: string) => isLabelFile(new TextEncoder().encode(text));

describe('a file of labels among others', () => {
  it('is known by how it begins', () => {
    expect(isOne(writeLabels([granules], true))).toBe(true);
    expect(isOne(writeLabelsCsv([granules], 'us', true))).toBe(true);
    expect(isOne('Product;Form;Rate basis\n')).toBe(true);
  });
  it.each([yardToText(testYard()), 'name,lat,lon\nA,41,-96\n', 'Product,lat,lon\n', '{}', ''])(
    '%#: another is not',
    (text) => {
      expect(isOne(text)).toBe(false);
    },
  );
});
