import { describe, expect, it } from 'vitest';
import { newEquipment, newProduct } from '../yard/defaults';
import { GUARDED_SHARE, spreadOf } from './spread';

const label = newProduct('p', { spreadDistanceM: 0.8 });

describe('spreadOf', () => {
  it('takes what was measured, then the label', () => {
    const measured = newEquipment('e', 'broadcast-spreader', { spreadDistanceM: 1.2 });
    expect(spreadOf(label, measured, false)).toBe(1.2);
    expect(spreadOf(label, { ...measured, spreadDistanceM: 0 }, false)).toBe(0);
    expect(spreadOf(label, { ...measured, spreadDistanceM: null }, false)).toBe(0.8);
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

  it('a guard is taken to leave no more than the setbacks of codes do: 3 ft for 10 ft', () => {
    expect(GUARDED_SHARE).toBeLessThanOrEqual(3 / 10);
  });
});
