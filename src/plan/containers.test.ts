import { describe, expect, it } from 'vitest';
import { countContainers, wholePacks } from './containers';
import { fluidOunces, sqft } from './testLabels';

const bottle = { id: 'bottle', content: fluidOunces(32), price: null };
/** A 32 fl oz bottle that covers 3,200 sq ft, over an area. */
const count = (areaSqft: number, sigmaSqft = 0) =>
  countContainers(fluidOunces((32 * areaSqft) / 3200), bottle, sqft(areaSqft), sqft(sigmaSqft));

describe('containers', () => {
  it.each([
    [5000, 1.5625, 2],
    [3200, 1, 1],
    [3201, 1.0003125, 2],
    [1000, 0.3125, 1],
    [0, 0, 0],
  ])('%d sq ft takes %d bottles, %d opened (common practice, no source)', (area, exact, open) => {
    expect(count(area).exact).toBeCloseTo(exact, 12);
    expect(count(area).open).toBe(open);
  });
  it('says how full the last one stays', () => {
    expect(count(5000).lastLeft).toBeCloseTo(0.4375, 12);
    expect(count(3200).lastLeft).toBeCloseTo(0, 9);
  });
  it('floating error opens no pack', () => {
    expect(wholePacks((0.1 + 0.2) / 0.3)).toBe(1);
    expect(wholePacks(3 + 1e-10)).toBe(3);
    expect(wholePacks(3.000001)).toBe(4);
  });
  it('says when the count changes within two sigma, up and down', () => {
    const up = count(3150, 40);
    expect([up.openLow, up.open, up.openHigh]).toEqual([1, 1, 2]);
    expect(up.changesAt).toBeCloseTo(3200 / 3150 - 1, 12);
    const down = count(3250, 40);
    expect([down.openLow, down.open, down.openHigh]).toEqual([1, 2, 2]);
    expect(down.changesAt).toBeCloseTo(3200 / 3250 - 1, 12);
    expect(count(5000, 40).changesAt).toBeNull();
  });
  it('exactly one bottle may need a second at the least error', () => {
    expect(count(3200, 10)).toMatchObject({ open: 1, openHigh: 2 });
    expect(count(3200, 10).changesAt).toBeCloseTo(0, 9);
  });
});
