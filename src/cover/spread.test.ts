import { describe, expect, it } from 'vitest';
import { newEquipment, newProduct } from '../yard/defaults';
import { spreadOf, usualSpreadM } from './spread';

const label = newProduct('p', { spreadDistanceM: 0.8 });
const silent = newProduct('p', { spreadDistanceM: Number.NaN });

describe('spreadOf', () => {
  it('takes what was measured, then the label, then what is usual', () => {
    const measured = newEquipment('e', 'broadcast-spreader', { spreadDistanceM: 1.2 });
    expect(spreadOf(label, measured, false)).toBe(1.2);
    expect(spreadOf(label, { ...measured, spreadDistanceM: 0 }, false)).toBe(0);
    expect(spreadOf(label, { ...measured, spreadDistanceM: null }, false)).toBe(0.8);
    expect(spreadOf(silent, { ...measured, spreadDistanceM: null }, false)).toBe(1.5);
  });

  it('is less with the guard down, where there is one', () => {
    const plain = newEquipment('e', 'broadcast-spreader', { spreadDistanceM: 1.2 });
    const guard = { ...plain, hasEdgeGuard: true };
    expect(spreadOf(label, plain, true)).toBe(1.2);
    expect(spreadOf(label, guard, false)).toBe(1.2);
    expect(spreadOf(label, guard, true)).toBeCloseTo(0.3, 12);
    expect(spreadOf(label, { ...guard, guardedSpreadM: 0.1 }, true)).toBe(0.1);
    // a guard throws no further than none
    expect(spreadOf(label, { ...guard, guardedSpreadM: 5 }, true)).toBe(1.2);
  });

  it('a drop spreader keeps to the edge better than one that broadcasts', () => {
    expect(usualSpreadM('drop-spreader')).toBeLessThan(0.1);
    expect(usualSpreadM('broadcast-spreader')).toBeGreaterThan(1);
    // half of 12 ft, the swath of the example of Ohio State University Extension Bulletin 817
    expect(usualSpreadM('broadcast-spreader', 3.6576)).toBeCloseTo(1.8288, 9);
  });
});
