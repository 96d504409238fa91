import { describe, expect, it } from 'vitest';
import {
  KG_PER_LB,
  L_PER_CUYD,
  L_PER_FLOZ,
  L_PER_GAL,
  M2_PER_1000_SQFT,
  M2_PER_ACRE,
  M2_PER_SQFT,
} from './factors';
import {
  formatAmount,
  formatAmountRate,
  formatArea,
  formatAreaOfPm,
  formatAreaPm,
  formatDuration,
  formatLeastLength,
  formatLength,
  formatMass,
  formatMoney,
  formatMostRate,
  formatNumber,
  formatNutrientRate,
  formatPercent,
  formatTemperature,
  formatVolume,
  formatVolumeLike,
} from './format';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('numbers', () => {
  it.each([
    [1234567, 3, '1,230,000'],
    [0.000000123456, 3, '0.000000123'],
    [-0, 3, '0'],
    [0.5, 3, '0.5'],
    [-12.345, 3, '-12.3'],
    [Number.NaN, 3, '–'],
    [Number.POSITIVE_INFINITY, 3, '–'],
  ])('%s to %s digits', (value, digits, text) => {
    expect(formatNumber(value, digits)).toBe(text);
  });
});

describe('area with its error', () => {
  const us = (areaSqFt: number, sigmaSqFt: number) =>
    plain(formatAreaPm(areaSqFt * M2_PER_SQFT, sigmaSqFt * M2_PER_SQFT, 'us'));
  it.each([
    [3241, 22.5, '3,241 ± 45 sq ft'],
    [3241.6, 225, '3,240 ± 450 sq ft'],
    [3241, 49.8, '3,240 ± 100 sq ft'],
    [3241, 1.23, '3,241.0 ± 2.5 sq ft'],
    [3241, 60000, '0 ± 120,000 sq ft'],
    [3241, 1e-9, '3,240 sq ft'],
    [3241, 0, '3,240 sq ft'],
    [3241, Number.NaN, '3,240 sq ft'],
    [3241, Number.POSITIVE_INFINITY, '3,240 sq ft'],
    [0, 0, '0 sq ft'],
    [0, 5, '0 ± 10 sq ft'],
    [2 * 43560, 43.56, '2.0000 ± 0.0020 acre'],
  ])('%s with one s.d. of %s', (area, sigma, text) => {
    expect(us(area, sigma)).toBe(text);
  });
  it('an area that is not a number is a dash', () => {
    expect(formatAreaPm(Number.NaN, 1, 'us')).toBe('–');
  });
});

describe('quantities', () => {
  it.each([
    [formatArea(M2_PER_ACRE, 'us'), '1 acre'],
    [formatArea(1000 * M2_PER_SQFT, 'us'), '1,000 sq ft'],
    [formatArea(9999, 'metric'), '10,000 m²'],
    [formatArea(12000, 'metric'), '1.2 ha'],
    [formatLength(3.048, 'us'), '10.0 ft'],
    [formatLength(0.0254 * 6, 'us'), '6 in'],
    [formatLength(0.25, 'metric'), '25 cm'],
    [formatLength(2.5, 'metric'), '2.50 m'],
    [formatMass(2 * KG_PER_LB, 'us'), '2 lb'],
    [formatMass(KG_PER_LB / 2, 'us'), '8 oz'],
    [formatMass(0.25, 'metric'), '250 g'],
    [formatVolume(L_PER_GAL, 'us'), '1 gal'],
    [formatVolumeLike(L_PER_FLOZ * 124, L_PER_GAL * 3.95, 'us'), '0.969 gal'],
    [formatVolumeLike(L_PER_FLOZ * 124, L_PER_FLOZ * 16, 'us'), '124 fl oz'],
    [formatVolumeLike(0.75, 2.5, 'metric'), '0.75 L'],
    [formatVolume(L_PER_GAL * 0.9999, 'us'), '1 gal'],
    [formatVolume(L_PER_FLOZ * 127, 'us'), '127 fl oz'],
    [formatVolume(L_PER_FLOZ * 16, 'us'), '16 fl oz'],
    [formatVolume(0, 'us'), '0 gal'],
    [formatVolume(0.9996, 'metric'), '1 L'],
    [formatVolume(0.75, 'metric'), '750 mL'],
    [formatVolume(L_PER_CUYD, 'us', true), '1 cu yd'],
    [formatVolume(L_PER_CUYD / 27, 'us', true), '1 cu ft'],
    [formatVolume(2500, 'metric', true), '2.5 m³'],
    [formatAmount({ unit: 'kg', value: 1.5 }, 'metric'), '1.5 kg'],
    [
      formatAmountRate({ unit: 'L', value: (5 * L_PER_FLOZ) / M2_PER_1000_SQFT }, 'us'),
      '5 fl oz per 1,000 sq ft',
    ],
    [formatAmountRate({ unit: 'kg', value: 0.02 }, 'metric'), '2 kg per 100 m²'],
    [formatNutrientRate((0.45 * KG_PER_LB) / M2_PER_1000_SQFT, 'us'), '0.45 lb per 1,000 sq ft'],
    [formatNutrientRate(0.0022, 'metric'), '2.2 g/m²'],
    [formatDuration(1800), '30 min'],
    [formatDuration(5400), '90 min'],
    [formatDuration(14_400), '4 h'],
    [formatDuration(259_200), '3 days'],
    [formatMoney(1234.5, '$'), '$1,234.50'],
    [formatMoney(-3, '€'), '−€3.00'],
    [formatPercent(0.3125), '31 %'],
    [formatPercent(0.0213), '2.1 %'],
    // 212 °F is 100 °C (NIST SP 811, B.8); a greatest temperature is never shown above itself
    [formatTemperature(((85 - 32) * 5) / 9, 'us'), '85 °F'],
    [formatTemperature(32, 'us'), '89.6 °F'],
    [formatTemperature(((90 - 32) * 5) / 9, 'us'), '90 °F'],
    [formatTemperature(((90 - 32) * 5) / 9, 'metric'), '32.2 °C'],
    [formatTemperature(((91 - 32) * 5) / 9, 'metric'), '32.7 °C'],
    [formatTemperature(-0.2, 'metric'), '-0.2 °C'],
    // 3.5 g/m² is 0.71685 lb per 1,000 sq ft: 0.717 would be over it
    [formatMostRate(0.0035, 'us'), '0.716 lb per 1,000 sq ft'],
    [formatMostRate((0.9 * KG_PER_LB) / M2_PER_1000_SQFT, 'us'), '0.9 lb per 1,000 sq ft'],
    [formatMostRate(KG_PER_LB / M2_PER_1000_SQFT, 'metric'), '4.88 g/m²'],
    [formatMostRate(0, 'us'), '0 lb per 1,000 sq ft'],
    // 7.6 m is 24.93 ft: 24.9 would be too narrow
    [formatLeastLength(7.6, 'us'), '25 ft'],
    [formatLeastLength(10, 'us'), '32.9 ft'],
    [formatLeastLength(25 * 0.3048, 'us'), '25 ft'],
    [formatLeastLength(25 * 0.3048, 'metric'), '7.62 m'],
    [formatLeastLength(10 * 0.3048, 'metric'), '3.05 m'],
  ])('%s', (text, expected) => {
    expect(plain(text)).toBe(expected);
  });
  it('what is not finite is a dash', () => {
    for (const text of [
      formatArea(Number.NaN, 'us'),
      formatLength(Number.NaN, 'us'),
      formatMass(Number.NaN, 'us'),
      formatDuration(Number.NaN),
      formatMoney(Number.NaN, '$'),
      formatPercent(Number.NaN),
      formatNutrientRate(Number.NaN, 'us'),
      formatTemperature(Number.NaN, 'us'),
      formatMostRate(Number.NaN, 'us'),
      formatLeastLength(Number.NaN, 'us'),
    ])
      expect(text).toBe('–');
  });
});

describe('formatAreaOfPm', () => {
  it('has the digits that the area has beside its ±', () => {
    const of = (areaM2: number, sigmaM2: number) =>
      formatAreaOfPm(areaM2, sigmaM2, 'metric').replace('\u00a0', ' ');
    expect(of(1779.3, 4.2)).toBe('1,779.3 m²');
    expect(of(1779.3, 42)).toBe('1,779 m²');
    expect(of(1779.3, 420)).toBe('1,780 m²');
    expect(of(1779.3, 0)).toBe('1,780 m²');
  });
});
