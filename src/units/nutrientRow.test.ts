import { describe, expect, it } from 'vitest';
import { formatNutrientCell, inNutrientUnit, nutrientPlace } from './nutrientRow';

/** 1 lb per 1,000 sq ft is 4.882428 g/m² (NIST SP 811 app. B: 0.45359237 kg over 92.90304 m²). */
const LB = 0.004882428;

describe('cells of nutrient tables', () => {
  it('are in lb per 1,000 sq ft or g/m²', () => {
    expect(inNutrientUnit(LB, 'us')).toBeCloseTo(1, 6);
    expect(inNutrientUnit(LB, 'metric')).toBeCloseTo(4.882428, 9);
  });
  it('take their decimals from the largest', () => {
    expect(nutrientPlace(3 * LB, 'us')).toBe(2);
    expect(nutrientPlace(0.06 * LB, 'us')).toBe(3);
    expect(nutrientPlace(0.0000001 * LB, 'us')).toBe(4);
    expect(nutrientPlace(0, 'us')).toBe(2);
    expect(nutrientPlace(3 * LB, 'metric')).toBe(1);
  });
  it('call nothing nought that is there, and show what is less than nought', () => {
    expect(formatNutrientCell(0, 2, 'us')).toBe('0');
    expect(formatNutrientCell(0.004 * LB, 2, 'us')).toBe('<0.01');
    expect(formatNutrientCell(0.25 * LB, 2, 'us')).toBe('0.25');
    expect(formatNutrientCell(-0.25 * LB, 2, 'us')).toBe('−0.25');
    expect(formatNutrientCell(-1e-12, 2, 'us')).toBe('0.00');
    expect(formatNutrientCell(Number.NaN, 2, 'us')).toBe('–');
  });
});
