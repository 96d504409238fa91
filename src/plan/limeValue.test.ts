import { describe, expect, it } from 'vitest';
import { effectiveLimePct, FINENESS_TABLES, type SieveReading } from './limeValue';

const [newYork] = FINENESS_TABLES;
const readings = (...passing: readonly number[]): SieveReading[] =>
  [20, 60, 100].map((mesh, i) => ({ mesh, passingPct: passing[i] ?? Number.NaN }));
const message = (...args: Parameters<typeof effectiveLimePct>) => {
  const found = effectiveLimePct(...args);
  return found.ok ? null : found.message;
};

describe('effective lime', () => {
  if (newYork === undefined) throw new Error('There is no table.');
  it('of powder is its whole calcium carbonate equivalent, and of pebbles nothing', () => {
    expect(effectiveLimePct(92, readings(100, 100, 100), newYork)).toEqual({ ok: true, value: 92 });
    expect(effectiveLimePct(92, readings(0, 0, 0), newYork)).toEqual({ ok: true, value: 0 });
  });
  it('takes the sieves in any order', () => {
    const straight = effectiveLimePct(90, readings(95, 60, 40), newYork);
    expect(effectiveLimePct(90, readings(95, 60, 40).toReversed(), newYork)).toEqual(straight);
  });
  it('says why it cannot be told', () => {
    expect(message(0, readings(100, 100, 100), newYork)).toContain('more than zero');
    expect(message(90, readings(95, 60).slice(0, 2), newYork)).toBe('Give what passes the 100 mesh sieve.');
    expect(message(90, readings(95, 60, 70), newYork)).toContain('More passes the 100 mesh sieve (70 %)');
    expect(message(90, readings(95, 60, 40), newYork, 100)).toContain('moisture');
    expect(message(90, readings(101, 60, 40), newYork)).toContain('from 0 to 100 %');
    expect(message(90, readings(95, Number.NaN, 40), newYork)).toContain('60 mesh');
  });
  it('goes by tables whose shares grow with fineness, up to the whole', () => {
    for (const { meshes, efficiency, source } of FINENESS_TABLES) {
      expect(efficiency).toHaveLength(meshes.length);
      expect([...efficiency]).toEqual(efficiency.toSorted((a, b) => a - b));
      expect(efficiency.at(-1)).toBe(1);
      expect([...meshes]).toEqual(meshes.toSorted((a, b) => a - b));
      expect(source).not.toBe('');
    }
  });
});
