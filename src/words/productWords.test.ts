import { describe, expect, it } from 'vitest';
import { testAnalysis, testHoseLiquid, testPack, testProduct, testUse } from '../plan/testDose';
import { newDose } from '../yard/defaults';
import {
  amountRateWords,
  analysisWords,
  doseName,
  packsWords,
  rateWords,
  useChoices,
  useName,
  useTitle,
} from './productWords';

// 1 cu ft is 28.316 846 592 L, 1 gal 3.785 411 784 L (NIST Handbook 44, app. C)
const sack = testPack({ unit: 'L', value: 28.316846592 });
const mulch = testProduct({ form: 'mulch', rate: { basis: 'depth', depthM: 0.0508 }, packs: [sack] });

describe('product words', () => {
  it('say the label rate by its own basis', () => {
    const jug = testPack({ unit: 'L', value: 3.785411784 }, 'jug');
    const hose = testProduct({
      form: 'ready-to-use',
      rate: { basis: 'area-per-container', areaM2: 464.515, packId: 'jug' },
      packs: [jug],
    });
    expect(rateWords(hose, 'us')).toBe('one 1\u00a0gal pack covers 5,000\u00a0sq ft');
    expect(rateWords(mulch, 'us')).toBe('a layer of 2\u00a0in');
  });

  it('give bulk goods by cubic measure', () => {
    expect(packsWords(mulch, 'us')).toBe('1\u00a0cu\u00a0ft');
    // a layer of 2 in on 1,000 sq ft is 166.7 cu ft, 6.17 cu yd
    expect(amountRateWords(mulch, { unit: 'L', value: 50.8 }, 'us')).toContain('6.17\u00a0cu\u00a0yd per');
  });

  it('name analysis and dose', () => {
    expect(analysisWords(testProduct({ analysis: testAnalysis(8, 0, 2.5) }))).toBe('8-0-2.5');
    const dose = newDose('d', 'gone');
    expect(doseName(dose, [mulch])).toBe('Product without a name');
  });
});

describe('use words', () => {
  const label = testHoseLiquid();
  it('name a use by its name, else by what puts it out', () => {
    expect(useName(label)).toBe('From the bottle');
    expect(useName({ ...label, useName: ' ' })).toBe('Hose-end bottle');
    expect(useName(testProduct())).toBe('Use of the label');
  });
  it('stand in a list with what puts them out, once', () => {
    const spread = { useName: 'Light', applicator: 'broadcast-spreader' } as const;
    expect(useTitle(spread)).toBe('Light (broadcast spreader)');
    expect(useTitle({ ...spread, useName: 'broadcast spreader, light' })).toBe('broadcast spreader, light');
    expect(useTitle({ ...spread, useName: '' })).toBe('Broadcast spreader');
    expect(useTitle({ useName: 'Light', applicator: null })).toBe('Light');
  });
  it('offer all uses with their rates', () => {
    expect(
      useChoices(label, 'us').map(({ id, name, words }) => [id, name, words.replaceAll('\u00a0', ' ')]),
    ).toEqual([
      [null, 'From the bottle (hose-end bottle)', 'one 32 fl oz pack covers 3,200 sq ft'],
      ['tank', 'Backpack (backpack or tank sprayer)', '5 fl oz per 1,000 sq ft'],
    ]);
  });
  it('name a dose by its use where there are several', () => {
    expect(doseName(newDose('d', 'hose', { useId: 'tank' }), [label])).toBe('Lawn liquid, backpack');
    expect(doseName(newDose('d', 'hose'), [label])).toBe('Lawn liquid, from the bottle');
    expect(doseName(newDose('d', 'p-1'), [testProduct()])).toBe('Test granules');
    const gone = newDose('d', 'p-1', { useId: 'gone' });
    expect(doseName(gone, [testProduct({ otherUses: [testUse()] })])).toBe('Test granules');
  });
  it('say seed and lime by what they are worth', () => {
    const seed = testProduct({ rate: { basis: 'pure-live-seed', rateKgPerM2: 0.0048824276 } });
    expect(rateWords(seed, 'us').replaceAll('\u00a0', ' ')).toBe('1 lb per 1,000 sq ft of pure live seed');
    const lime = testProduct({ rate: { basis: 'effective-lime', rateKgPerM2: 0.0048824276 } });
    expect(rateWords(lime, 'us').replaceAll('\u00a0', ' ')).toBe('1 lb per 1,000 sq ft of effective lime');
  });
});
