import { describe, expect, it } from 'vitest';
import { coverVisit, createCoverCache } from './coverVisit';
import type { CoverInput } from './passTypes';
import { fakePasses } from './route/fakePasses';
import { testDose, testZone } from './route/testDoses';

const input: CoverInput = {
  visitId: 'visit',
  doses: [
    testDose([testZone('a', [[0, 0, 8, 12]]), testZone('b', [[20, 0, 28, 12]])], { doseId: 'one' }),
    testDose([testZone('c', [[0, 20, 8, 32]])], { doseId: 'two', spacingM: 1.5, swathM: 1.5 }),
  ],
  obstacles: [],
  start: [0, -2],
  end: null,
  hose: null,
};

function counted() {
  const calls = { count: 0 };
  const cache = createCoverCache((...args) => {
    calls.count += 1;
    return fakePasses(...args);
  });
  return { calls, cache };
}

describe('coverVisit', () => {
  it('keeps what hangs on the same data, even in other objects', () => {
    const { calls, cache } = counted();
    const first = coverVisit(input, cache);
    const before = calls.count;
    const again = coverVisit(structuredClone(input), cache);
    expect(calls.count).toBe(before);
    expect(again.doses[0]).toBe(first.doses[0]);
  });

  it('lays anew only the dose that changed', () => {
    const { cache } = counted();
    const first = coverVisit(input, cache);
    const [one, two] = input.doses;
    if (!one || !two) throw new Error('two doses');
    const changed = coverVisit({ ...input, doses: [one, { ...two, coats: 2 }] }, cache);
    expect(changed.doses[0]).toBe(first.doses[0]);
    expect(changed.doses[1]).not.toBe(first.doses[1]);
    expect(changed.doses[1]?.walks.map(({ coat }) => coat)).toEqual([1, 2]);
  });

  it('plans no ground anew for other vessels or another order', () => {
    const { calls, cache } = counted();
    const first = coverVisit(input, cache);
    const before = calls.count;
    const vessel = {
      kind: 'tank-load',
      number: 1,
      full: { value: 10, unit: 'L' },
      start: { value: 10, unit: 'L' },
      taken: { value: 10, unit: 'L' },
      areaM2: 192,
      packId: null,
    } as const;
    const doses = input.doses.map((dose, i) => (i === 0 ? { ...dose, vessels: [vessel] } : dose));
    const made = coverVisit({ ...input, doses }, cache);
    expect(calls.count).toBe(before);
    expect(made.doses[0]?.marks.map(({ left }) => left)).toEqual([0.75, 0.5, 0.25, 0]);
    expect(made.doses[0]?.legs).toEqual(first.doses[0]?.legs);
  });

  it('lays real passes', () => {
    const made = coverVisit({ ...input, doses: input.doses.slice(0, 1) });
    const [one] = made.doses;
    expect(one?.walks.map(({ zoneId }) => zoneId)).toEqual(['a', 'b']);
    expect(one?.legs[0]?.line[0]).toEqual([0, -2]);
    one?.legs.slice(1).forEach((leg, i) => {
      const [from, to] = [one.legs[i]?.line.at(-1), leg.line[0]];
      expect(Math.hypot((from?.[0] ?? 0) - (to?.[0] ?? 0), (from?.[1] ?? 0) - (to?.[1] ?? 0))).toBeLessThan(
        1e-6,
      );
    });
  }, 30_000);
});
