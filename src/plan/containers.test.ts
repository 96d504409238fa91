import { describe, expect, it } from 'vitest';
import { countContainers, wholePacks } from './containers';
import { testPack } from './testDose';

const pack = testPack({ unit: 'L', value: 2 });
const count = (litres: number, sigmaM2 = 0) =>
  countContainers({ unit: 'L', value: litres }, pack, 100, sigmaM2);

describe('whole packs', () => {
  it.each([
    [0, 0],
    [1e-12, 0],
    [0.01, 1],
    [1, 1],
    [1 + 1e-12, 1],
    [1.0001, 2],
    [142.0001, 143],
  ])('%s packs open %s', (exact, open) => {
    expect(wholePacks(exact)).toBe(open);
  });
});

describe('containers', () => {
  it('says how much of the last is left', () => {
    expect(count(3)).toMatchObject({
      open: 2,
      exact: 1.5,
      lastLeft: 0.5,
      openLow: 2,
      openHigh: 2,
      changesAt: null,
    });
    expect(count(0)).toMatchObject({ open: 0, exact: 0, lastLeft: 0, changesAt: null });
  });
  it('says where the error of the area changes the count', () => {
    // 1.96 packs: 2.04 % more ground opens a third; ±2 sigma is ±4 %
    const up = count(3.92, 2);
    expect(up).toMatchObject({ open: 2, openLow: 2, openHigh: 3 });
    expect(up.changesAt).toBeCloseTo(2 / 1.96 - 1, 12);
    // 2.04 packs: 1.96 % less ground saves the third
    const down = count(4.08, 2);
    expect(down).toMatchObject({ open: 3, openLow: 2, openHigh: 3 });
    expect(down.changesAt).toBeCloseTo(2 / 2.04 - 1, 12);
    // exactly two: any more opens a third
    expect(count(4, 2)).toMatchObject({ open: 2, openLow: 2, openHigh: 3, changesAt: 0 });
  });
  it('takes the nearer of two changes', () => {
    expect(count(4.2, 30).changesAt).toBeCloseTo(2 / 2.1 - 1, 12);
    expect(count(5.8, 30).changesAt).toBeCloseTo(3 / 2.9 - 1, 12);
  });
  it('says nothing of a change to no pack at all, when the error is as large as the area', () => {
    expect(count(1.8, 50)).toMatchObject({ open: 1, openLow: 0, openHigh: 2 });
    expect(count(1.8, 50).changesAt).toBeCloseTo(1 / 0.9 - 1, 12);
    expect(count(0.9, 50)).toMatchObject({ open: 1, openLow: 0, openHigh: 1, changesAt: null });
    // of three packs one may still be saved
    expect(count(4.6, 50)).toMatchObject({ open: 3, openLow: 0 });
    expect(count(4.6, 50).changesAt).toBeCloseTo(2 / 2.3 - 1, 12);
  });
  it('is not asked across units or of an empty pack', () => {
    expect(() => countContainers({ unit: 'kg', value: 1 }, pack, 1, 0)).toThrow(RangeError);
    expect(() => countContainers({ unit: 'L', value: 1 }, testPack({ unit: 'L', value: 0 }), 1, 0)).toThrow(
      RangeError,
    );
  });
});
